import type { UnitSpan } from "./cursor.ts";
import type { Estimate } from "./estimate.ts";
import type { Unit } from "./unit-table.ts";

/** What one kind of quantity accepts. */
export interface Grammar {
  /** With its article: "a volume". */
  readonly noun: string;
  /** Texts that read, in quotes: “200 L” or “55 US gal”. */
  readonly examples: string;
  readonly units: readonly Unit[];
  /** Where three lengths multiplied make the quantity, the units of length, of factor 1 per cm. */
  readonly lengths?: readonly Unit[];
  /** The unit meant when none is typed; without it a bare number is handed back with `unit` undefined. */
  readonly bare?: Unit;
  /** Whether a unit may stand before its number: "pH 8.1", "$ 20". */
  readonly isPrefixed?: boolean;
  /** Whether sums and multiples mean anything: not for temperatures. */
  readonly hasArithmetic: boolean;
  /** Whether “<5” and “>160” are readings of this kind. */
  readonly hasBounds?: boolean;
  readonly min: number;
  /** Past this a figure is a slip of the hand, or breaks the sums. */
  readonly max: number;
  /** Said to a figure outside min and max, where there is more to say than that: "pH runs from 0 to 14". */
  readonly limits?: string;
  /** Half the range that “about” stands for, in canonical units, where ± 10 % would be nonsense. */
  readonly about?: { readonly halfWidth: (unit: Unit | undefined) => number; readonly words: string };
}

/** A figure typed with its range, before anyone says what kind it is. */
export interface Amount {
  /** Canonical, or plain numbers when `unit` is undefined. */
  readonly estimate: Estimate;
  readonly unit: Unit | undefined;
  /** In the unit typed first. */
  readonly typed: Estimate;
  /** Decimals typed in the first number. */
  readonly decimals: number;
  /** Typed as one number, so that it can be said back figure by figure. */
  readonly isPlain: boolean;
  readonly unitSpans: readonly UnitSpan[];
  /** What was made of “about”: "± 10 %". */
  readonly about?: string;
  readonly censored?: "below" | "above";
  /** The three lengths a volume was multiplied from, cm. */
  readonly sidesCm?: readonly [number, number, number];
}

/** A text that cannot be read; its message is the sentence to show. Thrown in this room only, and caught by `attempt`. */
export class Misread extends Error {
  override readonly name = "Misread";
}
