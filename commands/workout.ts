import { readSum } from "../src/core/expression/read-sum.ts";
import { workOut } from "../src/core/expression/work-out.ts";
import { showEstimate } from "../src/core/quantity/show.ts";
import { noAnswer } from "../src/core/result.ts";
import { parseFormula } from "../src/expression/parse-formula.ts";
import { answerReply, defineCommand, reading } from "../src/kit/index.ts";

const FIGURES = { significant: 6 } as const;

export default defineCommand({
  name: "workout",
  summary: "Work out a sum, units and all: 180 US gal + 2 x 20 US gal",
  options: {
    expression: reading(
      "Figures with units, + − × ÷ ^, brackets, sqrt, round, min, max, ln, log10 …",
      "0.3 * 2300 L",
      (text, { habits }) => readSum(text, habits),
    ),
  },
  examples: [
    "/workout expression:0.3 * 2300 L",
    "/workout expression:180 US gal + 2 x 20 US gal",
    "/workout expression:2300 L / 8000 L/h",
  ],
  audience: "channel",
  async run({ expression: sum }, context) {
    const parsed = await parseFormula(sum.formula);
    const answer = parsed === undefined ? noAnswer("sum-not-understood", {}) : workOut(sum, parsed);
    return answerReply(answer, context, {
      title: "Worked out",
      headline: ({ result }) => showEstimate(result.estimate, result.unit, FIGURES),
      body: () => [`${sum.said}.`],
      table: ({ others }) => ({
        columns: ["the same", "in"],
        rows: others.map(({ unit, estimate }) => [showEstimate(estimate, "", FIGURES), unit]),
      }),
    });
  },
});
