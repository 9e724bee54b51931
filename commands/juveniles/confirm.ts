import { QUARANTINE_DAYS } from "../../src/core/breeding/calendar.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { caution } from "../../src/core/result.ts";
import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { lineageLines } from "../../src/kit/breeding/lineage.ts";
import { numberOption } from "../../src/kit/breeding/options.ts";
import { handoverCautions, told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "confirm",
  summary: "Confirm your side of a transfer, or call it off",
  options: {
    transfer: numberOption("Its number", "1"),
    what: optional(choice("confirm if left out", ["confirm", "call off"])),
  },
  examples: ["/juveniles confirm transfer:1"],
  run({ transfer: number, what }, context): Reply {
    const before = groupOf(context).state.transfers[number];
    if (before === undefined) throw new UserError("not-found", `There is no transfer ${number}.`);
    writeFacts(context, ({ me }) => ({
      facts: [
        what === "call off"
          ? { kind: "transfer dropped", transfer: number }
          : {
              kind: "transfer confirmed",
              transfer: number,
              side: me.number === before.to ? "receiver" : "giver",
            },
      ],
      result: undefined,
    }));
    const group = groupOf(context);
    const after = group.state.transfers[number];
    if (what === "call off")
      return told(context, `Transfer ${number} is called off`, [
        "The animals count as here, and are free for others.",
      ]);
    if (after?.day === undefined)
      return told(context, `Transfer ${number}: one side has confirmed`, [
        `Waiting for ${after?.hasGiver === true ? nameOf(group, before.to) : "the giver, or any helper on that side"}.`,
      ]);
    const batch = group.state.batches[keyOf(before.batch)];
    return told(
      context,
      `Transfer ${number}: ${before.animals} ${before.species} are with ${nameOf(group, before.to)}`,
      [
        ...(batch?.alive === undefined ? [] : [`${batch.id} has left: ${sayCount(batch.alive)}.`]),
        ...(batch === undefined ? [] : lineageLines(batch, group)),
      ],
      {
        cautions: [
          caution("breeding-quarantine-reminder", { days: QUARANTINE_DAYS }),
          ...handoverCautions(before.species),
        ],
      },
    );
  },
});
