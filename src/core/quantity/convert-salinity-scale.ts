import type { Answer, NoAnswer } from "../result.ts";
import { convertSalinity, type SalinityScales } from "../water/convert-salinity.ts";
import { specificGravity } from "../water/specific-gravity.ts";
import { type Conversion, type ConversionQuestion, differs, FITTED_FIGURES } from "./conversion.ts";
import { type SalinityTarget, salinityTarget } from "./conversion-target.ts";
import { KIND_NOUNS } from "./convertible.ts";
import { type Estimate, exactly, mapEstimate } from "./estimate.ts";
import { gravityText } from "./salinity-conditions.ts";
import { as, type DegreesC, type PracticalSalinity } from "./units.ts";

/** Every scale in one table; a conductivity and a gravity carry their own temperatures. */
const SALINITY_ROWS: readonly (readonly [
  unit: string,
  scale: keyof SalinityScales,
  on?: SalinityTarget["on"],
])[] = [
  ["ppt (PSU)", "practical", "ppt"],
  ["SG 25/25 °C", "gravity25at25"],
  ["SG 20/20 °C", "gravity20at20"],
  ["SG 60/60 °F", "gravity60FAt60F"],
  ["SG 15.6/4 °C", "gravity15point6at4"],
  ["SG 20/4 °C", "gravity20at4"],
  ["mS/cm at 25 °C", "conductivityAt25", "mS/cm at 25 °C"],
  ["mS/cm as measured", "conductivityAsMeasured", "mS/cm as measured"],
  ["g/kg", "absolute", "g/kg"],
  ["g/L", "gramsPerLitre", "g/L"],
  ["g/kg chlorinity", "chlorinity", "chlorinity"],
  ["kg/m³ (density)", "density", "density"],
];

/** A salinity on another scale, or on all. Source: as convertSalinity. */
export function convertedSalinity(
  question: ConversionQuestion,
  salinity: Estimate<PracticalSalinity>,
): Answer<Conversion> | NoAnswer {
  const { to, habits, temperature = exactly(as<DegreesC>(25)) } = question;
  const target = to === undefined ? undefined : salinityTarget(to, habits);
  if (to !== undefined && target === undefined)
    return differs("salinity", to, ["ppt", "g/kg", "g/L", "SG 25/25", "mS/cm", "density"]);
  const answer = convertSalinity(salinity, temperature);
  if (answer.kind === "no-answer") return answer;
  const rows = SALINITY_ROWS.map(([unit, scale, on]) => ({
    on,
    row: { unit, estimate: answer.value[scale], significant: FITTED_FIGURES },
  }));
  const wanted =
    target?.on === "SG"
      ? {
          unit: `SG ${gravityText(target.gravity)}`,
          estimate: mapEstimate(salinity, (s) =>
            specificGravity(s, as<DegreesC>(target.gravity.sampleC), as<DegreesC>(target.gravity.referenceC)),
          ),
          significant: FITTED_FIGURES,
        }
      : rows.find(({ on }) => on !== undefined && on === target?.on)?.row;
  return {
    ...answer,
    value: {
      noun: KIND_NOUNS.salinity,
      ...(wanted === undefined ? {} : { wanted }),
      all: wanted === undefined ? rows.map(({ row }) => row) : [],
    },
  };
}
