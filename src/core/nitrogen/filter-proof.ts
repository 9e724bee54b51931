import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { PASS_BELOW_MG_PER_L } from "./cycling.ts";
import { type Proof, proofOf, type Trial } from "./cycling-proof.ts";
import type { MgNPerL } from "./nitrogen-units.ts";
import { figureRefusal } from "./stocking-domain.ts";

/** Whether a new filter can be trusted with animals, by what it made of ammonia put in to try it. */
export function filterProof(trials: readonly Trial[], wantedDose: MgNPerL): Answer<Proof> | NoAnswer {
  const refusal = figureRefusal([
    ["ammonia given", wantedDose, "mg/L N", 0.1, 20],
    ...trials.flatMap((trial) => [
      ["hours until the test", trial.hours, "h", 1, 1000] as const,
      ["ammonia left", trial.ammonia.best, "mg/L N", 0, 200] as const,
      ["nitrite left", trial.nitrite.best, "mg/L N", 0, 200] as const,
    ]),
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  return {
    kind: "answer",
    value: proofOf(trials, wantedDose),
    method: "a dose of ammonia has to be gone within a day, with its nitrite, twice running",
    working: [
      `gone = ammonia and nitrite, both as nitrogen, under ${PASS_BELOW_MG_PER_L} mg/L a day after the dose`,
      "ready = gone in the last two trials, one after the other",
    ],
    constants: [
      {
        name: "counts as gone",
        value: `under ${PASS_BELOW_MG_PER_L} mg/L as nitrogen`,
        source: "common-practice",
      },
      { name: "trials", value: "two running", source: "common-practice" },
    ],
    sources: ["common-practice"],
    assumptions: [
      "the dose stands for what the animals will give off in a day",
      "no binder went in, which would spoil the ammonia test",
    ],
    cautions: [caution("ammonia-no-animals", {}, "danger")],
  };
}
