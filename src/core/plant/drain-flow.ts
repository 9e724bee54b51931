import { fallingRoot } from "../numeric/falling-root.ts";
import { as, type LitresPerHour, type Metres } from "../quantity/units.ts";
import { frictionFactor, ROUGHNESS_MM, reynolds } from "./pipe-loss.ts";
import { litresPerHour, type M2PerSecond, type Millimetres, STANDARD_GRAVITY } from "./plant-units.ts";
import { FRANCIS } from "./weir.ts";

/** Orifice coefficient of a flooded rim. Source: riser-stage-discharge. */
const ORIFICE = 0.6;
/** L/s per mm^(8/3). Source: wyly-eaton-1961, brought to litres and millimetres. */
const WALL_FILM = 3.146e-4;
/** Share of a vertical pipe the falling film may fill: usual, and never more. Source: wyly-eaton-1961. */
export const FILM_FILL = { usual: 1 / 4, most: 1 / 3 } as const;
/** Roughness of smooth plastic in Manning's equation. Source: manning. */
export const MANNING_N = 0.01;

/**
 * Flow of a drain that runs full, from the water surface above to the surface it ends under, or to the
 * centre of an outlet in air.
 * Source: energy-equation with swamee-jain-1976. The kinetic energy lost at the outlet is counted here,
 * so `sumK` holds entry, bends and valve, and no exit.
 * Throws: RangeError for a bore not above 0, or a negative drop, length or K.
 */
export function fullSiphonFlow(
  drop: Metres,
  length: Metres,
  boreMm: Millimetres,
  sumK: number,
  viscosity: M2PerSecond,
): LitresPerHour {
  if (!(drop >= 0 && length >= 0 && sumK >= 0)) throw new RangeError("drop, length and K cannot be negative");
  const boreM = boreMm / 1000;
  const area = (Math.PI / 4) * boreM ** 2;
  const energy = 2 * STANDARD_GRAVITY * drop;
  // Without any loss but the outlet's, the water would run at this speed.
  const fastest = litresPerHour(area * Math.sqrt(energy));
  return as<LitresPerHour>(
    fallingRoot(
      (flow) => {
        const v = flow / 3.6e6 / area;
        const re = reynolds(as<LitresPerHour>(flow), boreMm, viscosity);
        const f = re > 0 ? frictionFactor(re, ROUGHNESS_MM / boreMm) : 0;
        return energy - v ** 2 * (1 + (f * length) / boreM + sumK);
      },
      0,
      fastest,
    ),
  );
}

/** Flow into an open pipe standing upright, by the water's height over its rim: a weir around it while
 *  shallow, an orifice once flooded. Source: riser-stage-discharge. Throws: RangeError for a diameter not above 0. */
export function openStandpipeFlow(diameterMm: Millimetres, headMm: Millimetres): LitresPerHour {
  if (!(diameterMm > 0 && headMm >= 0))
    throw new RangeError("a standpipe needs a diameter and a head of 0 or more");
  const d = diameterMm / 1000;
  const h = headMm / 1000;
  const weir = FRANCIS * Math.PI * d * h ** 1.5;
  const orifice = ORIFICE * (Math.PI / 4) * d ** 2 * Math.sqrt(2 * STANDARD_GRAVITY * h);
  return as<LitresPerHour>(litresPerHour(Math.min(weir, orifice)));
}

/** Height over the rim an open standpipe needs for a flow: the inverse of `openStandpipeFlow`. */
export function openStandpipeHead(diameterMm: Millimetres, flow: LitresPerHour): Millimetres {
  if (!(diameterMm > 0 && flow >= 0))
    throw new RangeError("a standpipe needs a diameter and a flow of 0 or more");
  const d = diameterMm / 1000;
  const q = flow / 3.6e6;
  const weir = (q / (FRANCIS * Math.PI * d)) ** (2 / 3);
  const orifice = (q / (ORIFICE * (Math.PI / 4) * d ** 2)) ** 2 / (2 * STANDARD_GRAVITY);
  return as<Millimetres>(Math.max(weir, orifice) * 1000);
}

/** Flow down a vertical pipe as a film on its wall, air in the middle.
 *  Source: wyly-eaton-1961. Range: fill up to a third. Throws: RangeError outside 0–1/3 or for a bore not above 0. */
export function wallFilmFlow(boreMm: Millimetres, fill: number = FILM_FILL.usual): LitresPerHour {
  if (!(boreMm > 0 && fill > 0 && fill <= FILM_FILL.most + 1e-12)) {
    throw new RangeError("a wall film fills at most a third of a pipe that has a bore");
  }
  return as<LitresPerHour>(WALL_FILM * fill ** (5 / 3) * boreMm ** (8 / 3) * 3600);
}

/** Flow of a sloped pipe running part full, depth given as a share of the bore.
 *  Source: manning. Throws: RangeError when bore, slope or n is not above 0, or the depth leaves 0–1. */
export function slopedFlow(
  boreMm: Millimetres,
  depthShare: number,
  slope: number,
  n: number = MANNING_N,
): LitresPerHour {
  if (!(boreMm > 0 && slope > 0 && n > 0 && depthShare > 0 && depthShare <= 1)) {
    throw new RangeError("a sloped pipe needs a bore, a slope, a roughness and a depth of at most its bore");
  }
  const d = boreMm / 1000;
  const angle = 2 * Math.acos(1 - 2 * depthShare);
  const area = (d ** 2 / 8) * (angle - Math.sin(angle));
  const radius = area / ((d / 2) * angle);
  return as<LitresPerHour>(litresPerHour((area * radius ** (2 / 3) * Math.sqrt(slope)) / n));
}
