import { daysBetween } from "../../src/core/breeding/calendar.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "list",
  summary: "All open batches: where, which stage, how old, how many",
  options: {},
  examples: ["/batch list"],
  run(_, context): Reply {
    const { state, today } = groupOf(context);
    const open = Object.values(state.batches).filter(({ isClosed }) => !isClosed);
    return told(
      context,
      `${state.name}: batches`,
      open.length === 0
        ? ["None is open. /spawn eggs begins one."]
        : ["Days count from hatching, hatching being day 0."],
      {
        table: {
          columns: ["batch", "species", "tank", "stage", "age", "alive"],
          rows: open.map(({ id, species, tank, stage, hatchDay, alive }) => [
            id,
            species,
            tank,
            stage,
            hatchDay === undefined ? "–" : `${daysBetween(hatchDay, today)} d`,
            alive === undefined ? "not counted" : sayCount(alive),
          ]),
        },
      },
    );
  },
});
