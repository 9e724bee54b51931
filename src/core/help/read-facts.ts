import type { ParameterId, TankKind } from "../log/parameters.ts";
import { between, type Estimate } from "../quantity/estimate.ts";
import type { Habits } from "../quantity/read.ts";
import { readVolume } from "../quantity/volume.ts";
import type { DoubtfulFigure, FactField, HelpFacts, HelpReading, SignCode, TypedFact } from "./facts.ts";
import { readReadings } from "./read-readings.ts";
import { readSigns, tellsOfDeath } from "./read-trouble.ts";

/** Everything known, from what was typed in any field and any order; what is told later takes the earlier's place. */
export function readFacts(typed: readonly TypedFact[], habits: Habits): HelpFacts {
  const readings = new Map<ParameterId, HelpReading>();
  const doubtful = new Map<ParameterId, DoubtfulFigure>();
  let volumeL: Estimate | undefined;
  let ageDays: Estimate | undefined;
  let changedDaysAgo: number | undefined;
  let neverChanged = false;
  let animals: number | undefined;
  for (const { field, text } of typed) {
    const found = readReadings(text, habits);
    for (const reading of found.readings) {
      readings.set(reading.parameter, reading);
      doubtful.delete(reading.parameter);
    }
    for (const figure of found.doubtful) doubtful.set(figure.parameter, figure);
    volumeL = volumeIn(text, field, habits) ?? volumeL;
    ageDays = ageIn(text, field) ?? ageDays;
    animals = animalsIn(text, field) ?? animals;
    const change = changeIn(text, field);
    if (change === "never") neverChanged = true;
    else if (change !== undefined) {
      changedDaysAgo = change;
      neverChanged = false;
    }
  }
  const texts = typed.map(({ text }) => text);
  const all = texts.join(". ").toLowerCase();
  const ofTank = typed.filter(({ field }) => field === "tank").map(({ text }) => text.toLowerCase());
  const water = waterOf(all, ofTank.join(" "), readings.get("salinity"));
  const clearedAt = lastAllClear(typed);
  const stands = typed.filter(({ at }) => clearedAt === undefined || (at ?? "") >= clearedAt);
  const lasting = readSigns(texts).filter(({ code }) => LASTING.includes(code));
  const signs = [
    ...lasting,
    ...readSigns(stands.map(({ text }) => text)).filter(({ code }) => !LASTING.includes(code)),
  ];
  const told = new Set<FactField>(typed.map(({ field }) => field));
  return {
    told,
    ...(water === undefined ? {} : { water }),
    ...(volumeL === undefined ? {} : { volumeL }),
    ...(ageDays === undefined ? {} : { ageDays }),
    ...(changedDaysAgo === undefined ? {} : { changedDaysAgo }),
    neverChanged,
    ...(animals === undefined ? {} : { animals }),
    readings,
    doubtful: [...doubtful.values()],
    signs,
    oneDeath: tellsOfDeath(stands.map(({ text }) => text)),
    animalsLookedAt: told.has("trouble") || signs.length > 0,
    isCoolWater: /\b(?:goldfish|koi|cold ?water|axolotl|white cloud|weather loach|hillstream)/.test(all),
    asksForMedicine:
      /\b(?:medic\w*|antibiotic\w*|treat(?:ment|ing)?|cure|remedy|methylene|copper|salt bath|dewormer|parasit\w*|fungus|white ?spots?|ich|ick)\b/.test(
        all,
      ),
    usedBinder: /\b(?:ammonia (?:binder|remover|lock|detox\w*|neutrali[sz]er)|detoxif\w*|binder)\b/.test(all),
    cleanedFilter:
      /\b(?:clean\w*|wash\w*|rins\w*|chang\w*|replac\w*|new|swapp\w*)\b.{0,30}\b(?:filter|sponge|media|cartridge|floss)\b/.test(
        all,
      ),
  };
}

/** What an “all is well” about the animals does not put right. */
const LASTING: readonly SignCode[] = ["electric tingle", "overheating equipment", "leak", "poisoned water"];
const WELL =
  /\b(?:fine|ok|okay|good|well|normal\w*|usual|better|recovered|happy|eating|no|none|nothing|nobody|stopped)\b/i;

/** When somebody last said that the animals are well again; told later than the alarm, it takes the alarm back. */
function lastAllClear(typed: readonly TypedFact[]): string | undefined {
  const first = typed[0]?.at;
  return typed.findLast(
    ({ field, text, at }) =>
      field === "trouble" &&
      at !== undefined &&
      at !== first &&
      WELL.test(text) &&
      readSigns([text]).length === 0,
  )?.at;
}

const NUMBER_WORDS: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  couple: 2,
  three: 3,
  few: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
};
const COUNT =
  "(?:\\d+(?:[.,]\\d+)?|a|an|one|two|(?:a )?couple(?: of)?|three|(?:a )?few|four|five|six|seven|eight|nine|ten|twelve|several)";
