import type { FoundFigure } from "./figures.ts";
import type { Rule } from "./rules-of-record.ts";
import { figureOf, parts } from "./rules-of-salt.ts";

const CHANGE =
  /\bwater changes?\b|\bwcs?\b|\bpwc\b|\bw\/c\b|\bchang(?:e|es|ed|ing)\b|\bhow much water\b(?! to add)|\b(?:swap(?:ping|ped)?|replac(?:e|ing)|drain(?:ing|ed)?|tak(?:e|ing) out)\b|(?:%|l|gal\w*|lit\w+) out\b/;
const isLevel = ({ kind }: FoundFigure): boolean =>
  kind === "concentration" || kind === "bare" || kind === "alkalinity";

const changePlan: Rule = (f) => {
  const { text, parameter } = f;
  if (
    parameter !== undefined &&
    f.figures.length === 0 &&
    /\b(?:halve|half|halving)\b/.test(text) &&
    /\bchange\b/.test(text)
  )
    return { intent: "change-plan", parameter, confidence: 0.85 };
  if (parameter === undefined || parameter === "salinity" || parameter === "temperature") return undefined;
  const levels = f.figures.filter(isLevel);
  // "how many 15 % changes": the share is the size of each.
  const share = /\bhow many\b/.test(text) ? figureOf(f, "share") : undefined;
  if (
    (figureOf(f, "share", "volume") !== undefined && (share === undefined || levels.length < 2)) ||
    levels.length === 0 ||
    levels.length > 2
  )
    return undefined;
  if (/\b(?:until|till|when|log|record|did|since|how long)\b/.test(text)) return undefined;
  const changes = CHANGE.test(text);
  const [first, second] = levels;
  const goes =
    /\bfrom\b.*\b(?:to|down)\b|\bdown to\b|\bget\b.*\bto\b|\bwant\b|\b(?:need|under|below)\b|\bgets?\b|\bbring\b|\bdrop\b|\blower\b|\breduce\b|\bto\b/.test(
      text,
    );
  if (!goes) return undefined;
  if (second !== undefined)
    return {
      intent: "change-plan",
      parameter,
      ...parts({ ...inOrder(text, first, second), each: share }),
      confidence: changes ? 0.93 : 0.75,
    };
  if (!changes || !/\bto\b|\bunder\b|\bbelow\b/.test(text)) return undefined;
  return { intent: "change-plan", parameter, ...parts({ target: first }), confidence: 0.88 };
};

/** Changing water lowers; only "from … to …" and the like say which figure is which. */
function inOrder(text: string, first: FoundFigure | undefined, second: FoundFigure) {
  // "down to 10 from 45" names the target first.
  if (/\bto [\d.,]+[^\d]*\bfrom [\d.,]+/.test(text)) return { now: second, target: first };
  const isSaid = /\bfrom\b|\bto\b/.test(text);
  const sizeOf = (figure: FoundFigure | undefined): number => Number.parseFloat(figure?.text ?? "");
  return isSaid || sizeOf(first) >= sizeOf(second)
    ? { now: first, target: second }
    : { now: second, target: first };
}

const changeEffect: Rule = (f) => {
  const { text, parameter } = f;
  const shares = f.figures.filter(({ kind }) => kind === "share");
  const volumes = f.figures.filter(({ kind }) => kind === "volume");
  const size = shares[0] ?? volumes[0];
  if (
    size === undefined ||
    shares.length + volumes.length > 1 ||
    parameter === undefined ||
    parameter === "oxygen"
  )
    return undefined;
  const levels = f.figures.filter(isLevel);
  if (!CHANGE.test(text) || levels.length > 1) return undefined;
  if (/^(?:log|record|save|note|i did|just did|did|when)\b|\bsalt\b/.test(text)) return undefined;
  return { intent: "change-effect", parameter, ...parts({ now: levels[0], size }), confidence: 0.9 };
};

const dilute: Rule = (f) => {
  const { text } = f;
  const shares = f.figures.filter(({ kind }) => kind === "share");
  const volumes = f.figures.filter(({ kind }) => kind === "volume");
  const isDiluting =
    /\bdilut\w*\b|\bwater(?:ed)? (?:it )?down\b|\b(?:thin|weaken|cut)\b|\bsolution\b|\bstock\b|\bout of\b|\binto\b|\bdown to\b|\b(?:need|want|get)\b.*\bof\b|\bget\b|\bwater\b.*\badd\b|\bmake\b|\bfrom\b/.test(
      text,
    );
  if (shares.length === 0 || shares.length > 2 || volumes.length > 1 || !isDiluting) return undefined;
  if (f.parameter !== undefined || CHANGE.test(text) || /\boxygen|saturation\b/.test(text)) return undefined;
  const [a, b] = shares;
  if (a === undefined) return undefined;
  if (b === undefined)
    return /\bdilut/.test(text)
      ? { intent: "dilute", ...parts({ target: a, volume: volumes[0] }), confidence: 0.8 }
      : undefined;
  // A dilution goes down: the stronger of the two is the stock, however they are named.
  const stockFirst =
    Number.parseFloat(a.text.replace(",", ".")) >= Number.parseFloat(b.text.replace(",", "."));
  return {
    intent: "dilute",
    ...parts({ stock: stockFirst ? a : b, target: stockFirst ? b : a, volume: volumes[0] }),
    confidence: 0.92,
  };
};

