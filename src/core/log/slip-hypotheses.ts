import { convertNitrogen } from "../nitrogen/nitrogen-units.ts";
import { as } from "../quantity/units.ts";
import { salinityFromSpecificGravity } from "../water/specific-gravity.ts";
import type { ParameterId } from "./parameters.ts";

/** A way in which a stored number can be wrong, and the number it would then be, in the same unit. */
export interface SlipHypothesis {
  readonly what: string;
  /** Undefined when this slip cannot have given that number. */
  readonly correct: (value: number) => number | undefined;
}

/** Mass of PO₄ over mass of the phosphorus in it: P 30.973762, O 15.9994. Source: standard-atomic-weights. */
export const PHOSPHATE_PER_PHOSPHORUS = (30.973762 + 4 * 15.9994) / 30.973762;
/** dKH in one meq/L: 1 °dH is 10 mg CaO per litre, CaO 56.0774 g/mol, two charges. Source: definition. */
export const DKH_PER_MEQ = 56.0774 / 2 / 10;
const USUAL_GRAVITY_C = as<Parameters<typeof salinityFromSpecificGravity>[1]>(25);

const times = (what: string, factor: number): SlipHypothesis => ({
  what,
  correct: (value) => value * factor,
});
const NO3 = convertNitrogen(1, "NO3-N", "NO3");
const NO2 = convertNitrogen(1, "NO2-N", "NO2");
const NH3 = convertNitrogen(1, "NH3-N", "NH3");
const NH4 = convertNitrogen(1, "NH4-N", "NH4");

const DECIMAL: readonly SlipHypothesis[] = [
  times("a decimal mark set one place too far right", 1 / 10),
  times("a decimal mark set one place too far left", 10),
];

/** The slips each parameter is known for; the number stored is in the catalogue's unit. */
const HYPOTHESES: Record<ParameterId, readonly SlipHypothesis[]> = {
  nitrate: [
    times("a reading as nitrogen (NO₃-N) taken as nitrate", NO3),
    times("a reading as nitrate taken as nitrogen (NO₃-N)", 1 / NO3),
    ...DECIMAL,
  ],
  nitrite: [
    times("a reading as nitrogen (NO₂-N) taken as nitrite", NO2),
    times("a reading as nitrite taken as nitrogen (NO₂-N)", 1 / NO2),
    ...DECIMAL,
  ],
  ammonia: [
    times("a reading as NH₄ taken as nitrogen", 1 / NH4),
    times("a reading as NH₃ taken as nitrogen", 1 / NH3),
    times("a reading as nitrogen taken as NH₄", NH4),
    times("a reading as nitrogen taken as NH₃", NH3),
    ...DECIMAL,
  ],
  phosphate: [
    times("a reading as phosphorus taken as phosphate", PHOSPHATE_PER_PHOSPHORUS),
    times("a reading as phosphate taken as phosphorus", 1 / PHOSPHATE_PER_PHOSPHORUS),
    ...DECIMAL,
  ],
  alkalinity: [
    times("dKH taken as meq/L", 1 / DKH_PER_MEQ),
    times("meq/L taken as dKH", DKH_PER_MEQ),
    ...DECIMAL,
  ],
  temperature: [
    { what: "°F taken as °C", correct: (celsius) => (celsius - 32) / 1.8 },
    { what: "°C taken as °F", correct: (celsius) => celsius * 1.8 + 32 },
    ...DECIMAL,
  ],
  salinity: [{ what: "a specific gravity taken as ppt", correct: gravityAsSalinity }, ...DECIMAL],
  calcium: DECIMAL,
  magnesium: DECIMAL,
  oxygen: DECIMAL,
  hardness: [times("mg/L as CaCO₃ taken as degrees", 1 / 17.848), ...DECIMAL],
  redox: DECIMAL,
  ph: DECIMAL,
};

export function slipHypotheses(id: ParameterId): readonly SlipHypothesis[] {
  return HYPOTHESES[id];
}

/** Read with the common scale of 25/25 °C: near enough to tell a gravity from a salinity. */
function gravityAsSalinity(value: number): number | undefined {
  if (!(value >= 1 && value <= 1.04)) return undefined;
  return salinityFromSpecificGravity(as(value), USUAL_GRAVITY_C, USUAL_GRAVITY_C);
}
