import type { Habits } from "../quantity/read.ts";

/** All that a sum can be written with, before the text is cleaned. */
const STRAY = /[^\p{L}\p{M}\p{N}\s.,;+\-*/^()%°'"×÷·∙⋅±~≈‰−–—‐‑‒―\u00b2\u00b3\u2044\u066b\u066c\p{Cf}]/u;

/** The first sign that has no place in a sum. */
export function strayIn(typed: string): string | undefined {
  return STRAY.exec(typed.normalize("NFKC"))?.[0];
}

/** A comma between the figures of a function becomes a semicolon, which no number holds. */
export function separated(text: string, habits: Habits): string {
  const opens: boolean[] = [];
  let result = "";
  for (const [at, char] of [...text].entries()) {
    if (char === "(") opens.push(/\b(?:min|max)\s*$/i.test(result));
    if (char === ")") opens.pop();
    const next = text[at + 1] ?? "";
    const isBetween = opens.at(-1) === true && char === "," && (habits.decimal !== "comma" || next === " ");
    result += isBetween ? ";" : char;
  }
  return result;
}

/** "1/2" is a division here, unless it is the half of "1 1/2" or stands right before its unit: "1/2 L". */
export function withoutFractions(text: string): string {
  return text
    .replace(PROPER_FRACTION, (whole, mixed, above, below, unit, at) => {
      const isOfDivision = /(?:[/÷^]|\bper)$/i.test(text.slice(0, at).trimEnd());
      const isMixed = mixed !== undefined && Number(above) < Number(below);
      const isFraction = isMixed || (mixed === undefined && unit !== undefined && !isOfDivision);
      return isFraction ? whole.replace("/", KEPT_SLASH) : whole;
    })
    .replace(/(\d)\/(?=\d)/g, "$1 ÷ ")
    .replaceAll(KEPT_SLASH, "/");
}

/** A slash that `clean` leaves in no text. */
const KEPT_SLASH = "⁄";
const PROPER_FRACTION = /(?<![\d.,/])(\d{1,3} )?(\d{1,3})\/(\d{1,3})(?![\d.,/])( ?[a-z°])?/gi;
