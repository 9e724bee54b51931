import { fallingRoot } from "../numeric/falling-root.ts";
import {
  as,
  type Centimetres,
  type DegreesC,
  type Fraction,
  type Grams,
  type GramsPerDay,
  type Hours,
  type Litres,
  type PracticalSalinity,
  type SquareMetres,
} from "../quantity/units.ts";
import { oxygenSaturation } from "../water/oxygen-saturation.ts";
import { FISH } from "./fish.ts";
import { fishMass, restingOxygenBounds } from "./fish-body.ts";
import { feedNitrogen, proteinAsFed } from "./food-nitrogen.ts";
import { highestStanding, repeatedMealPeak } from "./meal-pulse.ts";
import { MEDIA, mediaVolume, type SquareMetresPerM3, workingSurface } from "./media.ts";
import { nitrateRise, steadyNitrate } from "./nitrate.ts";
import {
  alkalinityDrop,
  filmArea,
  filmUptake,
  firstOrderConstant,
  type GramsNPerM2Day,
  HIGHEST_UPTAKE,
  type MetresPerDay,
  nitrificationOxygen,
  nitrificationTemperatureFactor,
  OXYGEN_PER_N_WITH_CELLS,
  saltSlowdown,
} from "./nitrification.ts";
import { fromNitrogen, type GramsNPerDay, type MgNPerL } from "./nitrogen-units.ts";
import { inputName, STOCKING_DEFAULTS, type StockingSituation } from "./stocking-input.ts";

const HOURS_PER_WEEK = 168;
/** Oxygen demand of dry food. Source: assumption, a usual figure for protein-rich food. */
const OXYGEN_DEMAND_PER_DRY_FOOD = 1.4;
/** Oxygen below which fish are in trouble, mg/L. Source: common-practice. */
export const LOWEST_OXYGEN_MG_PER_L = 4;
/** Hours of oxygen reserve under which oxygen counts as the limit. Source: assumption. */
export const RESERVE_WANTED_H = 2;

/** A reserve longer than this is as good as endless: a year. */
const LONGEST_RESERVE_H = 8760;

/** The inputs of a stocking sum at one point of their ranges. */
export type Values = Readonly<Record<string, number>>;

interface MealSeries {
  readonly gramsPerDay: GramsPerDay;
  readonly nitrogenGPerDay: GramsNPerDay;
  readonly dryGPerDay: number;
  readonly everyH: Hours;
}

function figure(values: Values, name: string): number {
  const value = values[name];
  if (value === undefined) throw new Error(`the stocking sum has no input "${name}"`);
  return value;
}

/** Mass of each group's animals together, g. */
export function groupMasses(situation: StockingSituation, values: Values): readonly number[] {
  return situation.animals.map((group) => {
    const { body, count } = group;
    if (body.kind === "mass") return count * figure(values, inputName.mass(group));
    const length = as<Centimetres>(figure(values, inputName.length(group)));
    return count * fishMass(FISH[body.fish], length) * figure(values, inputName.build(group));
  });
}

/** Oxygen of all animals between meals, g/d: between the low and high curve, on a logarithmic scale. */
function restingOxygen(situation: StockingSituation, values: Values, masses: readonly number[]): number {
  const place = figure(values, "oxygen use at rest");
  const temperature = as<DegreesC>(figure(values, "temperature"));
  const mgPerHour = situation.animals.reduce((sum, group, index) => {
    if (group.count === 0) return sum;
    const habit = group.body.kind === "mass" ? group.body.habit : FISH[group.body.fish].habit;
    const each = as<Grams>((masses[index] ?? 0) / group.count);
    const { low, high } = restingOxygenBounds(each, temperature, habit);
    return sum + group.count * low * (high / low) ** place;
  }, 0);
  return (mgPerHour * 24) / 1000;
}

