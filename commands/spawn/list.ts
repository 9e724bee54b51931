import { hatchWindow } from "../../src/core/breeding/hatch-window.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { groupOf, sayDay } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "list",
  summary: "Eggs that have not hatched yet, with the days to look",
  options: {},
  examples: ["/spawn list"],
  run(_, context): Reply {
    const { state } = groupOf(context);
    const waiting = Object.values(state.batches).filter(
      ({ isClosed, stage }) => !isClosed && stage === "eggs",
    );
    return told(
      context,
      `${state.name}: eggs`,
      waiting.length === 0 ? ["No eggs are waiting. /spawn eggs notes some."] : ["Prompts, never promises."],
      {
        table: {
          columns: ["batch", "species", "tank", "seen", "eggs", "hatching likely"],
          rows: waiting.map((batch) => {
            const window = hatchWindow(batch, state.hatches);
            return [
              batch.id,
              batch.species,
              batch.tank,
              sayDay(batch.laidDay),
              batch.eggs === undefined ? "–" : sayCount(batch.eggs),
              window.kind === "answer"
                ? `${sayDay(window.value.from)} to ${sayDay(window.value.until)}`
                : "not known",
            ];
          }),
        },
      },
    );
  },
});
