/** Longest text worth reading as one quantity. */
export const LONGEST_TEXT = 200;
const LONGEST_QUOTE = 40;

/** The zero of each run of ten decimal digits that members' keyboards produce. */
const DIGIT_ZEROS = [
  0x0660, 0x06f0, 0x07c0, 0x0966, 0x09e6, 0x0a66, 0x0ae6, 0x0b66, 0x0be6, 0x0c66, 0x0ce6, 0x0d66, 0x0e50,
  0x0ed0, 0x0f20, 0x1040, 0x17e0, 0x1810, 0xff10,
];
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

export type Cleaned = { readonly text: string } | { readonly complaint: string };

/**
 * Brings a member's text to one plain form: ASCII digits, one kind of dash, quote and space, no
 * invisible marks. Text that is empty, too long, or in letters that no unit is spelled with is complained of.
 */
export function clean(typed: string, examples: string, longest = LONGEST_TEXT): Cleaned {
  if (typed.length > longest) {
    return {
      complaint: `That is ${typed.length} characters long, and I read up to ${longest}. Try ${examples}.`,
    };
  }
  const text = typed
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (vulgar) => ` ${vulgar.normalize("NFKC")}`)
    .replace(/[⁺⁻]/g, "")
    .replace(/[⁰¹²³⁴-⁹]/g, (raised) => `^${SUPERSCRIPTS.indexOf(raised)}`)
    .replace(/[º˚]/g, "°")
    .replace(/[″“”„]/g, '"')
    .replace(/[′‘’ʹʼ]/g, "'")
    .normalize("NFKC")
    .replace(/\p{Nd}/gu, asciiDigit)
    .replace(/\u066b/g, ".")
    .replace(/\u066c/g, "'")
    .replace(/\u2044/g, "/")
    .replace(/[‐‑‒–—―−]/g, "-")
    .replace(/[∼˜]/g, "~")
    .replace(/[≃≅]/g, "≈")
    .replace(/[✕✖⨯]/g, "×")
    .replace(/[\p{Cf}\p{Variation_Selector}]/gu, "")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim()
    .replace(/[.;!?,]+$/, "")
    .trimEnd();
  if (text === "") {
    return { complaint: `There is nothing to read. Try ${examples}.` };
  }
  const foreign = /(?![\p{Script=Latin}μ])\p{L}/u.exec(text);
  if (foreign !== null) {
    return {
      complaint: `“${foreign[0]}” is not a Latin letter, though it may look like one. Write units in Latin letters: try ${examples}.`,
    };
  }
  return { text };
}

/** A piece of the member's own text, safe to show: at most 40 characters, on one line, in typographic quotes. */
export function quote(text: string): string {
  const plain = text
    .replace(/[\p{Cf}\p{Variation_Selector}]/gu, "")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .replace(/\p{Cs}/gu, "�")
    .replace(/[“”]/g, '"')
    .trim();
  const characters = Array.from(plain);
  return characters.length > LONGEST_QUOTE
    ? `“${characters.slice(0, LONGEST_QUOTE - 1).join("")}…”`
    : `“${plain}”`;
}

function asciiDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  const zero = DIGIT_ZEROS.find((start) => code >= start && code <= start + 9);
  return zero === undefined ? digit : String(code - zero);
}
