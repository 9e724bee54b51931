import type { Centimetres, DegreesC, Grams, Quantity } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { requirePositive } from "../water/domain.ts";
import type { Fish, Habit } from "./fish.ts";

/** Oxygen used by an animal. */
export type MgOxygenPerHour = Quantity<"mg O₂/h">;

const OXYGEN_MG_PER_MMOL = 31.9988;
const KELVIN = 273.15;

/** Spread of one fish about its species' length–weight curve, one standard deviation, as a factor.
 *  Source: from memory, about ±30 % for coefficients of this kind (morais-bellwood-rfishprod). */
export const MASS_SPREAD_FACTOR = 1.3;

/** Body mass from total length, W = a·L^b. Source: the fish's own entry.
 *  Throws: RangeError when the length is not above zero. */
export function fishMass(fish: Pick<Fish, "a" | "b" | "lengthUnit">, lengthCm: Centimetres): Grams {
  requirePositive("length", lengthCm);
  const length = fish.lengthUnit === "mm" ? lengthCm * 10 : lengthCm;
  return as<Grams>(fish.a * length ** fish.b);
}

/** Oxygen of a resting bony fish. Source: clarke-johnston-1999: ln R (mmol/h at 50 g) = 15.7 − 5020/T, mass exponent 0.80.
 *  Range: 0–30 °C about; masses from grams to kilograms. */
export function restingOxygenAllTeleosts(
  massG: Grams,
  temperatureC: DegreesC,
  exponent = 0.8,
): MgOxygenPerHour {
  const at50g = Math.exp(15.7 - (5.02 * 1000) / (temperatureC + KELVIN));
  return as<MgOxygenPerHour>(at50g * OXYGEN_MG_PER_MMOL * (massG / 50) ** exponent);
}

/** Oxygen of a resting sit-and-wait predator at 25 °C. Source: stonefish-respirometry. Range: 102 to some 500 g, above extrapolated. */
export function restingOxygenAmbush(massG: Grams): MgOxygenPerHour {
  return as<MgOxygenPerHour>(0.0643 * massG ** 0.873);
}

/** How many times the resting rate a swimming fish uses over a day. Source: assumption. */
const ROUTINE_SWIMMING = 2;

/**
 * Low and high bounds of what one fish breathes between meals. Ambush predators lie between the
 * stonefish curve (brought to temperature with the teleost slope) and the curve of all teleosts;
 * swimmers between that curve and twice it. The best value is the geometric mean (assumption).
 */
export function restingOxygenBounds(
  massG: Grams,
  temperatureC: DegreesC,
  habit: Habit,
): { low: MgOxygenPerHour; high: MgOxygenPerHour } {
  const teleost = restingOxygenAllTeleosts(massG, temperatureC);
  const warming = teleost / restingOxygenAllTeleosts(massG, as<DegreesC>(25));
  const ambush = restingOxygenAmbush(massG) * warming;
  const swimming = teleost * ROUTINE_SWIMMING;
  return {
    low: as<MgOxygenPerHour>(habit === "swims" ? teleost : Math.min(ambush, teleost)),
    high: as<MgOxygenPerHour>(habit === "sits and waits" ? teleost : swimming),
  };
}
