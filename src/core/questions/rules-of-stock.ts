import type { FoundFigure } from "./figures.ts";
import type { Frame } from "./frame.ts";
import type { Rule } from "./rules-of-record.ts";
import { figureOf, parts } from "./rules-of-salt.ts";

const stockingLoad: Rule = (f) => {
  const { text } = f;
  if (f.event !== undefined && f.event !== "feeding" && f.event !== "livestock in") return undefined;
  const isLoad =
    /\b(?:over|under)[- ]?stocked\b|\b(?:heavily|too|fully|lightly) stocked\b|\b(?:over)?crowded\b|\bstock(?:ing|ed)?\b.*\b(?:load|level|density)\b|\bbio[- ]?load\b|\bhow (?:heavily )?(?:stocked|full)\b|\btoo many (?:fish|animals)\b|\b(?:at|over|near) (?:the|my) limit (?:with|of|for|on) (?:fish|stock|animals)\b|\bstocking\b.*\b(?:filter|filtration|ok|okay|sense|fine)\b|\b(?:too much|enough) filt\w*\b|\bfish load\b|\bfully stocked\b/.test(
      text,
    ) ||
    /\b(?:bio)?(?:filter|filtration|media|bacteria)\b.*\b(?:handle|cope|keep up|enough|big enough|manage|support)\b/.test(
      text,
    );
  if (!isLoad || f.figures.length > 0) return undefined;
  return { intent: "stocking-load", confidence: 0.9 };
};

const FISH =
  "(?:fish(?:es)?|triggers?|triggerfish|groupers?|tangs?|clownfish|clowns?|damsels?|wrasses?|eels?|morays?|angel(?:fish)?s?|gob(?:y|ies)|puffers?|sharks?|rays?|lionfish|blenn(?:y|ies)|chromis|anthias|snappers?|butterfly(?:fish)?|seahorses?|stingrays?|rabbitfish|foxface|hogfish|batfish|cichlids?|goldfish|koi|discus|tetras?|guppies|animals?)";

/** A count, up to two words of description, and the animal. */
const ANIMAL = new RegExp(
  `\\b(?:(\\d+) (?!(?:cm|mm|inch(?:es)?|in|m)\\b)(?:more |another |new |extra )?)?(?:[a-z-]+ ){0,3}${FISH}\\b`,
);
/** What stands before the animal's own name. */
const LEADING =
  /^(?:.*\b(?:an?|the|another|more|one|new|add|adding|added|get|fit|for|of|to|keep|put|have|would|i|if|some|cm|inch|inches|mm|my|stock|introduce|extra|take|in|buy|could|can|squeeze|is|what|about|room|hold|with)) /;

const stockingAdd: Rule = (f) => {
  const { text } = f;
  const isAsked =
    /\b(?:can|could|may|should|would|what if|what does|what would|capacity|thinking (?:of|about)|planning|id like|i want|room|is there|space|how about|ok to|okay to|safe to|possible|what happens if|able|fit)\b/.test(
      text,
    ) &&
    /\b(?:add|adding|getting|fit|get|put|keep|have|room|space|take|capacity|hold|be too much|squeeze|stock|introduce|another|one more|more)\b/.test(
      text,
    );
  if (
    !isAsked ||
    /\b(?:did|when|live with|together|compatible|eat|eats|cost|buy|cook|medic\w*|help me|water change)\b/.test(
      text,
    )
  )
    return undefined;
  const found = ANIMAL.exec(text);
  if (found === null) return undefined;
  const [named = "", count] = found;
  const kind = named.replace(/^\d+ /, "").replace(LEADING, "");
  const length = figureOf(f, "length");
  const isBehind = length !== undefined && length.start > found.index;
  const figures = f.figures.filter(({ kind: of }) => of !== "length" && of !== "bare");
  if (figures.length > 0) return undefined;
  const isUnnamed = /^(?:fish(?:es)?|animals?)$/.test(kind);
  if (isUnnamed && length === undefined) return { intent: "stocking-add", confidence: 0.85 };
  return {
    intent: "stocking-add",
    ...parts({ animal: animalText(kind, count, length?.text, isBehind) }),
    confidence: 0.9,
  };
};

/** "12 cm triggerfish" and "triggerfish 12 cm" are told as they were typed. */
function animalText(
  kind: string,
  count: string | undefined,
  length: string | undefined,
  isBehind: boolean,
): string {
  const words = isBehind ? [count, kind, length] : [count, length, kind];
  return words.filter(Boolean).join(" ");
}

const DANGER =
  /\b(?:bad|dangerous|danger|toxic|safe|harm\w*|worry|worried|ok|okay|fine|lethal|deadly|kill|hurt|problem|too (?:high|much)|high|free|un-?ionised|un-?ionized|toxicity|emergency|alright|concern\w*|panic|scar(?:e|ed|y)|alarm\w*|freak\w*|serious|trouble|kill\w*|die|poison\w*)\b/;

