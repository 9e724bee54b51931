import { as, type DegreesC } from "../quantity/units.ts";
import { arrheniusFactor } from "./growth-kinetics.ts";
import { NITROGEN_G_PER_MOL } from "./nitrogen-units.ts";
import { stepper } from "./runge-kutta.ts";

/**
 * Two groups of nitrifiers on ammonium and nitrite: rounded mid-range figures at 20 °C, per day and mg/L.
 * Source: nitrifier-parameter-set, within the ranges of asm-iwa-str9.
 */
export const NITRIFIERS = {
  ammonia: { growth: 0.8, halfFood: 1.0, halfOxygen: 0.4, yield: 0.21, decay: 0.05, energyJ: 68_000 },
  nitrite: { growth: 0.8, halfFood: 0.5, halfOxygen: 1.1, yield: 0.06, decay: 0.05, energyJ: 44_000 },
  /** g N per g of biomass, counted as oxygen demand. */
  nitrogenInCells: 0.086,
  referenceC: as<DegreesC>(20),
} as const;

/** The activated-sludge sets were fitted up to 25 °C; above 30 °C growth is not let rise further. */
const HOTTEST_C = 30;
/** Alkalinity at which ammonia oxidisers work at half speed, meq/L. Source: asm-iwa-str9, ASM2d. */
const HALF_ALKALINITY = 0.5;
/** Ammonium under which cells build with nitrate instead, mg/L. Source: assumption, keeps ammonium from going below zero. */
const LITTLE_AMMONIUM = 0.01;

/** What one run of the model is given. Concentrations mg/L, nitrogen as N, biomass as oxygen demand. */
export interface CyclingParameters {
  readonly temperatureC: number;
  readonly oxygenMgPerL: number;
  /** How much slower growth and decay are than in fresh water: 1 in fresh water, about 0.4 in sea water. */
  readonly saltFactor: number;
  /** Multipliers of growth for the two groups, and of their half-saturation levels. */
  readonly ammoniaGrowthScale: number;
  readonly nitriteGrowthScale: number;
  readonly halfFoodScale: number;
  /** Share of dead cells turned back to ammonium per day. */
  readonly mineralisationPerDay: number;
  /** Ammonia nitrogen coming in all the time, mg/L per day. */
  readonly loadMgNPerLDay: number;
  /** Equivalents each mole of that nitrogen brings: 1 from food, 0 from a salt. */
  readonly loadAlkalinity: number;
  /** Whether running out of alkalinity slows the first step. */
  readonly isAlkalinityLimited: boolean;
}

/** Places in the state vector. */
export const PLACE = {
  ammonium: 0,
  nitrite: 1,
  nitrate: 2,
  ammoniaCells: 3,
  nitriteCells: 4,
  dead: 5,
  alkalinity: 6,
} as const;
const SIZE = 7;

/** A state: nitrogen mg/L in each form, cells, nitrogen in dead cells, alkalinity meq/L. */
export function cyclingState(
  ammonium: number,
  ammoniaCells: number,
  nitriteCells: number,
  alkalinity: number,
): Float64Array {
  return Float64Array.of(ammonium, 0, 0, ammoniaCells, nitriteCells, 0, alkalinity);
}

/** All nitrogen of a state, mg/L: what conservation is checked on. */
export function totalNitrogen(state: Float64Array): number {
  const [nh = 0, no2 = 0, no3 = 0, xa = 0, xn = 0, dead = 0] = state;
  return nh + no2 + no3 + NITRIFIERS.nitrogenInCells * (xa + xn) + dead;
}

/** How closely a run is followed. */
export interface Accuracy {
  readonly relative: number;
  readonly mgPerL: number;
}

const FINE: Accuracy = { relative: 1e-6, mgPerL: 1e-6 };
/** A seed may be a ten-thousandth of what dissolves around it, and still decides the course. */
const FEW_CELLS = 1e-4;

