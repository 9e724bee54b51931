import { as, type Grams, type Kilograms } from "../quantity/units.ts";

export function gramsOf(mass: Kilograms): Grams {
  return as<Grams>(mass * 1000);
}
