import { FORM_WORDS } from "./read-shape.ts";

// Pieces of sticky patterns for the figures and words of a described container. All are written for
// text with single spaces, and match in time linear in its length.

export const N = String.raw`\d+(?:[.,']\d+)*(?:e[+-]?\d+)?(?:/\d+)?`;
/** After a unit: no letter or digit, unless an x multiplies. */
const END = String.raw`(?:(?=x ?\d)|(?![\p{L}\d]))`;
const GALLON_KIND = "us|uk|imp(?:erial)?";
const VOLUME_UNIT = `(?:(?:${GALLON_KIND}) )?(?:gal(?:lon)?s?|quarts?|qts?)(?: ?\\((?:${GALLON_KIND})\\)| (?:${GALLON_KIND}))?|usg|l|ltrs?|lit(?:re|er)s?|ml|m\\^?3|cu(?:bic)? (?:m|ft|met(?:re|er)s?|feet|foot)|ft\\^?3`;
export const LENGTH_UNIT = `(?:(?:mm|cms?|centimet(?:re|er)s?|met(?:re|er)s?|m|inch(?:es)?|in(?! (?:the |our |my )?system)|ft|feet|foot)${END}|["']{1,2})`;
const MASS_UNIT = `(?:kgs?|kilos?|kilograms?|g|grams?|lbs?|pounds?|oz|ounces?|t|tonnes?)`;
const quantity = (unit: string) =>
  `(?:(?:~|≈|about |approx\\.? |ca\\.? )?${N}(?: ?(?:-|to|±|\\+/-) ?${N})? ?(?:${unit})${END}(?: ?(?:±|\\+/-) ?${N} ?(?:%|(?:${unit})${END})?| ?(?:-|to) ?${N} ?(?:${unit})${END})?(?: ?\\( ?[±\\d][^()]{0,60}\\))?)`;
export const VOLUME = quantity(VOLUME_UNIT);
export const MASS = quantity(MASS_UNIT);
export const LENGTH = `(?:${N} ?${LENGTH_UNIT} ?${N} ?${LENGTH_UNIT}|${quantity(LENGTH_UNIT)})`;
const SIDE = `${N}(?: ?${LENGTH_UNIT}(?: ?${N} ?${LENGTH_UNIT})?)?`;
export const SIDES = `${SIDE}(?: ?(?:x|\\*|by) ?${SIDE})+(?!\\d)(?! ?(?:${VOLUME_UNIT})${END})`;
export const FORM = FORM_WORDS.map(([, words]) => `(?:${words})`).join("|");
export const LEVEL_WORD = "(?:(?:running |water )?(?:level|depth)|filled|water|running)";
export const ROCK = "(?<before>(?:(?:live|dry|wet|base) )*)rocks?(?:work)?";

/** Where the figures begin, and the name therefore ends. */
export const FIRST_FIGURE = new RegExp(
  String.raw`(?<![\p{L}\d.,'])(?:(?:${FORM}) )?(?:${SIDES}|${VOLUME}|${LENGTH} (?:in )?(?:diameter|dia|across)|${LENGTH}|${MASS}|${N} ?%|(?:${LEVEL_WORD}|rocks?|sand|walls?)[: ]+(?:(?:to|at|of) )?(?=\d)|(?:diameter|dia\.?|radius) ?(?:${SIDES}|${LENGTH}))`,
  "iu",
);
