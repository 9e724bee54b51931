import { type Estimate, propagate } from "../quantity/estimate.ts";
import type { KgPerM3 } from "../quantity/units.ts";
import { type NoAnswer, noAnswer } from "../result.ts";
import { unusableFigure } from "./usable-figures.ts";

/** The ways a strength is written. "parts" counts parts by volume in one part of the whole, so 1 is undiluted. */
export type StrengthKind = "% w/v" | "% v/v" | "% w/w" | "mg/mL" | "g/L" | "mg/L" | "parts";

/** How much of something a liquid holds, as its label says it. */
export interface Strength {
  readonly value: Estimate;
  readonly kind: StrengthKind;
  /** Density of the liquid itself; without it a percentage by weight says nothing about a volume. */
  readonly density?: Estimate<KgPerM3>;
}

/** What two strengths must share before they can be set against each other. */
export type StrengthFamily = "mass in volume" | "volume in volume" | "parts";

interface KindRule {
  readonly family: StrengthFamily;
  /** Grams per litre (or share of one) for one unit of the kind. */
  readonly factor: number;
  readonly max?: number;
}

/** 1 % w/v is one gram in 100 mL of finished liquid, 1 % v/v one millilitre in 100 mL. Source: definition. */
const KINDS: Readonly<Record<StrengthKind, KindRule>> = {
  "% w/v": { family: "mass in volume", factor: 10 },
  "mg/mL": { family: "mass in volume", factor: 1 },
  "g/L": { family: "mass in volume", factor: 1 },
  "mg/L": { family: "mass in volume", factor: 0.001 },
  "% w/w": { family: "mass in volume", factor: 0.01, max: 100 },
  "% v/v": { family: "volume in volume", factor: 0.01, max: 100 },
  parts: { family: "parts", factor: 1, max: 1 },
};

/** A strength on the scale its family compares on: g/L of solution, or a share of one by volume. */
export interface ComparableStrength {
  readonly family: StrengthFamily;
  readonly amount: Estimate;
}

/**
 * Puts a strength on its family's common scale. By weight: g/L = w/w × density of the liquid.
 * `which` names the strength in a refusal ("stock", "target").
 */
export function comparable(strength: Strength, which: string): ComparableStrength | NoAnswer {
  const { family, factor, max } = KINDS[strength.kind];
  const figure = { name: `${which} strength`, estimate: strength.value, unit: strength.kind };
  const unusable = unusableFigure([max === undefined ? figure : { ...figure, max }]);
  if (unusable !== undefined) return unusable;
  if (strength.kind === "% w/w") {
    const { density } = strength;
    if (density === undefined) return noAnswer("weight-percent-needs-density", { which });
    const heavy = unusableFigure([{ name: `${which} density`, estimate: density, unit: "kg/m³" }]);
    if (heavy !== undefined) return heavy;
    const { estimates } = propagate({ strength: strength.value, density }, (v) => ({
      amount: v.strength * factor * v.density,
    }));
    return { family, amount: estimates.amount };
  }
  const { best, low, high } = strength.value;
  return { family, amount: { best: best * factor, low: low * factor, high: high * factor } };
}

/** Both strengths on one scale, or the reason why they cannot be compared. */
export function onOneScale(
  stock: Strength,
  target: Strength,
): { readonly family: StrengthFamily; readonly stock: Estimate; readonly target: Estimate } | NoAnswer {
  const a = comparable(stock, "stock");
  if ("kind" in a) return a;
  const b = comparable(target, "target");
  if ("kind" in b) return b;
  if (a.family !== b.family) {
    return noAnswer("strengths-do-not-compare", { stock: stock.kind, target: target.kind });
  }
  return { family: a.family, stock: a.amount, target: b.amount };
}
