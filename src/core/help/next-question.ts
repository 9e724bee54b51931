import { nh3Share } from "../nitrogen/ammonia-levels.ts";
import { as, type DegreesC, type PH, type PracticalSalinity } from "../quantity/units.ts";
import { UNTOLD } from "./ammonia-here.ts";
import type { FactField, HelpFacts } from "./facts.ts";
import { YOUNG_DAYS } from "./findings.ts";
import type { Urgency } from "./urgency.ts";

export type QuestionId =
  | "trouble"
  | "water"
  | "ammonia"
  | "pH"
  | "age"
  | "temperature"
  | "volume"
  | "nitrite"
  | "animals"
  | "change"
  | "salinity"
  | "alkalinity"
  | "nitrate";

export interface HelpQuestion {
  readonly id: QuestionId;
  readonly text: string;
  /** What the answer will change. */
  readonly why: string;
  /** The place of the form the answer goes into. */
  readonly field: FactField;
  readonly example: string;
}

interface Candidate extends HelpQuestion {
  readonly isOpen: (facts: HelpFacts) => boolean;
  /** How much the answer may change what is to be done, from 0 to 100. Source: assumption. */
  readonly worth: (facts: HelpFacts, urgency: Urgency) => number;
  /** 1 to look or remember, 1.5 to read a thermometer, 2 for a test kit. Source: assumption. */
  readonly effort: number;
}

const lacks =
  (id: Parameters<HelpFacts["readings"]["get"]>[0]) =>
  ({ readings }: HelpFacts): boolean =>
    !readings.has(id);

const CANDIDATES: readonly Candidate[] = [
  {
    id: "trouble",
    text: "How are the animals right now? Is anything gasping, lying down, or dead?",
    why: "If one is in trouble, that comes before everything else.",
    field: "trouble",
    example: "all swim and eat as usual",
    isOpen: ({ animalsLookedAt }) => !animalsLookedAt,
    worth: () => 100,
    effort: 1,
  },
  {
    id: "water",
    text: "Is it fresh water or salt water?",
    why: "Nearly every limit hangs on it.",
    field: "tank",
    example: "fresh water",
    isOpen: ({ water }) => water === undefined,
    worth: () => 60,
    effort: 1,
  },
  {
    id: "ammonia",
    text: "What does an ammonia test read?",
    why: "Ammonia is the waste that harms soonest, and nobody can see it.",
    field: "readings",
    example: "ammonia 0.5 mg/L",
    isOpen: lacks("ammonia"),
    worth: (facts, { level }) => (level === "now" ? 110 : (facts.ageDays?.best ?? 0) < YOUNG_DAYS ? 95 : 60),
    effort: 2,
  },
  {
    id: "pH",
    text: "What does a pH test read?",
    why: "The same ammonia is mild at a low pH and harmful at a high one.",
    field: "readings",
    example: "pH 7.4",
    isOpen: lacks("ph"),
    worth: (facts) => worthOfPh(facts),
    effort: 2,
  },
  {
    id: "age",
    text: "How long has the tank been running?",
    why: "A new tank has few of the bacteria that clean the water.",
    field: "tank",
    example: "running for 5 weeks",
    isOpen: ({ ageDays }) => ageDays === undefined,
    worth: () => 45,
    effort: 1,
  },
  {
    id: "temperature",
    text: "How warm is the water?",
    why: "Warm water holds less air, and makes ammonia more harmful.",
    field: "readings",
    example: "temp 25 °C",
    isOpen: lacks("temperature"),
    worth: (_, { alarms }) => (alarms.some(({ code }) => BREATH_CODES.includes(code)) ? 75 : 48),
    effort: 1.5,
  },
  {
    id: "volume",
    text: "How much water is in the tank? Its length, width and height will do.",
    why: "Then a share of the water can be told in litres.",
    field: "tank",
    example: "60 L, or 60x30x35 cm",
    isOpen: ({ volumeL }) => volumeL === undefined,
    worth: (_, { level }) => (level === "now" ? 40 : 30),
    effort: 1,
  },
  {
    id: "nitrite",
    text: "What does a nitrite test read?",
    why: "With the ammonia it tells how far the filter has come.",
    field: "readings",
    example: "nitrite 0.3 mg/L",
    isOpen: lacks("nitrite"),
    worth: ({ ageDays, water }) =>
      ((ageDays?.best ?? 0) < YOUNG_DAYS ? 70 : 40) * (water === "marine" ? 0.7 : 1),
    effort: 2,
  },
  {
    id: "animals",
    text: "Which animals live in it, and since when?",
    why: "Each asks for something else, and new ones change the load.",
    field: "animals",
    example: "6 neon tetras since 2 weeks, 1 betta",
    isOpen: ({ told, animals }) => animals === undefined && !told.has("animals"),
    worth: () => 34,
    effort: 1,
  },
  {
    id: "change",
    text: "When did you last change water, and how much?",
    why: "It tells what may have built up, and what the next change may be.",
    field: "change",
    example: "20 % last Sunday",
    isOpen: ({ changedDaysAgo, neverChanged, told }) =>
      changedDaysAgo === undefined && !neverChanged && !told.has("change"),
    worth: () => 22,
    effort: 1,
  },
  {
    id: "salinity",
    text: "How salty is the water, and which tool did you use?",
    why: "The two scales are easily mixed up.",
    field: "readings",
    example: "35 ppt, refractometer",
    isOpen: ({ water, readings }) =>
      (water === "marine" || water === "brackish") && !readings.has("salinity"),
    worth: () => 50,
    effort: 2,
  },
  {
    id: "alkalinity",
    text: "What does an alkalinity (KH) test read?",
    why: "It tells whether the pH can drop without warning.",
    field: "readings",
    example: "KH 5",
    isOpen: lacks("alkalinity"),
    worth: ({ readings }) => ((readings.get("ph")?.estimate.best ?? 7.5) < 6.8 ? 50 : 16),
    effort: 2,
  },
  {
    id: "nitrate",
    text: "What does a nitrate test read?",
    why: "It shows how much waste has built up over the weeks.",
    field: "readings",
    example: "nitrate 20",
    isOpen: lacks("nitrate"),
    worth: ({ neverChanged }) => (neverChanged ? 30 : 12),
    effort: 2,
  },
];