function mealSeries(situation: StockingSituation, values: Values, fishMassG: number): readonly MealSeries[] {
  if (situation.food.length === 0) {
    const grams = as<GramsPerDay>(fishMassG * figure(values, "ration, share of body mass a day"));
    const protein = as<Fraction>(figure(values, "protein of the assumed food"));
    return [
      {
        gramsPerDay: grams,
        nitrogenGPerDay: feedNitrogen(grams, protein),
        dryGPerDay: grams * (1 - figure(values, "water in the assumed food")),
        everyH: as<Hours>(HOURS_PER_WEEK / STOCKING_DEFAULTS.assumedMealsPerWeek),
      },
    ];
  }
  return situation.food.map((food) => {
    const { ration } = food;
    const amount = figure(values, inputName.grams(food));
    const mealsPerWeek = ration.kind === "meals" ? ration.mealsPerWeek : ration.mealsPerDay * 7;
    const grams = as<GramsPerDay>(ration.kind === "meals" ? (amount * mealsPerWeek) / 7 : amount);
    const said = as<Fraction>(figure(values, inputName.protein(food)));
    const water = as<Fraction>(figure(values, inputName.water(food)));
    const isDryFigure = food.protein.kind === "own" && food.protein.basis === "dry matter";
    return {
      gramsPerDay: grams,
      nitrogenGPerDay: feedNitrogen(grams, isDryFigure ? proteinAsFed(water, said) : said),
      dryGPerDay: grams * (1 - water),
      everyH: as<Hours>(HOURS_PER_WEEK / mealsPerWeek),
    };
  });
}

/** Working surface of all beds. */
function installedSurface(situation: StockingSituation, values: Values): SquareMetres {
  const usable = as<Fraction>(figure(values, "share of the bed that works"));
  const beds = situation.media ?? [];
  return as<SquareMetres>(
    beds.reduce((sum, bed, index) => {
      const litres = as<Litres>(figure(values, inputName.bed(index, bed)));
      const perM3 = as<SquareMetresPerM3>(figure(values, inputName.surface(bed)));
      return sum + workingSurface(litres, perM3, usable);
    }, 0),
  );
}

/** Film needed so that the ammonia standing in the water after a meal stays under the accepted peak.
 *  The water itself dilutes; the film is taken as first order, which holds below its ceiling. */
function areaAfterMeal(
  meals: readonly MealSeries[],
  excreted: number,
  peakAfter: Hours,
  volumeL: Litres,
  acceptedPeak: MgNPerL,
  firstOrder: MetresPerDay,
): SquareMetres {
  const allowedG = (acceptedPeak * volumeL) / 1000;
  const standing = (removalPerHour: number) =>
    meals.reduce((sum, meal) => {
      const perMeal = as<Grams>((meal.nitrogenGPerDay * excreted * meal.everyH) / 24);
      return sum + highestStanding(perMeal, peakAfter, meal.everyH, removalPerHour);
    }, 0);
  // On the scale of both logarithms the curve is nearly straight.
  const logRemoval = fallingRoot(
    (log) => Math.log(standing(Math.exp(log)) / allowedG),
    Math.log(1e-7),
    Math.log(1e5),
  );
  return as<SquareMetres>((Math.exp(logRemoval) * 24 * (volumeL / 1000)) / firstOrder);
}

/**
 * Every figure of the stocking load at one point of the inputs' ranges. Figures that need something
 * not given (animals, media, water changes) are 0 and left out by the caller.
 */
