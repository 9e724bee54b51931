import { quote } from "../quantity/clean.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { readFraction } from "../quantity/fraction.ts";
import { readMass } from "../quantity/mass.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { as, type Grams, type GramsPerDay } from "../quantity/units.ts";
import { FEEDS, type Feed, type FeedKind } from "./feeds.ts";
import { matching } from "./name-match.ts";
import { readList } from "./read-list.ts";
import type { Food, ProteinSaid, Ration } from "./stocking-input.ts";

const EXAMPLES = "“280 g prawn 3 times a week; 5 g pellet daily”";

const OTHER_NAMES: Readonly<Partial<Record<FeedKind, readonly string[]>>> = {
  prawn: ["shrimp"],
  "fatty fish": ["herring", "mackerel", "salmon", "sardine"],
  "lean fish": ["cod", "hake", "white fish", "pollock"],
  "fish flesh": ["fish", "fish fillet"],
  "whole small fish": ["smelt", "silverside", "lance fish"],
  molluscs: ["mollusc", "mussel", "cockle"],
  clam: ["clams"],
  pellet: ["pellets", "dry food", "dry pellet"],
  crustaceans: ["crab", "crustacean"],
};

const TABLE = (Object.keys(FEEDS) as FeedKind[]).map((key) => ({
  key,
  names: [key, FEEDS[key].name, ...(OTHER_NAMES[key] ?? [])],
}));

const WEEKLY: readonly { readonly words: RegExp; readonly perWeek: (n: number) => number }[] = [
  { words: /^(?:every day|daily|a day|per day|each day|\/ ?day|\/ ?d)$/, perWeek: () => 7 },
  { words: /^(?:once (?:a|per) day|1 ?(?:x|×) ?(?:a|per)? ?(?:day|daily))$/, perWeek: () => 7 },
  { words: /^twice (?:a|per) day|twice daily$/, perWeek: () => 14 },
  { words: /^(?:weekly|a week|per week|once (?:a|per) week|\/ ?week)$/, perWeek: () => 1 },
  { words: /^twice (?:a|per) week$/, perWeek: () => 2 },
  { words: /^every other day|every second day$/, perWeek: () => 3.5 },
  { words: /^every (\d{1,2}) days?$/, perWeek: (n) => 7 / n },
  { words: /^(\d{1,2}) ?(?:x|×|times|meals?) ?(?:a|per|\/)? ?(?:week|weekly)$/, perWeek: (n) => n },
  { words: /^(\d{1,2}) ?(?:x|×|times|meals?) ?(?:a|per|\/)? ?(?:day|daily)$/, perWeek: (n) => n * 7 },
];

/** Foods with grams and how often: "280 g prawn 3 times a week; 5 g pellet daily". Grams are as fed, per meal. */
export function readFood(typed: string, habits: Habits): Read<readonly Food[]> {
  return readList(typed, EXAMPLES, (part) => readOne(part, habits));
}

