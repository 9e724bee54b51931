import type { FilterTrain } from "../../src/core/nitrogen/filter-train-sum.ts";
import { ammoniaPerDay, foodNitrogenPerDay } from "../../src/core/nitrogen/food-nitrogen-per-day.ts";
import { readFood } from "../../src/core/nitrogen/read-food.ts";
import type { AmmoniaReading } from "../../src/core/nitrogen/read-nitrogen.ts";
import type { Food, Growth } from "../../src/core/nitrogen/stocking-input.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import type { NoAnswer } from "../../src/core/result.ts";
import { netVolume } from "../../src/core/tank/net-volume.ts";
import { askFor, type Context, listed, type Question } from "../../src/kit/index.ts";
import type { KnownFigures } from "../../src/kit/known-figures.ts";

/** Ammonia measured, else made from the food typed or noted; undefined when neither is known. */
export function ammoniaOf(
  input: {
    readonly ammonia?: AmmoniaReading | undefined;
    readonly food?: readonly Food[] | undefined;
    readonly growth?: Growth | undefined;
  },
  known: KnownFigures,
): FilterTrain["ammonia"] | NoAnswer | undefined {
  if (input.ammonia !== undefined) return { kind: "measured", tan: input.ammonia.asNitrogen };
  const foods = input.food ?? known.noted("food", "food", readFood);
  if (foods === undefined) return undefined;
  const nitrogen = foodNitrogenPerDay(foods);
  if ("kind" in nitrogen) return nitrogen;
  return { kind: "load", gPerDay: ammoniaPerDay(nitrogen, input.growth ?? "not said") };
}

/** Asks for the filter's containers, naming those that are known of the tank. */
export function askForBoxes(
  title: string,
  example: string,
  { tank }: KnownFigures,
  context: Context,
): Question {
  const net = tank === undefined ? undefined : netVolume(tank.containers);
  const known =
    net?.kind === "answer"
      ? net.value.containers.filter(({ role }) => role !== "display" && role !== "reservoir")
      : [];
  const names = known.map(({ name, netL }) => `${name} ${showNumber(netL.best, 3)} L`);
  return askFor(
    context,
    { name: "boxes", example },
    {
      title,
      text: `Which containers does the water pass, in order, and what is in each?${tank === undefined || names.length === 0 ? "" : ` ${tank.name} has ${listed(names)}.`}`,
    },
  );
}
