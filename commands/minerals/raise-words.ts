import type { MineralDose, MineralStock } from "../../src/core/carbonate/raise-mineral.ts";
import { comparable, type Strength } from "../../src/core/dosing/strength.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { listed, UserError } from "../../src/kit/index.ts";
import { showGrams, showPour } from "../dose/shared.ts";

/** Throws: UserError when the strength says nothing about grams. */
export function stockOf(
  stock: Strength,
  {
    reservoir,
    pump,
  }: {
    readonly reservoir?: { readonly estimate: NonNullable<MineralStock["reservoir"]> } | undefined;
    readonly pump?: NonNullable<MineralStock["pump"]> | undefined;
  },
): MineralStock {
  const grams = comparable(stock, "stock");
  if ("kind" in grams || grams.family !== "mass in volume")
    throw new UserError(
      "bad-input",
      "Say how many grams of the salt stand in a litre of stock, e.g. “100 g in 1 L”.",
    );
  return {
    gramsPerL: grams.amount,
    ...(reservoir === undefined ? {} : { reservoir: reservoir.estimate }),
    ...(pump === undefined ? {} : { pump }),
  };
}

export function doseHeadline(it: MineralDose, name: string): string {
  if (it.mass !== undefined) return `${showGrams(it.mass)} of ${name}`;
  return it.stockVolume === undefined ? name : `${showPour(it.stockVolume)} of stock`;
}

export function doseLines(it: MineralDose, isAmmoniaUnknown: boolean): readonly string[] {
  const { unit, dosesPerDay } = it;
  const perDay = it.massPerDay === undefined ? undefined : showGrams(it.massPerDay);
  const pourPerDay = it.stockPerDay === undefined ? undefined : showPour(it.stockPerDay);
  const perDose =
    it.massPerDose === undefined ? it.stockPerDose && showPour(it.stockPerDose) : showGrams(it.massPerDose);
  return [
    `That is ${showEstimate(it.change, unit)} more${it.days === 1 ? ", all on one day" : `, over ${it.days} days: ${listed([perDay, pourPerDay].flatMap((each) => each ?? []))} a day`}; the limit is ${showNumber(it.dailyCap)} ${unit} a day.`,
    ...(dosesPerDay > 1 && perDose !== undefined ? [`In ${dosesPerDay} doses a day, each ${perDose}.`] : []),
    ...(it.pumpSecondsPerDose === undefined
      ? []
      : [`The pump runs ${showEstimate(it.pumpSecondsPerDose, "s", { significant: 3 })} per dose.`]),
    ...(it.reservoirLasts === undefined
      ? []
      : [`The reservoir lasts ${showEstimate(it.reservoirLasts, "days", { significant: 2 })}.`]),
    ...(it.mineral === "alkalinity" && isAmmoniaUnknown
      ? ["Not while there is ammonia in the water: test first."]
      : []),
  ];
}