const SPAN = `(${COUNT})(?:\\s?(?:-|to)\\s?(\\d+))?[ -]?(hours?|hrs?|days?|weeks?|wks?|months?|mths?|years?|yrs?)`;
const DAYS: readonly (readonly [RegExp, number])[] = [
  [/^h/, 1 / 24],
  [/^d/, 1],
  [/^w/, 7],
  [/^m/, 30.4],
  [/^y/, 365.25],
];

function days(count: string, to: string | undefined, unit: string): Estimate {
  const numberOf = (text: string): number => {
    const plain = text.replace(/^a (?=couple|few)/, "").replace(/ of$/, "");
    return plain === "several" ? 4 : (NUMBER_WORDS[plain] ?? Number(plain.replace(",", ".")));
  };
  const factor = DAYS.find(([pattern]) => pattern.test(unit))?.[1] ?? 1;
  const from = numberOf(count) * factor;
  const until = to === undefined ? from : Number(to) * factor;
  // A round figure is meant to its half: "3 weeks" is 2½ to 3½.
  return between(
    Math.max(0, from - factor / 2),
    Math.max(from, until) + factor / 2,
    (from + Math.max(from, until)) / 2,
  );
}

const AGE_ELSEWHERE = new RegExp(
  `${SPAN}s?[ -]old|(?:set ?up|started|running|filled|cycl\\w+|established|been going|up and running|had (?:it|the tank|this tank|my tank)|got (?:it|the tank|this tank|my tank)|bought (?:it|the tank))(?: \\w+){0,3}? (?:for |about |since |only |just |now )*${SPAN}`,
  "i",
);
const AGE_IN_FIELD = new RegExp(SPAN, "i");
/** "6 tetras since 2 weeks": the animals' time, not the tank's. */
const HELD_SINCE = /\b(?:\d+|an?) (?!l\b|lit|gal)[a-z]+ (?:[a-z]+ )?since\b/;
const BRAND_NEW =
  /\b(?:brand new|new tank|just (?:set|started|filled|bought|got)|set it up (?:today|yesterday|this week)|first tank|newly set|set (?:it )?up (?:on \w+day|last week|on the weekend))\b/i;

function ageIn(text: string, field: FactField): Estimate | undefined {
  if (field === "change") return undefined;
  const plain = text.toLowerCase();
  const match = AGE_ELSEWHERE.exec(plain);
  if (match !== null) {
    const [, c1, t1, u1, c2, t2, u2] = match;
    const isAnimal = /(?:fish|betta|guppy|puppy|he|she) (?:is|are) (?:about |only )?$/.test(
      plain.slice(0, match.index),
    );
    if (!isAnimal)
      return c1 !== undefined && u1 !== undefined ? days(c1, t1, u1) : days(c2 ?? "1", t2, u2 ?? "days");
  }
  if (field === "tank") {
    const found = AGE_IN_FIELD.exec(plain);
    if (found !== null && !HELD_SINCE.test(plain)) return days(found[1] ?? "1", found[2], found[3] ?? "days");
    if (/\b(?:yesterday|today)\b/.test(plain)) return between(0, 2);
  }
  return BRAND_NEW.test(plain) ? between(0, 21, 7) : undefined;
}

const VOLUME =
  /(?<![\p{L}\d.,])(?:about |around |approx\.? |~)?(\d+(?:[.,]\d+)?)[ -]?(litres?|liters?|ltrs?|lit|l|us gal(?:lons?)?|imp(?:erial)? gal(?:lons?)?|uk gal(?:lons?)?|gallons?|gal|g)(?![\p{L}\d/])/giu;
