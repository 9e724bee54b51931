/** Text as it is compared: lower case, one kind of dash and quote, no apostrophes, single spaces. */
export function plainText(typed: string): string {
  return typed
    .slice(0, LONGEST)
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[‐‑‒–—―−]/g, "-")
    .replace(/[‘’ʹʼ'`´]/g, "")
    .replace(/[“”"]/g, " ")
    .replace(/[\p{Cf}\p{Variation_Selector}]/gu, "")
    .replace(/°/g, "")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim();
}

/** What stands further right than this is not read: a question is shorter. */
const LONGEST = 600;

/** Each run of letters replaced by what `correct` makes of it; figures and marks stay. */
export function correctedText(plain: string, correct: (word: string) => string): string {
  return plain.replace(/(?<![\p{L}\d/])\p{L}{3,}(?![\p{L}\d/])/gu, (word) => correct(word));
}
