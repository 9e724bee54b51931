import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { isKnownSubstance, screenSubstance, substanceHazard } from "./hazards.ts";
import { onOneScale, type Strength } from "./strength.ts";
import { unusableFigure } from "./usable-figures.ts";

/**
 * Volume of stock holding as much solute as the finished mix: V₁ = C₂·V₂ / C₁.
 * Both strengths in the same unit, by volume of finished liquid.
 * Source: mass-balance. Throws: RangeError when the stock is not at least as strong as the target.
 */
export function stockForDilution(stock: number, target: number, finalVolumeL: Litres): Litres {
  if (!(stock >= target && target > 0)) throw new RangeError("the stock has to be the stronger one");
  return as<Litres>((target * finalVolumeL) / stock);
}

/** A mix, made by pouring the stock first and topping up to the mark. */
export interface Dilution {
  readonly stockVolume: Estimate<Litres>;
  /** Roughly what goes on top. Fill to the mark rather than measuring this out. */
  readonly topUpVolume: Estimate<Litres>;
  readonly finalVolume: Estimate<Litres>;
  /** The stock's share of the finished mix. */
  readonly stockShare: Estimate<Fraction>;
}

/** How much stock makes a given volume of a weaker mix. The volume is that of the finished mix. */
export function dilute(question: {
  readonly stock: Strength;
  readonly target: Strength;
  readonly finalVolume: Estimate<Litres>;
  /** What the stock is, as the member names it; checked for hazards. */
  readonly substance?: string;
  /** The caller knows what the stock is, and cautions for it. */
  readonly isStockKnown?: true;
}): Answer<Dilution> | NoAnswer {
  const screened = screenSubstance(question.substance);
  if ("kind" in screened) return screened;
  const { finalVolume } = question;
  const unusable = unusableFigure([{ name: "final volume", estimate: finalVolume, unit: "L" }]);
  if (unusable !== undefined) return unusable;
  const scale = onOneScale(question.stock, question.target);
  if ("kind" in scale) return scale;
  const { stock, target } = scale;
  if (stock.low < target.best || stock.best < target.high) {
    const unit = scale.family === "mass in volume" ? "g/L" : "parts in one";
    return noAnswer("stock-weaker-than-target", { stock: stock.low, target: target.high, unit });
  }
  const { estimates, drivers } = propagate(
    { "stock strength": stock, "target strength": target, "final volume": finalVolume },
    (v) => {
      const volume = stockForDilution(v["stock strength"], v["target strength"], v["final volume"]);
      return {
        stockVolume: volume,
        topUpVolume: as<Litres>(v["final volume"] - volume),
        stockShare: as<Fraction>(volume / v["final volume"]),
      };
    },
  );
  return {
    kind: "answer",
    value: { ...estimates, finalVolume },
    method: "The stock poured holds all the solute of the finished mix",
    working: [
      "stock to pour = target strength × final volume / stock strength",
      "top up = final volume − stock poured, filled to the mark",
    ],
    constants: [],
    sources: ["mass-balance"],
    assumptions: [
      "the volume given is that of the finished mix, not of the water added",
      `both strengths are ${scale.family === "mass in volume" ? "mass of solute per volume of finished liquid" : "by volume"}`,
    ],
    cautions: [...pouringOrder(question, finalVolume.best), ...screened],
    driver: drivers.stockVolume,
  };
}

/** What goes in first: the stock for the sake of the sum, but the water where the stock heats up and spits. */
function pouringOrder(
  { substance, isStockKnown }: { readonly substance?: string; readonly isStockKnown?: true },
  finalL: number,
): Caution[] {
  const { classes } = substanceHazard(substance ?? "");
  if (classes.includes("acid") || classes.includes("caustic"))
    return [caution("water-first-then-stock", { finalL }, "danger")];
  const inOrder = caution("make-up-to-volume", { finalL }, "note");
  if (isStockKnown === true) return [inOrder];
  if (substance === undefined) return [inOrder, caution("stock-not-named", {}, "warning")];
  return isKnownSubstance(substance)
    ? [inOrder]
    : [inOrder, caution("substance-not-known", { substance }, "warning")];
}

/** What "1:5" is taken to mean. The two differ by a sixth to a half, so the caller has to know. */
export type RatioMeaning = "one in five" | "one to five";

/** Share of the whole that the first part makes up. Source: definition. Throws: RangeError outside parts > 0. */
export function ratioShare(parts: number, others: number, meaning: RatioMeaning): Fraction {
  const whole = meaning === "one in five" ? others : parts + others;
  if (!(parts > 0 && others > 0 && parts <= whole)) throw new RangeError("more parts than the whole holds");
  return as<Fraction>(parts / whole);
}

/** A mix given as a ratio of volumes, "1:5", in the meaning that was meant. */
export function diluteByRatio(question: {
  readonly parts: number;
  readonly others: number;
  readonly meaning: RatioMeaning;
  readonly finalVolume: Estimate<Litres>;
  readonly substance?: string;
}): Answer<Dilution> | NoAnswer {
  const { parts, others, meaning, finalVolume } = question;
  const unusable = unusableFigure([
    { name: "first part of the ratio", estimate: exactly(parts), unit: "parts" },
    { name: "second part of the ratio", estimate: exactly(others), unit: "parts" },
  ]);
  if (unusable !== undefined) return unusable;
  if (meaning === "one in five" && parts > others) {
    return noAnswer("stock-weaker-than-target", { stock: others, target: parts, unit: "parts" });
  }
  const answer = dilute({
    stock: { value: exactly(1), kind: "parts" },
    target: { value: exactly(ratioShare(parts, others, meaning)), kind: "parts" },
    finalVolume,
    ...(question.substance === undefined ? {} : { substance: question.substance }),
  });
  if (answer.kind === "no-answer") return answer;
  return {
    ...answer,
    method:
      meaning === "one in five"
        ? `${parts} in ${others}: ${parts} of stock in ${others} of finished mix`
        : `${parts} to ${others}: ${parts} of stock and ${others} of water`,
  };
}
