import {
  as,
  type DegreesC,
  type MicromolPerKg,
  type PH,
  type PracticalSalinity,
  type Quantity,
} from "../quantity/units.ts";
import { lnK0, lnKB, lnKW, log10K1, log10K2, totalBoron } from "./equilibrium-constants.ts";

/** Microatmospheres of gas. */
export type Microatm = Quantity<"µatm">;

/** How near carbon dioxide comes to an ideal gas near 25 °C at one atmosphere. Source: weiss-1974. */
const FUGACITY_PER_PRESSURE = 0.997;
const PH_SEARCH = { min: 5, max: 11 } as const;
const BISECTIONS = 60;

/** Everything the sums need of one water; concentrations in mol/kg, total scale. */
interface Water {
  readonly k0: number;
  readonly k1: number;
  readonly k2: number;
  readonly kb: number;
  readonly kw: number;
  readonly boron: number;
}

function waterOf(s: PracticalSalinity, temperatureC: DegreesC): Water {
  return {
    k0: Math.exp(lnK0(s, temperatureC)),
    k1: 10 ** log10K1(s, temperatureC),
    k2: 10 ** log10K2(s, temperatureC),
    kb: Math.exp(lnKB(s, temperatureC)),
    kw: Math.exp(lnKW(s, temperatureC)),
    boron: totalBoron(s),
  };
}

/** Charge of borate and water, mol/kg. On the total scale hydrogen held by sulphate is counted in h. */
function otherAlkalinity({ kb, kw, boron }: Water, h: number): number {
  return (boron * kb) / (kb + h) + kw / h - h;
}

/** Equivalents that each mole of dissolved carbon brings at this acidity. */
function carbonCharge({ k1, k2 }: Water, h: number): number {
  return (k1 * h + 2 * k1 * k2) / (h * h + k1 * h + k1 * k2);
}

/** Share of dissolved carbon that is carbon dioxide itself. */
function gasShare({ k1, k2 }: Water, h: number): number {
  return (h * h) / (h * h + k1 * h + k1 * k2);
}

/** Dissolved inorganic carbon from alkalinity and pH; µmol/kg, total scale.
 *  Source: dickson-2007-guide. Below zero where the pH cannot go with the alkalinity. */
export function carbonFromAlkalinityPH(
  alkalinity: MicromolPerKg,
  pHTotal: PH,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): MicromolPerKg {
  const water = waterOf(s, temperatureC);
  const h = 10 ** -pHTotal;
  return as<MicromolPerKg>(((alkalinity * 1e-6 - otherAlkalinity(water, h)) / carbonCharge(water, h)) * 1e6);
}

/** Fugacity of carbon dioxide in water of given carbon and pH (total scale). Source: weiss-1974. */
export function fugacityFromCarbonPH(
  carbon: MicromolPerKg,
  pHTotal: PH,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): Microatm {
  const water = waterOf(s, temperatureC);
  return as<Microatm>((carbon * gasShare(water, 10 ** -pHTotal)) / water.k0);
}

/** Fugacity of carbon dioxide from alkalinity and pH (total scale). Source: dickson-2007-guide, weiss-1974. */
export function fugacityFromAlkalinityPH(
  alkalinity: MicromolPerKg,
  pHTotal: PH,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): Microatm {
  const carbon = carbonFromAlkalinityPH(alkalinity, pHTotal, s, temperatureC);
  return fugacityFromCarbonPH(carbon, pHTotal, s, temperatureC);
}

/** Alkalinity of water with given carbon and pH (total scale), µmol/kg. Source: dickson-2007-guide. */
export function alkalinityFromCarbonPH(
  carbon: MicromolPerKg,
  pHTotal: PH,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): MicromolPerKg {
  const water = waterOf(s, temperatureC);
  const h = 10 ** -pHTotal;
  return as<MicromolPerKg>(carbon * carbonCharge(water, h) + otherAlkalinity(water, h) * 1e6);
}

/** pH (total scale) of water with given alkalinity and carbon.
 *  Source: dickson-2007-guide. Throws: RangeError when no pH between 5 and 11 fits. */
export function pHFromAlkalinityCarbon(
  alkalinity: MicromolPerKg,
  carbon: MicromolPerKg,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): PH {
  return bisect((pH) => alkalinityFromCarbonPH(carbon, pH, s, temperatureC) - alkalinity);
}

/** pH (total scale) of water with given alkalinity, in balance with a fugacity of carbon dioxide.
 *  Source: dickson-2007-guide. Throws: RangeError when no pH between 5 and 11 fits. */
export function pHFromAlkalinityFugacity(
  alkalinity: MicromolPerKg,
  fugacity: Microatm,
  s: PracticalSalinity,
  temperatureC: DegreesC,
): PH {
  const water = waterOf(s, temperatureC);
  return bisect((pH) => {
    const carbon = as<MicromolPerKg>((fugacity * water.k0) / gasShare(water, 10 ** -pH));
    return alkalinityFromCarbonPH(carbon, pH, s, temperatureC) - alkalinity;
  });
}

/** Pressure of the gas from its fugacity, and back. Source: weiss-1974. */
export function pressureOfFugacity(fugacity: Microatm): Microatm {
  return as<Microatm>(fugacity / FUGACITY_PER_PRESSURE);
}
export function fugacityOfPressure(pressure: Microatm): Microatm {
  return as<Microatm>(pressure * FUGACITY_PER_PRESSURE);
}

/** Where a function rising with pH crosses zero. Throws: RangeError when it does not. */
function bisect(rising: (pH: PH) => number): PH {
  let low: number = PH_SEARCH.min;
  let high: number = PH_SEARCH.max;
  if (!(rising(as<PH>(low)) <= 0 && rising(as<PH>(high)) >= 0)) {
    throw new RangeError("no pH between 5 and 11 goes with these figures");
  }
  for (let step = 0; step < BISECTIONS; step += 1) {
    const middle = (low + high) / 2;
    if (rising(as<PH>(middle)) < 0) low = middle;
    else high = middle;
  }
  return as<PH>((low + high) / 2);
}
