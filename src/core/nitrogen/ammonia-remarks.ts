import { as, type PH } from "../quantity/units.ts";
import { type Caution, caution } from "../result.ts";
import { LEVELS, nh3Share } from "./ammonia-levels.ts";
import { rounded } from "./rounded.ts";
import type { AmmoniaSituation, UnionisedAmmonia } from "./unionised-ammonia.ts";

/** Change of the whole water beyond which it should be split. Source: common-practice. */
const LARGE_CHANGE = 0.5;

/** What to heed about an ammonia reading. */
export function ammoniaCautions(given: AmmoniaSituation, value: UnionisedAmmonia): Caution[] {
  const cautions: Caution[] = [];
  const worst = value.stateAtWorst;
  if (worst === "emergency") {
    cautions.push(caution("ammonia-emergency", { limit: rounded(LEVELS.maximum.nh3) }, "danger"));
  } else if (worst === "act today") {
    cautions.push(caution("ammonia-act-today", { limit: rounded(LEVELS.harm.nh3, 2) }, "danger"));
  } else if (worst === "raised") {
    cautions.push(caution("ammonia-raised", { limit: LEVELS.target.nh3 }));
  }
  if (given.binderUsed === true) cautions.push(caution("binder-hides-ammonia", {}));
  const { pH, scale, temperatureC, salinity } = given;
  const higher = nh3Share(as<PH>(pH.best + 0.2), scale, temperatureC.best, salinity.best);
  const factor = rounded(higher / nh3Share(pH.best, scale, temperatureC.best, salinity.best), 2);
  if (worst !== "normal") cautions.push(caution("raising-ph-raises-ammonia", { step: 0.2, factor }));
  cautions.push(caution("ammonia-estimate", { phError: 0.2, factor }, "note"));
  const sourcePh = given.source?.pH;
  if (value.remedy !== undefined && sourcePh !== undefined && sourcePh.best > pH.best) {
    cautions.push(
      caution("source-water-has-higher-ph", { tank: rounded(pH.best), source: rounded(sourcePh.best) }),
    );
  }
  if (value.remedy !== undefined && value.remedy.waterChange === undefined) {
    cautions.push(caution("change-cannot-reach-limit", { limit: value.limitNh3 }));
  }
  const share = value.remedy?.waterChange?.best ?? 0;
  if (share > LARGE_CHANGE)
    cautions.push(caution("large-change-in-steps", { percent: rounded(share * 100, 2) }));
  if (scale === "buffers" && salinity.best > 0.5 && salinity.best < 20) {
    cautions.push(
      caution(
        "outside-fitted-range",
        { quantity: "salinity", value: rounded(salinity.best), unit: "", min: 20, max: 44.5 },
        "note",
      ),
    );
  }
  return cautions;
}
