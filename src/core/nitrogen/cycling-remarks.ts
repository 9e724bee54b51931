import { type Caution, caution } from "../result.ts";
import type { CyclingOutlook } from "./cycling.ts";
import type { Member } from "./cycling-ensemble.ts";
import { type CyclingSituation, isSeedStopped } from "./cycling-input.ts";
import { rounded } from "./rounded.ts";
import { weightedEstimate } from "./weighted-quantile.ts";

/** Highest ammonia nitrogen usually kept while cycling, mg/L. Source: common-practice. */
const HIGHEST_DOSE = 3;
/** Alkalinity under which the first step slows badly, meq/L. Source: asm-iwa-str9 (twice the half level). */
const LITTLE_ALKALINITY = 1;

/** What to heed about a cycle. */
export function cyclingCautions(
  situation: CyclingSituation,
  value: CyclingOutlook,
  members: readonly Member[],
  days: number,
): Caution[] {
  const { ammonia, seed } = situation;
  const cautions: Caution[] = [];
  if (ammonia.kind === "dosed") cautions.push(caution("ammonia-no-animals", {}, "danger"));
  if (ammonia.kind === "animals") cautions.push(caution("cycling-with-animals", {}));
  if (ammonia.kind === "dosed" && ammonia.to.best > HIGHEST_DOSE) {
    cautions.push(
      caution("ammonia-slows-the-cycle", { mgNPerL: rounded(ammonia.to.best), max: HIGHEST_DOSE }),
    );
  }
  if (isSeedStopped(situation)) cautions.push(caution("fresh-seed-stops-in-salt", {}));
  if (seed.kind === "culture") cautions.push(caution("culture-strength-unknown", {}, "note"));
  if (seed.kind === "mature media" || seed.kind === "live rock") {
    cautions.push(caution("seed-may-carry-disease", {}, "note"));
  }
  if (ammonia.kind === "dosed" && !ammonia.isRepeated && ammonia.given === undefined) {
    cautions.push(caution("one-dose-is-not-enough", { proofMgPerL: rounded(value.proofMgPerL) }));
  } else if (value.readyShare < 0.9) {
    cautions.push(
      caution("cycle-may-outlast-outlook", { days, percent: Math.round((1 - value.readyShare) * 100) }),
    );
  }
  if (situation.alkalinity !== undefined) {
    const least = weightedEstimate(
      members.map(({ run }) => run.leastAlkalinity),
      members.map(({ weight }) => weight),
    );
    if (least.best < LITTLE_ALKALINITY) {
      cautions.push(
        caution("alkalinity-stalls-cycle", { leastMeqPerL: rounded(Math.max(0, least.best), 2) }),
      );
    }
  }
  if (value.misfits.length > 0) {
    cautions.push(
      caution("readings-do-not-fit", { days: [...new Set(value.misfits.map(({ day }) => day))].join(", ") }),
    );
  }
  cautions.push(caution("stock-slowly-after-cycling", {}, "note"));
  return cautions;
}
