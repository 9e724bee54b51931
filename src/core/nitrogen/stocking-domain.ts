import type { Estimate } from "../quantity/estimate.ts";
import type { Refusal } from "../result.ts";
import { rounded } from "./rounded.ts";
import type { StockingSituation } from "./stocking-input.ts";

type Limits = readonly [
  what: string,
  figure: Estimate | number | undefined,
  unit: string,
  min: number,
  max: number,
];

/** The first figure outside the range where the sum means something, as a refusal. */
export function figureRefusal(limits: readonly Limits[]): Refusal | undefined {
  for (const [what, figure, unit, min, max] of limits) {
    if (figure === undefined) continue;
    const values = typeof figure === "number" ? [figure] : [figure.best, figure.low, figure.high];
    const bad = values.find((value) => !(value >= min && value <= max));
    if (bad !== undefined) {
      return { code: "figure-out-of-range", figures: { what, value: rounded(bad), unit, min, max } };
    }
  }
  return undefined;
}

/** Why the stocking load of a situation cannot be worked out; undefined when it can. */
export function stockingRefusal(situation: StockingSituation): Refusal | undefined {
  if (situation.animals.length === 0 && situation.food.length === 0) {
    return { code: "no-food-and-no-animals", figures: {} };
  }
  for (const { label, protein } of situation.food) {
    if (protein.kind !== "own") continue;
    if (protein.basis === "not said") {
      return {
        code: "protein-basis-not-said",
        figures: { food: label, proteinPercent: rounded(protein.protein.best * 100) },
      };
    }
    if (protein.basis === "dry matter" && protein.water === undefined) {
      return { code: "water-in-food-not-said", figures: { food: label } };
    }
  }
  return figureRefusal([
    ["volume", situation.volumeL, "L", 1, 10_000_000],
    ["salinity", situation.salinity, "", 0, 45],
    ["temperature", situation.temperatureC, "°C", 1, 40],
    ["accepted ammonia", situation.acceptedTan, "mg/L N", 0.01, 3],
    ["accepted ammonia after a meal", situation.acceptedPeakTan, "mg/L N", 0.01, 3],
    ["accepted nitrate", situation.acceptedNitrate, "mg/L N", 0.1, 500],
    ["hours to the ammonia peak", situation.mealPeakAfterH, "h", 0.5, 72],
    ["working share of the beds", situation.usableFraction, "", 0.05, 1],
    ["net flow", situation.netFlowLPerH, "L/h", 0, 10_000_000],
    ...situation.animals.flatMap(({ label, count, body }): Limits[] => [
      [`number of ${label}`, count, "", 1, 100_000],
      body.kind === "length"
        ? [`length of ${label}`, body.lengthCm, "cm", 0.5, 400]
        : [`mass of ${label}`, body.massG, "g", 0.01, 500_000],
    ]),
    ...situation.food.flatMap(({ label, protein, ration }): Limits[] => [
      ration.kind === "meals"
        ? [`grams of ${label} per meal`, ration.gramsPerMeal, "g", 0.001, 100_000]
        : [`grams of ${label} per day`, ration.gramsPerDay, "g", 0.001, 100_000],
      ration.kind === "meals"
        ? [`meals of ${label} per week`, ration.mealsPerWeek, "", 0.1, 336]
        : [`meals of ${label} per day`, ration.mealsPerDay, "", 0.1, 48],
      [`protein of ${label}`, protein.kind === "own" ? protein.protein : undefined, "", 0.005, 0.98],
      [`water in ${label}`, protein.kind === "own" ? protein.water : undefined, "", 0, 0.98],
    ]),
    ...(situation.media ?? []).map(
      (bed): Limits => [`volume of ${bed.kind}`, bed.litres, "L", 0.01, 1_000_000],
    ),
    ...(situation.waterChange === undefined
      ? []
      : ([
          ["share of water changed", situation.waterChange.changed, "", 0.001, 1],
          ["days between changes", situation.waterChange.everyDays, "d", 0.04, 3650],
          ["nitrate in the new water", situation.waterChange.sourceNitrate, "mg/L N", 0, 200],
        ] satisfies Limits[])),
  ]);
}
