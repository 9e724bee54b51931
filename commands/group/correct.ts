import { correctedIn, notCorrectable } from "../../src/core/breeding/ledger/corrections.ts";
import { groupOf, mustBelong, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { sayFact } from "../../src/kit/breeding/say-fact.ts";
import { defineCommand, optional, type Reply, UserError, words } from "../../src/kit/index.ts";

const ALL = 1_000_000;

export default defineCommand({
  name: "correct",
  summary: "Take back an entry of the breeding ledger: it stays visible and counts no more",
  options: {
    entry: numberOption("Its number in /group ledger", "42"),
    why: optional(words("A word on why", "counted twice", 120)),
  },
  examples: ["/group correct entry:42 why:counted twice"],
  run({ entry, why }, context): Reply {
    const group = groupOf(context);
    mustBelong(group);
    const { breeding } = context.records;
    const line = breeding.event(group.club, entry);
    if (line === undefined)
      throw new UserError("not-found", `There is no entry ${entry}. /group ledger lists them.`);
    writeFacts(
      context,
      ({ me }) => {
        const reason = notCorrectable(line, correctedIn(breeding.ledger(group.club, ALL, "corrected")));
        if (reason !== undefined) throw new UserError("not-now", reason);
        if (line.by !== me.number && me.role !== "keeper")
          throw new UserError("not-yours", "You take back your own entries; those of others, a keeper does.");
        return { facts: [{ kind: "corrected", event: entry }], result: undefined };
      },
      why === undefined ? {} : { note: why },
    );
    return told(context, `Entry ${entry} taken back`, [
      `${sayFact(line.fact, group)}, by ${nameOf(group, line.by)} on ${sayDay(line.day)}, counts no more. Log what is right as a new entry.`,
    ]);
  },
});
