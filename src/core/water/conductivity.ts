import { as, type DegreesC, type MilliSiemensPerCm, type PracticalSalinity } from "../quantity/units.ts";
import { requireWithin } from "./domain.ts";
import { invertRising } from "./invert.ts";
import { polynomial } from "./polynomial.ts";
import { type DegreesT68, t68FromT90 } from "./temperature-scale.ts";

/** PSS-78, all unitless, in powers of √Rt (a, b), t68 (c). Source: fofonoff-millard-1983. */
const a = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081];
const b = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144];
const k = 0.0162;
const c = [0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9];
/** The effect of pressure, in dbar. Source: fofonoff-millard-1983. */
const d = { t: 3.426e-2, tt: 4.464e-4, r: 4.215e-1, tr: -3.107e-3 };
const e = [2.07e-5, -6.37e-10, 3.989e-15];
/** Conductivity of standard seawater at 15 °C (IPTS-68). Source: culkin-smith-1980. */
const STANDARD_SEAWATER_MS_CM = 42.914;
/** The terms of the low-salinity correction. Source: hill-dauphinee-woods-1986. */
const HILL_A0 = 0.008;
const HILL_B0 = 0.0005;
/** The correction is used below this salinity. Source: hill-dauphinee-woods-1986. */
const HILL_BELOW = 2;

/** √Rt at which the search for a salinity stops: far past any brine a member could mix (salinity 119 at 25 °C). */
const HIGHEST_ROOT = 1.75;
/** A salinity smaller than this, or a hair below zero, is rounding and not salt. Source: assumption. */
const NOTHING = 1e-5;

/** Where PSS-78 was fitted. */
export const CONDUCTIVITY_FITTED = {
  salinity: { min: 2, max: 42 },
  temperatureC: { min: -2, max: 35 },
} as const;

function temperatureTerm(t68: DegreesT68): number {
  return (t68 - 15) / (1 + k * (t68 - 15));
}

function pss78(rt: number, t68: DegreesT68): number {
  const x = Math.sqrt(rt);
  return polynomial(a, x) + temperatureTerm(t68) * polynomial(b, x);
}

/** PSS-78 with the low-salinity correction, before it is made to meet PSS-78 at 2. */
function hill(rt: number, t68: DegreesT68): number {
  const x = 400 * rt;
  const y = 100 * rt;
  const root = Math.sqrt(y);
  return (
    pss78(rt, t68) -
    HILL_A0 / (1 + 1.5 * x + x * x) -
    (HILL_B0 * temperatureTerm(t68)) / (1 + root + y + y * root)
  );
}

/** Salinity from Rt, with the corrected scale below 2 scaled so that the two meet there without a step. */
function salinityFromRt(rt: number, t68: DegreesT68): number {
  const plain = pss78(rt, t68);
  if (plain >= HILL_BELOW) return plain;
  const rootAtTwo = invertRising((x) => pss78(x * x, t68), HILL_BELOW, 0, HIGHEST_ROOT);
  const low = (hill(rt, t68) * HILL_BELOW) / hill(rootAtTwo * rootAtTwo, t68);
  return low < NOTHING ? 0 : low;
}

function requireWaterTemperature(t: number): void {
  requireWithin("temperature", t, -20, 100);
}

/**
 * Practical salinity from R, the conductivity over that of standard seawater at 15 °C and no pressure;
 * the scale as defined, without the low-salinity correction.
 * Source: fofonoff-millard-1983; check values p. 9.
 * Range: salinity 2–42, −2 to 35 °C (t68), 0–10 000 dbar.
 * Throws: RangeError when R or pressure is negative or the temperature outside −20 to 100 °C.
 */
export function salinityFromRatio(ratio: number, t68: DegreesT68, pDbar: number): PracticalSalinity {
  requireWithin("conductivity ratio", ratio, 0);
  requireWithin("pressure", pDbar, 0, 12_000);
  requireWaterTemperature(t68);
  const pressureEffect =
    1 + (pDbar * polynomial(e, pDbar)) / (1 + d.t * t68 + d.tt * t68 * t68 + (d.r + d.tr * t68) * ratio);
  return as<PracticalSalinity>(pss78(ratio / (polynomial(c, t68) * pressureEffect), t68));
}

/**
 * Practical salinity from an uncompensated conductivity and the temperature it was measured at.
 * Below 2 the low-salinity correction applies. For seawater salt only: a tap water's conductivity
 * comes from other ions and gives no salinity.
 * Source: fofonoff-millard-1983, culkin-smith-1980; below 2 hill-dauphinee-woods-1986, made to join
 * at 2 as in gsw-3-6-16.
 * Range: salinity 0–42, −2 to 35 °C.
 * Throws: RangeError when the conductivity is negative or the temperature outside −20 to 100 °C.
 */
export function salinityFromConductivity(conductivity: MilliSiemensPerCm, t: DegreesC): PracticalSalinity {
  requireWithin("conductivity", conductivity, 0);
  requireWaterTemperature(t);
  const t68 = t68FromT90(t);
  const rt = conductivity / STANDARD_SEAWATER_MS_CM / polynomial(c, t68);
  return as<PracticalSalinity>(salinityFromRt(rt, t68));
}

/**
 * The conductivity that water of this salinity has at this temperature, uncompensated.
 * Source: as `salinityFromConductivity`, solved for conductivity.
 * Range: salinity 0–42, −2 to 35 °C.
 * Throws: RangeError when salinity is negative or above about 110, or the temperature outside −20 to 100 °C.
 */
export function conductivityFromSalinity(s: PracticalSalinity, t: DegreesC): MilliSiemensPerCm {
  requireWithin("salinity", s, 0);
  requireWaterTemperature(t);
  const t68 = t68FromT90(t);
  const root = s === 0 ? 0 : invertRising((x) => salinityFromRt(x * x, t68), s, 0, HIGHEST_ROOT);
  return as<MilliSiemensPerCm>(root * root * polynomial(c, t68) * STANDARD_SEAWATER_MS_CM);
}

/**
 * Practical salinity from a display already brought to 25 °C by a compensation nobody knows: exact
 * when the sample was at 25 °C.
 * Source: as `salinityFromConductivity` at 25 °C. Range: salinity 0–42.
 * Throws: RangeError when the conductivity is negative.
 */
export function salinityFromConductivityAt25(c25: MilliSiemensPerCm): PracticalSalinity {
  return salinityFromConductivity(c25, as<DegreesC>(25));
}

/**
 * Practical salinity from a display brought to 25 °C by a fixed percentage per °C (2.0 or 1.91 are
 * usual, common practice): the compensation is undone, and the true conductivity used.
 * Source: as `salinityFromConductivity`. Range: salinity 0–42, −2 to 35 °C.
 * Throws: RangeError when the undone conductivity is negative, or as `salinityFromConductivity` does.
 */
export function salinityFromLinearCompensated(
  c25Display: MilliSiemensPerCm,
  t: DegreesC,
  alphaPercentPerC: number,
): PracticalSalinity {
  requireWithin("compensation", alphaPercentPerC, 0, 10);
  const asMeasured = c25Display * (1 + (alphaPercentPerC / 100) * (t - 25));
  return salinityFromConductivity(as<MilliSiemensPerCm>(asMeasured), t);
}