function readOne(part: string, habits: Habits): Read<Food> {
  const text = part.toLowerCase().replace(/\s+/g, " ");
  const pieces =
    /^((?:about |ca\.? |~)?\d[\d.,/–-]*(?: to \d[\d.,]*)? ?(?:±.{1,12}? ?)?(?:kg|g|mg|grams?|oz|lb))\b(?: ?\/ ?(day|d|week)\b| (?:a|per) (day|week)\b)? ?(?:of )?(.*)$/.exec(
      text,
    );
  if (pieces === null) return unreadable(part, "needs grams, a food, and how often");
  const [, massText = "", slashed, spelled, restText = ""] = pieces;
  const mass = readMass(massText, habits);
  if (mass.kind === "ask")
    return {
      ...mass,
      choices: mass.choices.map((c) => ({ ...c, text: text.replace(massText, () => c.text) })),
    };
  if (mass.kind === "unreadable") return mass;
  const { rest, perWeek } = frequencyOf(restText, slashed ?? spelled);
  const { name, protein: own } = ownProtein(rest, habits);
  if (name === "") return unreadable(part, "does not say which food it is");
  if (own !== undefined && own.kind === "unreadable") return own;
  const doubt = own?.kind === "read" ? doubtfulProtein(text, name, own.value) : undefined;
  if (doubt !== undefined) return doubt;
  if (perWeek === undefined)
    return {
      kind: "ask",
      question: `How often is ${quote(`${massText} ${name}`)} given?`,
      choices: ["daily", "every other day", "3 times a week", "2 times a week", "once a week"].map(
        (each) => ({
          label: each,
          text: `${massText} ${rest} ${each}`,
        }),
      ),
    };
  const protein = own?.kind === "read" ? own.value : undefined;
  const known = matching(name, TABLE);
  const [only, ...others] = known;
  if (protein === undefined && only === undefined)
    return unreadable(
      part,
      `names ${quote(name)}, whose protein I do not know; add it from the label, e.g. “10 g ${name} 46 % protein as fed daily”`,
    );
  if (protein === undefined && others.length > 0)
    return {
      kind: "ask",
      question: `Which food is ${quote(name)}?`,
      choices: known.slice(0, 20).map((key) => ({
        label: FEEDS[key].name,
        text: part.replace(new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"), "i"), key),
      })),
    };
  const feed: Feed | undefined = only === undefined ? undefined : FEEDS[only];
  const said: ProteinSaid = protein ?? { kind: "table", feed: only ?? "fish flesh" };
  const ration = rationOf(
    mapEstimate(mass.value.estimate, (kg) => as<Grams>(kg * 1000)),
    perWeek,
  );
  return {
    kind: "read",
    value: { label: name, protein: said, ration },
    readAs: `${mass.readAs} of ${protein === undefined && feed !== undefined ? feed.name : name}, ${timesSaid(perWeek)}`,
  };
}

function frequencyOf(
  text: string,
  unit: string | undefined,
): { readonly rest: string; readonly perWeek: number | undefined } {
  if (unit === "day" || unit === "d") {
    const [rest = text, times] = splitFrequency(text);
    // "120 g a day in 3 meals" is rare; grams a day stand as one meal a day.
    return { rest, perWeek: times ?? 7 };
  }
  if (unit === "week") return { rest: text, perWeek: 1 };
  const [rest = text, perWeek] = splitFrequency(text);
  return { rest, perWeek };
}

function splitFrequency(text: string): readonly [string, number | undefined] {
  const words = text.split(" ");
  for (let at = 0; at < words.length; at++) {
    const tail = words.slice(at).join(" ").replace(/[.,]$/, "");
    for (const { words: pattern, perWeek } of WEEKLY) {
      const match = pattern.exec(tail);
      if (match !== null && Number(match[1] ?? 1) > 0)
        return [words.slice(0, at).join(" ").replace(/[,;]$/, ""), perWeek(Number(match[1] ?? 1))];
    }
  }
  return [text, undefined];
}

/** A label's protein is nothing without what it is a share of, and dry matter nothing without the water. */
function doubtfulProtein(text: string, name: string, said: ProteinSaid): Read<Food> | undefined {
  if (said.kind !== "own") return undefined;
  if (said.basis === "not said")
    return {
      kind: "ask",
      question: `Is the protein of ${quote(name)} a share of the food as it goes in, or of its dry matter? The two can differ five times.`,
      choices: [
        {
          label: "of the food as it goes in (most labels)",
          text: text.replace(/% protein/, "% protein as fed"),
        },
        { label: "of its dry matter", text: text.replace(/% protein/, "% protein of dry matter") },
      ],
    };
  if (said.basis === "dry matter" && said.water === undefined)
    return {
      kind: "unreadable",
      message: `${quote(name)}: with protein given for dry matter I need the share of water too, e.g. “50 % protein of dry matter 75 % water”.`,
    };
  return undefined;
}

/** "flake 46 % protein as fed", "pellet 50% protein of dry matter, 8 % water". */
function ownProtein(
  text: string,
  habits: Habits,
): { readonly name: string; readonly protein?: Read<ProteinSaid> } {
  const pieces =
    /^(.*?),? ?(?:with |at )?(\d[\d.,–-]*) ?% protein( as (?:fed|given)| (?:of|in|on)? ?(?:the )?dry (?:matter|weight|basis)?)?(?:,? ?(\d[\d.,–-]*) ?% (?:water|moisture))?$/.exec(
      text,
    );
  if (pieces === null) return { name: text.trim() };
  const [, name = "", percent = "", basis, water] = pieces;
  const protein = readFraction(`${percent} %`, habits);
  const moisture = water === undefined ? undefined : readFraction(`${water} %`, habits);
  const label = name.trim() === "" ? "food" : name.trim();
  if (protein.kind !== "read")
    return { name: label, protein: protein.kind === "unreadable" ? protein : ask(percent) };
  if (moisture?.kind === "unreadable") return { name: label, protein: moisture };
  return {
    name: label,
    protein: {
      kind: "read",
      readAs: protein.readAs,
      value: {
        kind: "own",
        protein: protein.value.estimate,
        basis: basis === undefined ? "not said" : basis.startsWith(" as ") ? "as fed" : "dry matter",
        ...(moisture?.kind === "read" ? { water: moisture.value.estimate } : {}),
      },
    },
  };
}

function ask(percent: string): Read<ProteinSaid> {
  return {
    kind: "unreadable",
    message: `${quote(`${percent} %`)} is not a protein share I can read. Try “46 % protein”.`,
  };
}

function rationOf(gramsPerMeal: Estimate<Grams>, perWeek: number): Ration {
  return perWeek > 7
    ? {
        kind: "daily",
        gramsPerDay: mapEstimate(gramsPerMeal, (g) => as<GramsPerDay>((g * perWeek) / 7)),
        mealsPerDay: perWeek / 7,
      }
    : { kind: "meals", gramsPerMeal, mealsPerWeek: perWeek };
}

function timesSaid(perWeek: number): string {
  return perWeek === 7
    ? "daily"
    : perWeek > 7
      ? `${perWeek / 7} times a day`
      : `${Number(perWeek.toPrecision(2))} times a week`;
}

function unreadable(part: string, why: string): Read<Food> {
  return { kind: "unreadable", message: `${quote(part)} ${why}. Try ${EXAMPLES}.` };
}