const ammonia: Rule = (f) => {
  const { text, parameters } = f;
  if (!parameters.includes("ammonia") || /\b(?:log|record|when|since|until|trend|did|convert)\b/.test(text))
    return undefined;
  if (parameters.some((id) => id !== "ammonia" && id !== "ph" && id !== "temperature" && id !== "salinity"))
    return undefined;
  if (
    !DANGER.test(text) &&
    !/\b(?:how much|what (?:share|fraction|part|percent\w*)|percent\w*|share|fraction) of\b/.test(text)
  )
    return undefined;
  const temperature = figureOf(f, "temperature")?.text ?? namedTemperature(text);
  const salinity = figureOf(f, "salinity", "gravity");
  const ph = phIn(text);
  const reading = f.figures.find(
    (figure) =>
      (figure.kind === "concentration" || figure.kind === "bare") &&
      figure.text !== ph &&
      figure.text !== temperature,
  );
  const based = reading === undefined ? undefined : withBasis(text, reading);
  if (/\b(?:how (?:high|low))\b/.test(text) && reading === undefined) return undefined;
  return { intent: "ammonia", ...parts({ reading: based, ph, temperature, salinity }), confidence: 0.92 };
};

/** "temp 28": the name says of what the figure is, its unit is asked where it matters. */
function namedTemperature(text: string): string | undefined {
  return /\b(?:temp(?:erature)?)(?: of| is| at|:)? ?(\d+(?:\.\d+)?)(?![\d.])/.exec(text)?.[1];
}

/** "dissolved oxygen at 29": nothing but a temperature is told so bare. */
function bareDegrees({ text, figures }: Frame): string | undefined {
  const bare = figures.filter(({ kind }) => kind === "bare");
  return bare.length === 1 && bare[0] !== undefined && text.includes(`at ${bare[0].text}`)
    ? bare[0].text
    : undefined;
}

function phIn(text: string): string | undefined {
  return (
    /\bph(?: of| is| at| =|:)? ?(\d+(?:\.\d+)?)/.exec(text)?.[1] ?? /(\d+(?:\.\d+)?) ph\b/.exec(text)?.[1]
  );
}

/** "0.8 ppm tan": of what the figure counts the mass belongs to it. */
function withBasis(text: string, { text: figure, end }: FoundFigure): string {
  const basis = /^ (tan|as (?:n|nh3|nh4|tan))\b/.exec(text.slice(end))?.[0] ?? "";
  return `${figure}${basis}`;
}

const oxygen: Rule = (f) => {
  const { text } = f;
  const isOxygen = /\boxygen|o2|\bdo\b|\baeration\b/.test(text);
  const isSaturation = /\bsaturat\w+\b/.test(text) && /mg\/l|ppm|%/.test(text) && f.parameters.length === 0;
  const isBreathing =
    /\b(?:survive|live|last|breathe|suffocate|hold out|ok|make it)\b/.test(text) &&
    /\b(?:fish|livestock|animals|they|stock|everything)\b/.test(text);
  const isStopped =
    /\b(?:pumps?|air|power|electricity|flow|aeration|circulation)\b.{0,20}\b(?:stops?|stopped|off|out|fails?|failed|dies|down|cut|goes|goes off|goes out)\b|\bwithout (?:pumps?|air|power|flow|electricity|aeration|circulation)\b|\b(?:power|pump) (?:cut|outage|failure)\b|\b(?:runs?|running) out\b/.test(
      text,
    );
  if (/\b(?:log|record|when did|since|trend)\b|^why\b/.test(text)) return undefined;
  if (isStopped && (isOxygen || isBreathing) && /\bhow (?:long|many|much)\b/.test(text))
    return { intent: "oxygen-budget", confidence: 0.92 };
  if (!isSaturation && !/\boxygen|\bo2\b/.test(text) && !(/\bdo\b/.test(text) && /mg\/l|ppm/.test(text)))
    return undefined;
  const temperature = figureOf(f, "temperature")?.text ?? namedTemperature(text) ?? bareDegrees(f);
  const salinity = figureOf(f, "salinity", "gravity");
  const reading = figureOf(f, "concentration", "share");
  if (
    reading !== undefined &&
    /\b(?:enough|ok|okay|low|high|good|bad|saturation|saturated|mean|mg\/l|percent|fine|safe|is)\b/.test(text)
  )
    return { intent: "oxygen-reading", ...parts({ reading, temperature, salinity }), confidence: 0.92 };
  if (
    reading === undefined &&
    !/^(?:does|do|is|are|why)\b/.test(text) &&
    (/\b(?:hold|holds|max\w*|limit|most|saturation|saturated|dissolve\w*|fully aerated|carry|contain)\b/.test(
      text,
    ) ||
      (temperature !== undefined && /\bhow much\b/.test(text)))
  )
    return { intent: "oxygen-full", ...parts({ temperature, salinity }), confidence: 0.92 };
  return undefined;
};

export const RULES_OF_STOCK: readonly Rule[] = [stockingLoad, stockingAdd, ammonia, oxygen];
