import { as, type DegreesC, type PH, type PracticalSalinity } from "../quantity/units.ts";
import { lnKF, lnKS, totalFluoride, totalSulphate } from "./equilibrium-constants.ts";

/**
 * What a pH was measured against. "NBS": a meter calibrated in ordinary 4, 7 and 10 buffers; "total": sea-water
 * buffer or dye, hydrogen ions with those held by sulphate; "seawater": with those held by fluoride too;
 * "free": hydrogen ions alone.
 */
export type PHScale = "NBS" | "total" | "seawater" | "free";

/** Apparent activity coefficient of hydrogen ions in sea water, unitless. Source: takahashi-1982. */
export function hydrogenActivity(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = temperatureC + 273.15;
  return 1.2948 - 0.002036 * t + (4.607e-4 - 1.475e-6 * t) * s * s;
}

/** What to add to a pH on the given scale to have it on the total scale.
 *  Source: takahashi-1982, dickson-1990-sulphate, dickson-riley-1979. */
export function toTotalScale(scale: PHScale, s: PracticalSalinity, temperatureC: DegreesC): number {
  const sulphate = totalSulphate(s) / Math.exp(lnKS(s, temperatureC));
  const fluoride = totalFluoride(s) / Math.exp(lnKF(s, temperatureC));
  const fromSeawater = Math.log10((1 + sulphate + fluoride) / (1 + sulphate));
  switch (scale) {
    case "total":
      return 0;
    case "seawater":
      return fromSeawater;
    case "free":
      return -Math.log10(1 + sulphate);
    case "NBS":
      return Math.log10(hydrogenActivity(s, temperatureC)) + fromSeawater;
  }
}

/** A pH moved from one scale to another, same water. Source: as `toTotalScale`. */
export function convertPH(
  pH: PH,
  from: PHScale,
  to: PHScale,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): PH {
  return as<PH>(pH + toTotalScale(from, s, temperatureC) - toTotalScale(to, s, temperatureC));
}