/** How fast everything runs against 20 °C in fresh water. */
function warmthAndSalt(p: CyclingParameters, energyJ: number): number {
  const temperature = as<DegreesC>(Math.min(HOTTEST_C, p.temperatureC));
  return arrheniusFactor(energyJ, temperature, NITRIFIERS.referenceC) * p.saltFactor;
}

/** Growth per day of one group with plenty of food, at the oxygen, warmth and salt of the run. */
export function greatestGrowth(p: CyclingParameters, group: "ammonia" | "nitrite"): number {
  const { growth, halfOxygen, energyJ } = NITRIFIERS[group];
  const scale = group === "ammonia" ? p.ammoniaGrowthScale : p.nitriteGrowthScale;
  return growth * scale * warmthAndSalt(p, energyJ) * (p.oxygenMgPerL / (halfOxygen + p.oxygenMgPerL));
}

/**
 * A stepper for the model: `advance(state, days)` in place.
 * Each group grows by Monod on its food and oxygen, makes 1/yield of product per growth, builds
 * 0.086 of nitrogen into itself and dies at a constant rate; nitrogen of dead cells is kept.
 * Source: asm-iwa-str9 (form); nitrifier-parameter-set (figures); vannecke-volcke (temperature).
 */
export function cyclingModel(p: CyclingParameters, accuracy: Accuracy = FINE) {
  const { ammonia, nitrite, nitrogenInCells: inCells } = NITRIFIERS;
  const growthA = greatestGrowth(p, "ammonia");
  const growthN = greatestGrowth(p, "nitrite");
  const decayA = ammonia.decay * warmthAndSalt(p, ammonia.energyJ);
  const decayN = nitrite.decay * warmthAndSalt(p, nitrite.energyJ);
  const halfA = ammonia.halfFood * p.halfFoodScale;
  const halfN = nitrite.halfFood * p.halfFoodScale;
  const toNitrite = 1 / ammonia.yield;
  const toNitrate = 1 / nitrite.yield;
  const perMilliequiv = 1 / NITROGEN_G_PER_MOL;
  return stepper(
    SIZE,
    (state, rates) => {
      const nh = Math.max(0, state[0] as number);
      const no2 = Math.max(0, state[1] as number);
      const xa = state[3] as number;
      const xn = state[4] as number;
      const alkalinity = Math.max(0, state[6] as number);
      const buffer = p.isAlkalinityLimited ? alkalinity / (HALF_ALKALINITY + alkalinity) : 1;
      const a = ((growthA * nh) / (halfA + nh)) * buffer * xa;
      const n = ((growthN * no2) / (halfN + no2)) * xn;
      const cellsFromAmmonium = nh / (LITTLE_AMMONIUM + nh);
      const cellN = inCells * n;
      const mineralised = p.mineralisationPerDay * (state[5] as number);
      const cellAmmonium = inCells * a + cellN * cellsFromAmmonium;
      rates[0] = p.loadMgNPerLDay - toNitrite * a - cellAmmonium + mineralised;
      rates[1] = toNitrite * a - toNitrate * n;
      rates[2] = toNitrate * n - cellN * (1 - cellsFromAmmonium);
      rates[3] = a - decayA * xa;
      rates[4] = n - decayN * xn;
      rates[5] = inCells * (decayA * xa + decayN * xn) - mineralised;
      rates[6] =
        perMilliequiv *
        (p.loadAlkalinity * p.loadMgNPerLDay -
          2 * toNitrite * a -
          cellAmmonium +
          cellN * (1 - cellsFromAmmonium) +
          mineralised);
    },
    {
      relative: accuracy.relative,
      absolute: Float64Array.from({ length: SIZE }, (_, place) =>
        place === PLACE.ammoniaCells || place === PLACE.nitriteCells
          ? accuracy.mgPerL * FEW_CELLS
          : accuracy.mgPerL,
      ),
    },
  );
}