export function stockingFigures(situation: StockingSituation, values: Values) {
  const volume = as<Litres>(figure(values, "net volume"));
  const salinity = as<PracticalSalinity>(figure(values, "salinity"));
  const temperature = as<DegreesC>(figure(values, "temperature"));
  const excreted = figure(values, "share of food nitrogen given off as ammonia");
  const peakAfter = as<Hours>(figure(values, "hours from meal to ammonia peak"));
  const masses = groupMasses(situation, values);
  const fishMassG = masses.reduce((sum, mass) => sum + mass, 0);
  const meals = mealSeries(situation, values, fishMassG);
  const feed = meals.reduce((sum, meal) => sum + meal.gramsPerDay, 0);
  const feedN = meals.reduce((sum, meal) => sum + meal.nitrogenGPerDay, 0);
  const tan = as<GramsNPerDay>(feedN * excreted);
  const mealTanG = meals.reduce((sum, meal) => sum + (meal.nitrogenGPerDay * excreted * meal.everyH) / 24, 0);
  const peakGPerH = meals.reduce(
    (sum, meal) =>
      sum +
      repeatedMealPeak(
        as<Grams>((meal.nitrogenGPerDay * excreted * meal.everyH) / 24),
        peakAfter,
        meal.everyH,
      ),
    0,
  );
  const warmth = nitrificationTemperatureFactor(temperature);
  const speed = figure(values, "speed of the filter film");
  const firstOrder = as<MetresPerDay>(firstOrderConstant(salinity) * speed * warmth);
  const ceiling = as<GramsNPerM2Day>(HIGHEST_UPTAKE.fresh * saltSlowdown(salinity) * warmth);
  const acceptedTan = situation.acceptedTan ?? STOCKING_DEFAULTS.acceptedTan;
  const acceptedPeak = situation.acceptedPeakTan ?? STOCKING_DEFAULTS.acceptedPeakTan;
  const areaAverage = filmArea(tan, filmUptake(acceptedTan, firstOrder, ceiling));
  const areaMeal = areaAfterMeal(meals, excreted, peakAfter, volume, acceptedPeak, firstOrder);
  const installed = installedSurface(situation, values);
  const yardstick = situation.media?.[0];
  const yardstickSurface = as<SquareMetresPerM3>(
    yardstick === undefined ? MEDIA["moving bed"].surface.best : figure(values, inputName.surface(yardstick)),
  );
  const usable = as<Fraction>(figure(values, "share of the bed that works"));
  const hasAnimals = situation.animals.length > 0;
  const rest = hasAnimals ? restingOxygen(situation, values, masses) : 0;
  const afterMeal = hasAnimals ? rest * figure(values, "oxygen use after a meal") : 0;
  const nitrifying = nitrificationOxygen(tan);
  const leftovers =
    meals.reduce((sum, meal) => sum + meal.dryGPerDay, 0) *
    OXYGEN_DEMAND_PER_DRY_FOOD *
    figure(values, "oxygen for leftovers");
  const saturation = oxygenSaturation(salinity, temperature);
  const spareOxygenG = Math.max(0, ((saturation - LOWEST_OXYGEN_MG_PER_L) * volume) / 1000);
  const oxygenAfterMeal = afterMeal + nitrifying + leftovers;
  const toNitrate = as<GramsNPerDay>(feedN * (1 - figure(values, "share of nitrogen taken out with solids")));
  const nitratePerWeek = nitrateRise(toNitrate, as(7), volume);
  const change = situation.waterChange;
  const steadyBefore =
    change === undefined
      ? 0
      : steadyNitrate(
          nitrateRise(toNitrate, change.everyDays, volume),
          as<Fraction>(figure(values, "share of water changed")),
          as<MgNPerL>(figure(values, "nitrate in the new water")),
        ).before;
  const acceptedNitrate = situation.acceptedNitrate ?? STOCKING_DEFAULTS.acceptedNitrate;
  return {
    fishMassG,
    feedGPerDay: feed,
    rationShare: fishMassG > 0 ? feed / fishMassG : 0,
    feedNGPerDay: feedN,
    tanGPerDay: tan as number,
    dailyRiseMgPerL: (tan * 1000) / volume,
    mealRiseMgPerL: (mealTanG * 1000) / volume,
    peakGPerDay: peakGPerH * 24,
    peakTimesAverage: tan > 0 ? (peakGPerH * 24) / tan : 1,
    oxygenRestGPerDay: rest + nitrifying + leftovers,
    oxygenAfterMealGPerDay: oxygenAfterMeal,
    oxygenFishRestGPerDay: rest,
    oxygenFishAfterMealGPerDay: afterMeal,
    oxygenNitrificationGPerDay: nitrifying as number,
    oxygenNitrificationLowGPerDay: nitrificationOxygen(tan, OXYGEN_PER_N_WITH_CELLS) as number,
    oxygenLeftoversGPerDay: leftovers,
    oxygenReserveH: Math.min(LONGEST_RESERVE_H, (spareOxygenG / oxygenAfterMeal) * 24 || LONGEST_RESERVE_H),
    areaAverageM2: areaAverage as number,
    areaAfterMealM2: areaMeal as number,
    mediaNeededL: mediaVolume(
      as<SquareMetres>(Math.max(areaAverage, areaMeal)),
      yardstickSurface,
      usable,
    ) as number,
    installedM2: installed as number,
    averageUse: installed > 0 ? areaAverage / installed : 0,
    afterMealUse: installed > 0 ? areaMeal / installed : 0,
    oxygenUse: spareOxygenG > 0 ? (RESERVE_WANTED_H * oxygenAfterMeal) / 24 / spareOxygenG : 0,
    nitratePerWeekMgPerL: fromNitrogen(nitratePerWeek, "NO3"),
    weeksToAcceptedNitrate: nitratePerWeek > 0 ? acceptedNitrate / nitratePerWeek : 0,
    steadyNitrateMgPerL: fromNitrogen(as<MgNPerL>(steadyBefore), "NO3"),
    nitrateUse: steadyBefore / acceptedNitrate,
    alkalinityDkhPerWeek: alkalinityDrop(as<Grams>(toNitrate * 7), volume, "food") as number,
  };
}

export type StockingFigures = ReturnType<typeof stockingFigures>;
