import { correctedIn } from "../../src/core/breeding/ledger/corrections.ts";
import { groupOf, mustBelong, nameOf, sayDay } from "../../src/kit/breeding/group.ts";
import { numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { sayFact } from "../../src/kit/breeding/say-fact.ts";
import { defineCommand, optional, type Reply } from "../../src/kit/index.ts";

const USUAL = 15;
const MOST = 60;

export default defineCommand({
  name: "ledger",
  summary: "The last entries of the breeding ledger: what, who and when",
  options: { last: optional(numberOption(`How many entries; ${USUAL} if left out`, "30")) },
  examples: ["/group ledger", "/group ledger last:30"],
  run({ last }, context): Reply {
    const group = groupOf(context);
    mustBelong(group);
    const { records } = context;
    const lines = records.breeding.ledger(group.club, Math.min(last ?? USUAL, MOST));
    const gone = correctedIn(records.breeding.ledger(group.club, MOST, "corrected"));
    return told(
      context,
      `${group.state.name}: the ledger`,
      ["Newest first. /group correct entry:… takes one back; it stays visible."],
      {
        table: {
          columns: ["no.", "day", "who", "what"],
          rows: lines.map((line) => [
            String(line.number),
            sayDay(line.day),
            nameOf(group, line.by),
            `${sayFact(line.fact, group)}${line.note === undefined ? "" : ` (${line.note})`}${gone.has(line.number) ? ", taken back" : ""}`,
          ]),
        },
      },
    );
  },
});
