import type { ParameterId, TankKind } from "../log/parameters.ts";
import type { Estimate } from "../quantity/estimate.ts";

/** What may be told in a help thread; the form has one place for each. */
export const FACT_FIELDS = ["worry", "trouble", "tank", "animals", "change", "readings"] as const;
export type FactField = (typeof FACT_FIELDS)[number];

/** One thing somebody typed, in the order it was told. */
export interface TypedFact {
  readonly field: FactField;
  readonly text: string;
  /** When it was told, as text that sorts by time; what was told in one go shares it. */
  readonly at?: string;
}

/** One test result as told, in the parameter's canonical unit. */
export interface HelpReading {
  readonly parameter: ParameterId;
  readonly estimate: Estimate;
  readonly typed: string;
  readonly readAs: string;
  /** The figure has several meanings (scale, unit, form): the range covers them all. */
  readonly isUnclear: boolean;
}

/** A figure that no water can have, or that cannot be read at all. */
export interface DoubtfulFigure {
  readonly parameter: ParameterId;
  readonly typed: string;
  readonly why: string;
}

/** What threatens life, as far as words say it. Each is an alarm, none a diagnosis. */
export type SignCode =
  | "gasping"
  | "mass deaths"
  | "lying"
  | "no flow"
  | "poisoned water"
  | "too hot"
  | "too cold"
  | "overheating equipment"
  | "electric tingle"
  | "leak";

export interface Sign {
  readonly code: SignCode;
  /** The words it was found in, as typed. */
  readonly words: string;
}

/** All that is known of the case. Absent means not told yet. */
export interface HelpFacts {
  readonly told: ReadonlySet<FactField>;
  readonly water?: TankKind;
  readonly volumeL?: Estimate;
  readonly ageDays?: Estimate;
  readonly changedDaysAgo?: number;
  readonly neverChanged: boolean;
  /** Animals counted in the text, where it gives numbers. */
  readonly animals?: number;
  /** Newest of each kind. */
  readonly readings: ReadonlyMap<ParameterId, HelpReading>;
  readonly doubtful: readonly DoubtfulFigure[];
  readonly signs: readonly Sign[];
  /** One animal lost: not yet an alarm, and yet a reason to look closely. */
  readonly oneDeath: boolean;
  /** Somebody said how the animals are, good or bad. */
  readonly animalsLookedAt: boolean;
  /** Fish that live in cool water. */
  readonly isCoolWater: boolean;
  /** Illness or medicine is named: both are a vet's. */
  readonly asksForMedicine: boolean;
  readonly usedBinder: boolean;
  readonly cleanedFilter: boolean;
}
