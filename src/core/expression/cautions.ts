/** Cautions of the expression room: code → the figures its sentence needs. */
export interface ExpressionCautions {
  "ppm-taken-as-mg-per-litre": Record<string, never>;
}

/** Refusals of the expression room. */
export interface ExpressionRefusals {
  /** The formula could not be taken apart. */
  "sum-not-understood": Record<string, never>;
  /** Two kinds that only a slip would add or compare. */
  "sum-mixes-kinds": { doing: "add" | "take away" | "compare"; left: string; right: string };
  "sum-needs-plain-number": { where: string; found: string };
  "sum-divides-by-nothing": Record<string, never>;
  "sum-too-large": Record<string, never>;
  "sum-outside-function": { name: string; takes: string };
  "sum-has-no-root": { found: string };
  "sum-of-temperatures": Record<string, never>;
  /** A combination of units that is no quantity with a name. */
  "sum-makes-no-quantity": { units: string };
}