const volume: Rule = (f) => {
  const { text, bare } = f;
  if (f.figures.length > 0 || f.parameter !== undefined || f.date !== undefined) return undefined;
  // Measures typed in are another tank than the one on record.
  if (/\d ?[x*] ?\d|\b(?:cylinder|hexagon|bow ?front|corner)\b/.test(text)) return undefined;
  const isVolume =
    /\b(?:net |total |water |system |true |real |actual )+volume\b|\bvolume of (?:my |the )?(?:water|system|tank|set ?up|aquarium)\b|^volume$/.test(
      text,
    ) ||
    (f.tank !== undefined && /\bvolume\b/.test(text)) ||
    (/\bhow (?:much|many (?:lit(?:re|er)s?|l|gal(?:lon)?s?))\b.*\b(?:water|system|tank|hold|holds|have|total|it|is|are|am i|running|run)\b/.test(
      bare,
    ) &&
      !/\b(?:should|drink|need|use|lose|losing|put|salt|change|evaporat\w*|top|add|oxygen|food|o2)\b/.test(
        text,
      )) ||
    (/\bsize\b.*\b(?:lit(?:re|er)s?|gal(?:lon)?s?)\b|\bhow (?:big|large)\b.*\b(?:lit(?:re|er)s?|gal(?:lon)?s?|tank|system)\b/.test(
      text,
    ) &&
      !/\bwater change|\bwc\b/.test(text)) ||
    (f.tank !== undefined && /^(?:how many )?(?:lit(?:re|er)s?|gal(?:lon)?s?)\b/.test(text));
  if (!isVolume || f.event !== undefined) return undefined;
  return { intent: "volume", confidence: 0.88 };
};

const convert: Rule = (f) => {
  const { text } = f;
  const [amount, ...others] = f.figures;
  if (
    amount === undefined ||
    others.length > 0 ||
    amount.kind === "bare" ||
    amount.kind === "salinity" ||
    amount.kind === "gravity"
  )
    return undefined;
  if (
    /\b(?:log|record|water change|wc|salt|mix|oxygen|o2|saturation|ammonia|nitrate|dose|tank hold)\b/.test(
      text,
    )
  )
    return undefined;
  const rest = text.replace(amount.text, "#");
  const to =
    new RegExp(`# ?(?:[a-z]+ ){0,2}?(?:in|to|into|as|=) (?:an? |the )?(${UNIT})$`, "u").exec(rest)?.[1] ??
    new RegExp(
      `\\b(?:how many|what is|whats|how much) (${UNIT}) (?:is|are|in|of|make|makes|are in|is in|to|equals?)(?: there in)? (?:an? )?#$`,
      "u",
    ).exec(rest)?.[1] ??
    new RegExp(`^(${UNIT}) (?:in|of|from) #$`, "u").exec(rest)?.[1];
  if (to === undefined) return undefined;
  return { intent: "convert", ...parts({ amount, to }), confidence: 0.93 };
};

const UNIT =
  "(?:us |imp |imperial |uk )?gal(?:lon)?s?|lit(?:re|er)s?|l|millilit(?:re|er)s?|ml|grams?|g|kg|kilos?|kilograms?|mg|lbs?|pounds?|oz|ounces?|c|f|celsius|fahrenheit|centigrade|degrees (?:c|f|celsius|fahrenheit)|cm|mm|centimet(?:re|er)s?|millimet(?:re|er)s?|inch(?:es)?|feet|ft|foot|met(?:re|er)s?|m|d?kh|meq/l|meq|ppm|mg/l|l/h|lph|gph|gallons per hour|lit(?:re|er)s (?:per|an) hour|days?|hours?|weeks?|cups?|m3|mmol/l|tablespoons?|tbsp|teaspoons?|tsp|ppb|ug/l|quarts?|pints?|fl oz";

export const RULES_OF_WATER: readonly Rule[] = [changePlan, changeEffect, dilute, volume, convert];
