import type { MgPerL, SquareMetres } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import type { CubicMetresPerDay } from "./chamber-oxygen.ts";
import { monod } from "./growth-kinetics.ts";
import { type GramsNPerM2Day, type MetresPerDay, OXYGEN_PER_N } from "./nitrification.ts";
import type { MgNPerL } from "./nitrogen-units.ts";

/** Oxygen at which nitrifiers, and other bacteria, work at half speed. Source: asm-iwa-str9, ASM3. */
export const NITRIFIER_HALF_OXYGEN = 0.5;
const OTHER_HALF_OXYGEN = 0.2;

/** How fast a film takes ammonia up in this water when oxygen is plentiful. */
export interface FilmSpeed {
  readonly firstOrder: MetresPerDay;
  readonly ceiling: GramsNPerM2Day;
}

/** One stirred box: what flows through it and what lives in it. */
export interface Box {
  readonly flow: CubicMetresPerDay;
  readonly area: SquareMetres;
  /** Oxygen that dirt and dosed carbon would use with plenty of it, g/d. */
  readonly wasteDemand: number;
  /** Oxygen transfer, m³/d brought to saturation. */
  readonly aeration: number;
}

/** What water carries. */
export interface Carried {
  readonly tan: MgNPerL;
  readonly oxygen: MgPerL;
}

/** Ammonia leaving a stirred box at one oxygen level: q (in − out) = area × uptake(out) × oxygen factor. */
function tanOut(box: Box, tanIn: MgNPerL, film: FilmSpeed, oxygen: number): MgNPerL {
  const area = box.area * monod(oxygen, NITRIFIER_HALF_OXYGEN);
  const atCeiling = tanIn - (area * film.ceiling) / box.flow;
  // Above this level the film is saturated; below it uptake follows the concentration.
  if (atCeiling >= film.ceiling / film.firstOrder) return as<MgNPerL>(atCeiling);
  return as<MgNPerL>((box.flow * tanIn) / (box.flow + area * film.firstOrder));
}

/**
 * What leaves a stirred box once it has settled, with nitrifiers and other bacteria sharing its
 * oxygen and both slowing down as it runs out.
 * Source: mass-balance; kinetics asm-iwa-str9 and nijhof-bovendeur-1990.
 * Throws: RangeError without flow.
 */
export function boxOut(box: Box, into: Carried, film: FilmSpeed, saturation: MgPerL): Carried {
  if (!(box.flow > 0)) throw new RangeError("a filter box needs flow");
  const missing = (oxygen: number): number => {
    const nitrified = box.flow * (into.tan - tanOut(box, into.tan, film, oxygen));
    const used = OXYGEN_PER_N * nitrified + box.wasteDemand * monod(oxygen, OTHER_HALF_OXYGEN);
    return used - box.flow * (into.oxygen - oxygen) - box.aeration * (saturation - oxygen);
  };
  // Use rises and supply falls with the oxygen level, so there is one level where they meet.
  let low = 0;
  let high = Math.max(into.oxygen, saturation);
  for (let step = 0; step < 48; step += 1) {
    const middle = (low + high) / 2;
    if (missing(middle) > 0) high = middle;
    else low = middle;
  }
  const oxygen = as<MgPerL>((low + high) / 2);
  return { tan: tanOut(box, into.tan, film, oxygen), oxygen };
}
