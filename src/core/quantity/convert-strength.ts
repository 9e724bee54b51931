import { comparable } from "../dosing/strength.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import {
  type Conversion,
  type ConversionQuestion,
  type Converted,
  differs,
  MOST_FIGURES,
  type Of,
  plain,
} from "./conversion.ts";
import { type StrengthUnit, strengthUnit } from "./conversion-target.ts";
import { mapEstimate, propagate } from "./estimate.ts";

const STRENGTH_NEEDS_DENSITY = {
  what: "the density of the solution",
  example: "“density:1.15 kg/L”",
} as const;

/** The strength of a solution in another unit. Source: definition. */
export function convertedStrength(
  { to, density }: ConversionQuestion,
  { strength }: Of<"strength">,
): Answer<Conversion> | NoAnswer {
  const own = strength.density ?? density;
  const scale = comparable(own === undefined ? strength : { ...strength, density: own }, "solution");
  if ("kind" in scale)
    return scale.reason.code === "weight-percent-needs-density"
      ? noAnswer("conversion-needs", STRENGTH_NEEDS_DENSITY)
      : scale;
  const isByMass = scale.family === "mass in volume";
  const usual: readonly StrengthUnit[] = isByMass
    ? ["% w/v", "g/L", "mg/mL", "mg/L", ...(own === undefined ? [] : (["% w/w"] as const))]
    : ["% v/v", "mL/L"];
  const target = to === undefined ? undefined : strengthUnit(to);
  const fits = target !== undefined && (usual.includes(target) || (isByMass && target === "% w/w"));
  if (to !== undefined && !fits) return differs("strength", to, usual);
  if (target === "% w/w" && own === undefined) return noAnswer("conversion-needs", STRENGTH_NEEDS_DENSITY);
  const inUnit = (unit: StrengthUnit): Converted => ({
    unit,
    estimate:
      unit === "% w/w" && strength.kind === "% w/w"
        ? strength.value
        : unit === "% w/w" && own !== undefined
          ? propagate({ amount: scale.amount, density: own }, (v) => ({
              share: (v.amount / v.density) * 100,
            })).estimates.share
          : mapEstimate(scale.amount, (amount) => amount / PER_UNIT[unit]),
    significant: MOST_FIGURES,
  });
  const wanted = target === undefined ? undefined : inUnit(target);
  return {
    ...plain("strength", wanted, wanted === undefined ? usual.map(inUnit) : []),
    method: "By what the unit means",
    working: [
      "1 % w/v is 1 g in 100 mL of solution, so 10 g/L; 1 g/L is 1 mg/mL",
      "1 % v/v is 1 mL in 100 mL, so 10 mL/L; 1 % w/w is 1 g in 100 g, so g/L = % ÷ 100 × density in kg/m³",
    ],
    sources: ["definition"],
  };
}

/** On the scale of its family (g/L, or the share by volume) in one of the unit. Source: definition. */
const PER_UNIT: Readonly<Record<StrengthUnit, number>> = {
  "% w/v": 10,
  "g/L": 1,
  "mg/mL": 1,
  "mg/L": 0.001,
  "% w/w": 1,
  "% v/v": 0.01,
  "mL/L": 0.001,
};
