import {
  as,
  type DegreesC,
  type Fraction,
  type PracticalSalinity,
  type SquareMetres,
  type Watts,
} from "../quantity/units.ts";
import type { KilogramsPerDay } from "./plant-units.ts";

/** kPa. Source: buck-1981. */
const BUCK = { p0: 0.61121, a: 18.678, b: 234.5, c: 257.14 } as const;
/** Fall of vapour pressure per unit of salinity. Source: green-carritt-1967. */
const PER_SALINITY = 0.000537;
const AIR_KPA = 101.325;
/** J/(kg K) of dry air; kg water per kg dry air per pressure ratio. Source: from the molar masses of air and water. */
const DRY_AIR_GAS_CONSTANT = 287.042;
const WATER_TO_AIR = 0.621945;
/** Source: shah-2014. */
const SHAH = { convection: 35, still: 0.00005 } as const;
/** kg/(s m² kPa). Source: ashrae-hvac-applications. */
const ASHRAE = 4.0e-5;
/** A still surface, and one disturbed by jets and fans. Source: ashrae-hvac-applications. */
export const ACTIVITY = { still: 0.5, disturbed: 1 } as const;
/** W/m² per Pa, the equation a still pool gives 74 % of. Source: smith-lof-jones-1998 (95 Btu/(h ft² inHg), no wind). */
const SMITH_W_PER_M2_PA = 0.0885;
const SMITH_STILL = 0.74;
const HOURS_PER_DAY = 24;

/** Pressure of water vapour over water of a salinity, or in saturated air (salinity 0), kPa.
 *  Source: buck-1981, green-carritt-1967. Range: 0–50 °C. */
export function vapourPressure(t: DegreesC, s: PracticalSalinity = as<PracticalSalinity>(0)): number {
  const fresh = BUCK.p0 * Math.exp(((BUCK.a - t / BUCK.b) * t) / (BUCK.c + t));
  return fresh * (1 - PER_SALINITY * s);
}

/** Temperature at which the moisture of a room begins to settle. Source: buck-1981, inverted. */
export function dewPoint(room: DegreesC, humidity: Fraction): DegreesC {
  const aim = Math.log((vapourPressure(room) * humidity) / BUCK.p0);
  // (a − t/b)·t = aim·(c + t): a quadratic in t, whose smaller root is the temperature.
  const half = (BUCK.a - aim) * BUCK.b;
  return as<DegreesC>((half - Math.sqrt(half ** 2 - 4 * BUCK.b * aim * BUCK.c)) / 2);
}

/** Heat taken by each kilogram evaporated, J/kg: a line through 20 and 30 °C. Source: iapws-if97. */
export function latentHeat(t: DegreesC): number {
  return (2.454 - 0.0024 * (t - 20)) * 1e6;
}

/**
 * Water leaving a still surface, kg/(m² h), by buoyancy of moist air: densities are of the dry air in
 * a cubic metre. The larger of that and a share for air that only drifts; never less than nothing.
 * Source: shah-2014. Range: 7–50 °C of water, 6–35 °C of air. Throws: RangeError when humidity leaves 0–1.
 */
export function shahRate(water: DegreesC, room: DegreesC, humidity: Fraction, s?: PracticalSalinity): number {
  requireHumidity(humidity);
  const pw = vapourPressure(water, s);
  const pr = vapourPressure(room) * humidity;
  const atWater = moistAir(water, pw);
  const inRoom = moistAir(room, pr);
  const buoyancy = inRoom.dryDensity - atWater.dryDensity;
  const rising =
    buoyancy > 0
      ? SHAH.convection *
        atWater.dryDensity *
        Math.cbrt(buoyancy) *
        (atWater.humidityRatio - inRoom.humidityRatio)
      : 0;
  return Math.max(0, rising, SHAH.still * (pw - pr) * 1000);
}

/** Water leaving a surface by the pool formula of building services.
 *  Source: ashrae-hvac-applications. Throws: RangeError when humidity leaves 0–1. */
export function ashraeEvaporation(
  area: SquareMetres,
  water: DegreesC,
  room: DegreesC,
  humidity: Fraction,
  activity: number,
  s?: PracticalSalinity,
): KilogramsPerDay {
  requireHumidity(humidity);
  const drive = vapourPressure(water, s) - vapourPressure(room) * humidity;
  return as<KilogramsPerDay>(Math.max(0, ASHRAE * area * drive * activity * 86_400));
}

/** Water leaving a still pool as measured in use. Source: smith-lof-jones-1998. */
export function smithEvaporation(
  area: SquareMetres,
  water: DegreesC,
  room: DegreesC,
  humidity: Fraction,
  s?: PracticalSalinity,
): KilogramsPerDay {
  requireHumidity(humidity);
  const drivePa = (vapourPressure(water, s) - vapourPressure(room) * humidity) * 1000;
  const watts = SMITH_STILL * SMITH_W_PER_M2_PA * drivePa * area;
  return as<KilogramsPerDay>(Math.max(0, (watts * 86_400) / latentHeat(water)));
}

/** Shah's rate over an area and a day. Source: shah-2014. */
export function shahEvaporation(
  area: SquareMetres,
  water: DegreesC,
  room: DegreesC,
  humidity: Fraction,
  s?: PracticalSalinity,
): KilogramsPerDay {
  return as<KilogramsPerDay>(shahRate(water, room, humidity, s) * area * HOURS_PER_DAY);
}

/** Heat that evaporation takes from the water. Source: iapws-if97. */
export function latentPower(evaporation: KilogramsPerDay, t: DegreesC): Watts {
  return as<Watts>((evaporation * latentHeat(t)) / 86_400);
}

function moistAir(t: DegreesC, vapourKPa: number) {
  return {
    dryDensity: ((AIR_KPA - vapourKPa) * 1000) / (DRY_AIR_GAS_CONSTANT * (t + 273.15)),
    humidityRatio: (WATER_TO_AIR * vapourKPa) / (AIR_KPA - vapourKPa),
  };
}

function requireHumidity(humidity: Fraction): void {
  if (!(humidity >= 0 && humidity <= 1)) throw new RangeError(`relative humidity cannot be ${humidity}`);
}