const BOX =
  /\d+(?:[.,]\d+)?\s?(?:cm|in(?:ch(?:es)?)?|")?\s?[x×*]\s?\d+(?:[.,]\d+)?\s?(?:cm|in(?:ch(?:es)?)?|")?\s?[x×*]\s?\d+(?:[.,]\d+)?\s?(?:cm|in(?:ch(?:es)?)?|")?/i;
/** Litres that were moved or run, and are not the tank's. */
const OTHER_LITRES =
  /\b(?:chang\w*|wc|swapp\w*|remov\w*|took|add\w*|top\w*|replac\w*|pour\w*|per|bucket|new water|dose\w*|sump)\b[^.;]{0,25}$/i;
const FLOW_AFTER =
  /^\s?(?:\/|per|an) ?h|^\s?(?:water change|wc|change|bucket|sump|of (?:new |fresh |tap )?water)/i;

function volumeIn(text: string, field: FactField, habits: Habits): Estimate | undefined {
  for (const match of text.matchAll(VOLUME)) {
    const before = text.slice(0, match.index);
    const after = text.slice(match.index + match[0].length);
    if (field !== "tank" && (OTHER_LITRES.test(before) || FLOW_AFTER.test(after))) continue;
    if (field === "change") continue;
    const unit = /^g$/i.test(match[2] ?? "") ? "gal" : (match[2] ?? "");
    if (/^g$/i.test(match[2] ?? "") && field !== "tank") continue;
    const volume = anyVolume(`${match[1] ?? ""} ${unit}`, habits);
    if (volume !== undefined) return volume;
  }
  const box = BOX.exec(text)?.[0];
  if (box === undefined || field === "change") return undefined;
  return anyVolume(/cm|in|"/i.test(box) ? box : `${box} cm`, habits);
}

/** With two kinds of gallon both are covered. */
function anyVolume(text: string, habits: Habits): Estimate | undefined {
  const read = readVolume(text, habits);
  if (read.kind === "read") return read.value.estimate;
  if (read.kind !== "ask") return undefined;
  const meant = read.choices.flatMap((choice) => {
    const again = readVolume(choice.text, habits);
    return again.kind === "read" ? [again.value.estimate] : [];
  });
  if (meant.length === 0) return undefined;
  return between(Math.min(...meant.map(({ low }) => low)), Math.max(...meant.map(({ high }) => high)));
}

const AGO = new RegExp(`${SPAN} (?:ago|back)`, "i");

function changeIn(text: string, field: FactField): number | "never" | undefined {
  const plain = text.toLowerCase();
  const names =
    /\b(?:water changes?|changed (?:the |some |\d+ ?% (?:of )?(?:the )?)?water|wc|changed? \d+ ?%|\d+ ?% (?:water )?change)\b/;
  if (field !== "change" && !names.test(plain)) return undefined;
  const part =
    field === "change" ? plain : plain.slice(Math.max(0, plain.search(names) - 40), plain.search(names) + 70);
  if (/\b(?:never|not yet|none|no water changes?|havent|haven't|no changes?)\b/.test(part)) return "never";
  const ago = AGO.exec(part);
  if (ago !== null) return days(ago[1] ?? "1", ago[2], ago[3] ?? "days").best;
  if (/\b(?:today|just now|this morning|an hour|tonight)\b/.test(part)) return 0;
  if (/\b(?:yesterday|last night)\b/.test(part)) return 1;
  if (/\blast week\b/.test(part)) return 7;
  if (/\blast month\b/.test(part)) return 30;
  if (/\bon (?:mon|tues|wednes|thurs|fri|satur|sun)day\b/.test(part)) return 4;
  if (/\b(?:weekly|every week|once a week)\b/.test(part)) return 4;
  if (/\b(?:daily|every day)\b/.test(part)) return 1;
  return undefined;
}

const HEADS =
  /(?<![\p{L}\d.,])(\d{1,3}|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\s+(?!%|cm|in(?:ch)?\b|mm|l\b|lit|gal|days?|weeks?|months?|years?|hours?|times?|ppm|mg|degrees?|°|few|couple|bit|lot|week|test|filter|heater|tank|pump|\d)(?:[\p{L}-]+ ){0,3}?[\p{L}-]+/giu;
const NO_ANIMAL =
  /\b(?:day|week|month|year|hour|cm|inch|litre|liter|gallon|plant|rock|stone|shop|store|time|light|test|kit|ago)s?\b/i;

/** Heads counted in the animals' own field: "6 neon tetras, a betta, 2 snails". */
function animalsIn(text: string, field: FactField): number | undefined {
  if (field !== "animals") return undefined;
  let heads = 0;
  for (const part of text.split(/[,;+&\n]|\band\b|\bplus\b/i)) {
    const match = new RegExp(HEADS.source, "iu").exec(part);
    if (match === null || NO_ANIMAL.test(match[0].split(/\s+/).slice(1, 2).join(" "))) continue;
    const count = (match[1] ?? "1").toLowerCase();
    heads += NUMBER_WORDS[count] ?? Number(count);
  }
  if (heads === 0 && /\b(?:none|nothing|no (?:fish|animals)|empty)\b/i.test(text)) return 0;
  return heads === 0 ? undefined : heads;
}

const MARINE =
  /\b(?:salt ?water|marine|reef|corals?|clown ?fish|clowns|anemone|tangs?|live rock|skimmer|sea ?water|damsels?|wrasse|lionfish|trigger ?fish|grouper)\b/;
const FRESH =
  /\b(?:fresh ?water|tropical fish|goldfish|koi|guppy|guppies|betta|bettas|siamese|tetras?|mollies|platy|platies|danios?|rasboras?|cory|corys|corydoras|pleco\w*|cichlids?|angelfish planted|planted|neons?|cherry shrimps?|barbs?|gourami\w*|axolotl|oscar|discus|rcs|swordtails?)\b/;

function waterOf(text: string, ofTank: string, salinity: HelpReading | undefined): TankKind | undefined {
  if (/\bfresh\b/.test(ofTank)) return "fresh";
  if (/\b(?:salt|sea)\b/.test(ofTank)) return "marine";
  if (/\bbrackish\b/.test(text)) return "brackish";
  if (MARINE.test(text) && !/\bfresh ?water\b/.test(text)) return "marine";
  if (FRESH.test(text)) return "fresh";
  if (salinity === undefined) return undefined;
  if (salinity.estimate.best > 25) return "marine";
  return salinity.estimate.best < 2 ? "fresh" : "brackish";
}
