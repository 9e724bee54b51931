import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Grams,
  type Kilograms,
  type Litres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { seawaterDensity } from "./density.ts";
import { DENSITY_EQUATION } from "./evidence.ts";
import { figure } from "./figure.ts";
import { massOfSeawater, volumeOfFreshWater } from "./mass.ts";
import {
  ASTM_D1141_G_PER_L,
  type AstmSalt,
  astmSaltGrams,
  KESTER_1967_G_PER_KG,
  type KesterSalt,
  kesterSaltGrams,
} from "./recipes.ts";
import { cut, firstNotCredible, keptPossible, TEMPERATURE, VOLUME } from "./usable.ts";

export type Recipe = "Kester 1967" | "substitute ocean water";

export interface WeighedSalt {
  /** Its formula as weighed, water of crystallisation named. */
  readonly salt: string;
  readonly grams: Grams;
}

export interface ArtificialSeawater {
  /** In the order of the recipe, best figures. */
  readonly salts: readonly WeighedSalt[];
  readonly totalSalt: Estimate<Kilograms>;
  /** Mass of the finished water. */
  readonly solution: Estimate<Kilograms>;
  /** Pure water beside the salts; the recipe by volume is made up to its mark instead. */
  readonly waterL?: Estimate<Litres>;
}

/** Both recipes aim at seawater of this salinity. */
const RECIPE_SALINITY = as<PracticalSalinity>(35);

/** What to weigh out for seawater from single salts, by a published recipe. */
export function artificialSeawater(
  recipe: Recipe,
  volume: Estimate<Litres>,
  temperature: Estimate<DegreesC>,
): Answer<ArtificialSeawater> | NoAnswer {
  const unusable = firstNotCredible([
    ["volume", volume, VOLUME],
    ["temperature", temperature, TEMPERATURE],
  ]);
  if (unusable !== undefined) return unusable;
  const isKester = recipe === "Kester 1967";
  const weigh = isKester ? kesterSalts : astmSalts;

  const { estimates, drivers } = propagate(
    { volume: cut(volume, VOLUME), temperature: cut(temperature, TEMPERATURE) },
    ({ volume: litres, temperature: t }) => {
      const solution = massOfSeawater(litres, RECIPE_SALINITY, t);
      const totalKg = weigh(litres, solution).reduce((sum, { grams }) => sum + grams, 0) / 1000;
      return {
        totalSalt: as<Kilograms>(totalKg),
        solution,
        waterL: volumeOfFreshWater(as<Kilograms>(solution - totalKg), t),
      };
    },
  );
  const { waterL, ...always } = keptPossible(estimates);
  const density = figure(seawaterDensity(RECIPE_SALINITY, temperature.best), 5);

  return {
    kind: "answer",
    value: {
      salts: weigh(volume.best, always.solution.best),
      ...always,
      ...(isKester ? { waterL } : {}),
    },
    method: isKester
      ? "Grams of each salt per kilogram of solution, times the mass wanted."
      : "Grams of each salt per litre of solution, times the litres wanted.",
    working: isKester
      ? [
          `mass of the solution = ${figure(volume.best)} L × ${density} kg/m³ ÷ 1000 = ${figure(always.solution.best)} kg`,
          "each salt = grams per kg in the recipe × mass",
          `water = mass − all salts = ${figure(waterL.best)} L`,
        ]
      : [
          `each salt = grams per litre in the recipe × ${figure(volume.best)} L`,
          "dissolve in about nine tenths of the water, then fill up to the mark",
        ],
    constants: isKester
      ? [DENSITY_EQUATION, { name: "recipe", value: "10 salts, g/kg of solution", source: "kester-1967" }]
      : [{ name: "recipe", value: "10 salts, g/L of solution, free of water", source: "astm-d1141-98" }],
    sources: [isKester ? "kester-1967" : "astm-d1141-98", "millero-poisson-1981", "jcgm-100-2008"],
    assumptions: [
      "salts are pure and dry, with exactly the water of crystallisation named",
      "the result has salinity 35",
    ],
    cautions: [
      caution("weighed-chemicals", {}, "danger"),
      caution("calcium-last", {}),
      ...(isKester ? [] : [caution("recipe-from-memory", {})]),
      caution("mix-apart", {}),
      caution("measure-before-use", {}),
    ],
    driver: drivers.totalSalt,
  };
}

function kesterSalts(_volume: Litres, solution: Kilograms): readonly WeighedSalt[] {
  const salts = Object.keys(KESTER_1967_G_PER_KG) as KesterSalt[];
  return salts.map((salt) => ({ salt, grams: kesterSaltGrams(salt, solution) }));
}

function astmSalts(volume: Litres): readonly WeighedSalt[] {
  const salts = Object.keys(ASTM_D1141_G_PER_L) as AstmSalt[];
  return salts.map((salt) => ({ salt, grams: astmSaltGrams(salt, volume) }));
}
