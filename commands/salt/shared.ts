import { between, type Estimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showIn } from "../../src/core/quantity/show.ts";
import { as, type DegreesC, type Kilograms } from "../../src/core/quantity/units.ts";
import type { YieldFactor } from "../../src/core/water/salt-product.ts";
import { type Context, listed, type TakenFigure, UserError } from "../../src/kit/index.ts";
import { type Taken, tankTemperature } from "../../src/kit/tank-figures.ts";
import type { Tank } from "../../src/records/tank.ts";

/** Room temperature to tropical, when nothing was said: it moves the result by under one per cent. */
const USUAL_MIXING_C = between(as<DegreesC>(20), as<DegreesC>(28), as<DegreesC>(25));

/** The temperature given, else the tank's, else a usual one. */
export function mixingTemperature(
  given: Estimate<DegreesC> | undefined,
  tank: Tank | undefined,
  context: Context,
): { readonly estimate: Estimate<DegreesC>; readonly taken: readonly TakenFigure[] } {
  if (given !== undefined) return { estimate: given, taken: [] };
  const known = tank === undefined ? undefined : tankTemperature(tank, context);
  if (known !== undefined) return { estimate: known.estimate, taken: [known.taken] };
  return {
    estimate: USUAL_MIXING_C,
    taken: [{ name: "temperature", from: "not given, so assumed", readAs: "20–28 °C" }],
  };
}

/** The yield of the product named, else of the one measured last; nothing when none was ever measured. */
export function knownYield(
  named: string | undefined,
  { records, member }: Context,
): { readonly estimate: Estimate<YieldFactor>; readonly taken: readonly TakenFigure[] } | undefined {
  const products = records.saltProducts.of(member.id);
  const product =
    named === undefined
      ? products[0]
      : products.find(({ name }) => name.toLowerCase() === named.toLowerCase());
  if (product === undefined) {
    if (named === undefined) return undefined;
    throw new UserError(
      "not-found",
      products.length === 0
        ? `You have not measured a salt mix called “${named}” yet: /salt calibrate does it from one batch.`
        : `You have no salt mix called “${named}”. You have ${listed(products.map(({ name }) => `“${name}”`))}.`,
    );
  }
  return {
    estimate: product.yieldFactor,
    taken: [
      {
        name: "yield factor",
        from: `your batch of “${product.name}”, ${product.at.slice(0, 10)}`,
        readAs: showEstimate(product.yieldFactor, ""),
      },
    ],
  };
}

/** Kilograms, and pounds beside them for those who measure in gallons; grams below one kilogram. */
export function showSalt(kg: Estimate<Kilograms>, typedUnit: string): string {
  const metric = kg.high < 1 ? showIn(kg, "mass", "g") : showEstimate(kg, "kg", { significant: 3 });
  return /gal|ft|in³/.test(typedUnit)
    ? `${metric}, which is ${showIn(kg, "mass", "lb", { significant: 3 })}`
    : metric;
}

export function takenOf(...all: readonly (Taken<number> | undefined)[]): readonly TakenFigure[] {
  return all.flatMap((each) => (each === undefined ? [] : [each.taken]));
}
