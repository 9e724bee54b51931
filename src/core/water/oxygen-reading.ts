import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type MgPerL, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { figure } from "./figure.ts";
import type { PercentSaturation } from "./oxygen-saturation.ts";
import { type OxygenConditions, oxygenSolubility } from "./oxygen-solubility.ts";
import type { OxygenEntry } from "./read-oxygen.ts";

/** One oxygen reading both ways. */
export interface OxygenReading {
  readonly mgPerL: Estimate<MgPerL>;
  readonly percent: Estimate<PercentSaturation>;
  /** What this water holds when fully aerated. */
  readonly saturation: Estimate<MgPerL>;
}

/** More than this no water keeps, even in sun and full of plants. Source: assumption. */
const MOST_PERCENT = 500;

/** A content as a share of saturation, or a share of saturation as a content. */
export function oxygenReading(
  reading: OxygenEntry,
  salinity: Estimate<PracticalSalinity>,
  temperature: Estimate<DegreesC>,
  air: OxygenConditions["air"],
): Answer<OxygenReading> | NoAnswer {
  if (reading.kind === "content") {
    const answer = oxygenSolubility(salinity, temperature, { air, measured: reading.mgPerL });
    if (answer.kind === "no-answer") return answer;
    const { saturation, percentOfSaturation } = answer.value;
    return {
      ...answer,
      value: {
        mgPerL: reading.mgPerL,
        percent: percentOfSaturation ?? exactly(as<PercentSaturation>(0)),
        saturation,
      },
    };
  }
  const { percent } = reading;
  const odd = [percent.low, percent.high].find((value) => !(value >= 0 && value <= MOST_PERCENT));
  if (odd !== undefined)
    return noAnswer("not-credible", {
      quantity: "share of saturation",
      value: odd,
      unit: "%",
      min: 0,
      max: MOST_PERCENT,
    });
  const full = oxygenSolubility(salinity, temperature, { air });
  if (full.kind === "no-answer") return full;
  const { saturation } = full.value;
  const { estimates, drivers } = propagate({ "share of saturation": percent, saturation }, (v) => ({
    content: as<MgPerL>((v["share of saturation"] / 100) * v.saturation),
  }));
  // The cautions for a low or a high reading hang on the content, so it is put through the same question.
  const judged = oxygenSolubility(salinity, temperature, {
    air,
    measured: exactly(estimates.content.best),
  });
  return {
    ...full,
    value: { mgPerL: estimates.content, percent, saturation },
    working: [
      ...full.working,
      `content = ${figure(percent.best)} % of ${figure(saturation.best)} mg/L = ${figure(estimates.content.best)} mg/L`,
    ],
    assumptions: [...full.assumptions, "the meter was set to this salinity and pressure"],
    cautions: judged.cautions,
    driver: drivers.content?.input === "saturation" ? (full.driver ?? drivers.content) : drivers.content,
  };
}