const BREATH_CODES: readonly string[] = ["gasping", "no flow", "too hot", "too cold", "low oxygen", "lying"];

/** A pH is worth asking for as far as it can move the ammonia over or under its limit. */
function worthOfPh(facts: HelpFacts): number {
  const tan = facts.readings.get("ammonia")?.estimate.best;
  if (tan === undefined || tan < 0.1) return 30;
  const range = UNTOLD.pH[facts.water ?? "fresh"];
  const celsius = facts.readings.get("temperature")?.estimate.best ?? UNTOLD.temperature.best;
  const salinity =
    facts.readings.get("salinity")?.estimate.best ?? UNTOLD.salinity[facts.water ?? "fresh"].best;
  const nh3At = (pH: number): number =>
    tan * nh3Share(as<PH>(pH), "buffers", as<DegreesC>(celsius), as<PracticalSalinity>(salinity)) * NH3_PER_N;
  const couldBeMild = nh3At(range.low) < LIMIT_NH3;
  const couldHarm = nh3At(range.high) >= LIMIT_NH3;
  return couldBeMild && couldHarm ? 105 : 30;
}

/** Mass of NH₃ for each of its nitrogen. Source: standard-atomic-weights. */
const NH3_PER_N = 1.2159;
/** Source: epa-440-5-88-004, lasting exposure, mg/L as NH₃. */
const LIMIT_NH3 = 0.035;

/** What to ask, most useful first: how much the answer may change what is to be done, for the effort it takes. */
export function openQuestions(facts: HelpFacts, urgency: Urgency): readonly HelpQuestion[] {
  return CANDIDATES.filter(({ isOpen }) => isOpen(facts))
    .map((candidate) => ({ candidate, score: candidate.worth(facts, urgency) / candidate.effort }))
    .sort((a, b) => b.score - a.score)
    .map(({ candidate: { id, text, why, field, example } }) => ({ id, text, why, field, example }));
}

/** Every question there is, for those who check their tone. */
export const ALL_QUESTIONS: readonly HelpQuestion[] = CANDIDATES;
