import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { seawaterDensity } from "../water/density.ts";
import { firstNotCredible, SALINITY, TEMPERATURE } from "../water/usable.ts";
import { type Convertible, KIND_NOUNS } from "./convertible.ts";
import { type Estimate, exactly } from "./estimate.ts";
import type { Habits } from "./read.ts";
import { as, type DegreesC, type KgPerM3, type PracticalSalinity } from "./units.ts";

/** A quantity in one unit. */
export interface Converted {
  readonly unit: string;
  readonly estimate: Estimate;
  /** Figures that count where the value has no range. */
  readonly significant: number;
}

export interface Conversion {
  /** "a volume". */
  readonly noun: string;
  /** In the unit asked for; absent when none was. */
  readonly wanted?: Converted;
  /** In all usual units of its kind; empty when one was asked for. */
  readonly all: readonly Converted[];
  /** Set when only this end is known: "<5" says nothing more. */
  readonly bound?: "below" | "above";
}

export interface ConversionQuestion {
  readonly quantity: Convertible;
  /** As typed; without it the answer holds all usual units. */
  readonly to?: string | undefined;
  readonly habits: Habits;
  /** Of the water: what a litre weighs follows from both. */
  readonly salinity?: Estimate<PracticalSalinity> | undefined;
  readonly temperature?: Estimate<DegreesC> | undefined;
  /** Of a solution, for per cent by weight. */
  readonly density?: Estimate<KgPerM3> | undefined;
}

/** Figures of a value by factors alone, and of one by a fitted equation or molar masses. */
export const MOST_FIGURES = 6;
export const FITTED_FIGURES = 5;

export type Of<K extends Convertible["kind"]> = Extract<Convertible, { readonly kind: K }>;

export interface Water {
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
}

export const NO_WATER: Water = {
  salinity: exactly(as<PracticalSalinity>(0)),
  temperature: exactly(as<DegreesC>(25)),
};

/** The water a litre of which is weighed; nothing when its salinity is not known. */
export function waterOf({ salinity, temperature }: ConversionQuestion): Water | NoAnswer | undefined {
  if (salinity === undefined) return undefined;
  const warmth = temperature ?? exactly(as<DegreesC>(25));
  return (
    firstNotCredible([
      ["salinity", salinity, SALINITY],
      ["temperature", warmth, TEMPERATURE],
    ]) ?? { salinity, temperature: warmth }
  );
}

export function densityOf({
  salinity,
  temperature,
}: {
  salinity: PracticalSalinity;
  temperature: DegreesC;
}): KgPerM3 {
  return seawaterDensity(as<PracticalSalinity>(Math.max(0, salinity)), temperature);
}

/** The parts that most conversions share. */
export function plain(
  kind: Convertible["kind"],
  wanted: Converted | undefined,
  all: readonly Converted[],
): Pick<Answer<Conversion>, "kind" | "value" | "constants" | "assumptions" | "cautions"> {
  return {
    kind: "answer",
    value: { noun: KIND_NOUNS[kind], ...(wanted === undefined ? {} : { wanted }), all },
    constants: [],
    assumptions: [],
    cautions: [],
  };
}

export function differs(kind: Convertible["kind"], target: string, units: readonly string[]): NoAnswer {
  return noAnswer("conversion-kinds-differ", {
    noun: KIND_NOUNS[kind],
    target: target.slice(0, 30),
    units: units.slice(0, 12).join(", "),
  });
}
