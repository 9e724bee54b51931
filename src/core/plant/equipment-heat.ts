import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Watts } from "../quantity/units.ts";
import type { ElectricDevice } from "./electric-load.ts";

/** What is looked for when heat is weighed, so not counted as given. */
const SOUGHT = /heater|heating|chiller|cooler/i;

/** Mean power of all devices but heaters and chillers: all of it ends as heat. Source: first-principles. */
export function equipmentHeat(devices: readonly ElectricDevice[]): Estimate<Watts> | undefined {
  const counted = devices.filter(({ name }) => !SOUGHT.test(name));
  if (counted.length === 0) return undefined;
  const ranged: Readonly<Record<string, Estimate>> = Object.fromEntries(
    counted.flatMap(({ watts, hoursPerDay }, index) => [
      [`watts ${index}`, watts],
      [`hours ${index}`, hoursPerDay],
    ]),
  );
  return propagate(ranged, (v) => ({
    watts: as<Watts>(
      counted.reduce(
        (sum, _, index) => sum + ((v[`watts ${index}`] ?? 0) * (v[`hours ${index}`] ?? 0)) / 24,
        0,
      ),
    ),
  })).estimates.watts;
}
