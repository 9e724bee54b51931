import { hatchNights, hatchWindow } from "../../src/core/breeding/hatch-window.ts";
import { hatchSlot } from "../../src/core/breeding/ledger/advance.ts";
import { nightDuties } from "../../src/core/breeding/night-duties.ts";
import { groupOf, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply, UserError } from "../../src/kit/index.ts";
import { sayRefusal } from "../../src/wording/index.ts";

export default defineCommand({
  name: "hatch",
  summary: "Plan who watches on the nights a batch may hatch",
  options: { batch: batchOption("Which eggs, e.g. B3") },
  examples: ["/rota hatch batch:B3"],
  run({ batch }, context): Reply {
    if (batch.hatchDay !== undefined || batch.stage !== "eggs")
      throw new UserError(
        "not-now",
        `${batch.id} is past that: its eggs have hatched, or are no eggs any more.`,
      );
    const window = hatchWindow(batch, groupOf(context).state.hatches);
    if (window.kind === "no-answer") throw new UserError("not-now", sayRefusal(window.reason));
    const slot = hatchSlot(batch.id);
    const facts = writeFacts(context, ({ state, today }) => {
      const nights = hatchNights(window.value).filter((day) => day >= today);
      const planned = nightDuties(state, nights, slot);
      if (planned.length === 0)
        throw new UserError("not-now", "Those nights are past or planned already. /rota week shows them.");
      return { facts: planned, result: planned };
    });
    const group = groupOf(context);
    return told(
      context,
      `${batch.id}: nights to watch`,
      [
        ...facts.map(
          ({ day, person }) =>
            `${sayDay(day)}: ${person === undefined ? "open to all" : nameOf(group, person)}.`,
        ),
        `Lights out, a look after dusk; /spawn hatched batch:${batch.id} notes it, and the other nights fall away.`,
      ],
      { cautions: window.cautions },
    );
  },
});
