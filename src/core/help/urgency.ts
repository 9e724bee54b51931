import { LEVELS } from "../nitrogen/ammonia-levels.ts";
import { LOWEST_OXYGEN_MG_PER_L } from "../nitrogen/stocking-figures.ts";
import type { SourceId } from "../sources.ts";
import { type AmmoniaHere, ammoniaHere } from "./ammonia-here.ts";
import type { HelpFacts, SignCode } from "./facts.ts";

export type AlarmCode = SignCode | "ammonia" | "nitrite" | "low oxygen" | "pH far out";

/** One reason to act before anything is explained. */
export interface Alarm {
  readonly code: AlarmCode;
  /** What it rests on: the words as typed, or the figures. */
  readonly because: string;
  readonly source: SourceId;
}

export interface Urgency {
  /** "now": life is in danger. "soon": look closely today. "calm": time to think. */
  readonly level: "now" | "soon" | "calm";
  readonly alarms: readonly Alarm[];
  readonly ammonia?: AmmoniaHere;
}

/** Beyond these the animals commonly kept are in danger. Source: common-practice. */
export const DANGER_C = { tropical: { low: 18, high: 32 }, cool: { low: 2, high: 29 } } as const;
/** From here on nitrite in fresh water harms within a day, mg/L as NO₂. Source: common-practice. */
export const NITRITE_DANGER_FRESH = 1;
/** Sea salt holds it off many times over. Source: nitrite-and-chloride, from memory; the figure common-practice. */
export const NITRITE_DANGER_SALT = 20;
const PH_DANGER = { low: 5, high: 9.2 } as const;

/** How pressing the case is: signs told in words first, then what the readings say. A sorting, no diagnosis. */
export function urgencyOf(facts: HelpFacts): Urgency {
  const ammonia = ammoniaHere(facts);
  const alarms: Alarm[] = [
    ...facts.signs.map(({ code, words }) => ({
      code,
      because: `you wrote “${shortened(words)}”`,
      source: "common-practice" as const,
    })),
    ...ammoniaAlarm(ammonia),
    ...readingAlarms(facts),
  ].filter((alarm, at, all) => all.findIndex(({ code }) => code === alarm.code) === at);
  const level = alarms.length > 0 ? "now" : facts.oneDeath || isStrained(facts, ammonia) ? "soon" : "calm";
  return { level, alarms, ...(ammonia === undefined ? {} : { ammonia }) };
}

function ammoniaAlarm(ammonia: AmmoniaHere | undefined): readonly Alarm[] {
  if (ammonia === undefined) return [];
  const { nh3MgPerL, limitNh3, tan } = ammonia.answer.value;
  const isOver = nh3MgPerL.best >= limitNh3 || nh3MgPerL.high >= LEVELS.harm.nh3;
  // A pale trace on a colour chart is no alarm by itself.
  if (!isOver || tan.best < LEAST_TAN) return [];
  const assumed =
    ammonia.assumed.length === 0
      ? ""
      : `, with ${ammonia.assumed.join(" and ")} not told yet and taken as usual`;
  return [
    {
      code: "ammonia",
      because: `the harmful part of the ammonia is about ${short(nh3MgPerL.best)} mg/L (${short(nh3MgPerL.low)}–${short(nh3MgPerL.high)}); the limit is ${short(limitNh3)}${assumed}`,
      source: "epa-440-5-88-004",
    },
  ];
}

/** mg/L as nitrogen: the first step of common colour charts. Source: common-practice. */
const LEAST_TAN = 0.2;

function readingAlarms(facts: HelpFacts): readonly Alarm[] {
  const best = (id: Parameters<typeof facts.readings.get>[0]): number | undefined =>
    facts.readings.get(id)?.estimate.best;
  const alarms: Alarm[] = [];
  const celsius = best("temperature");
  const limits = facts.isCoolWater ? DANGER_C.cool : DANGER_C.tropical;
  if (celsius !== undefined && celsius > limits.high)
    alarms.push({
      code: "too hot",
      because: `the water is at ${short(celsius)} °C`,
      source: "common-practice",
    });
  if (celsius !== undefined && celsius < limits.low)
    alarms.push({
      code: "too cold",
      because: `the water is at ${short(celsius)} °C`,
      source: "common-practice",
    });
  const oxygen = best("oxygen");
  if (oxygen !== undefined && oxygen <= LOWEST_OXYGEN_MG_PER_L)
    alarms.push({
      code: "low oxygen",
      because: `oxygen is at ${short(oxygen)} mg/L, and fish need more than ${LOWEST_OXYGEN_MG_PER_L}`,
      source: "common-practice",
    });
  const nitrite = best("nitrite");
  const isSalt = facts.water === "marine" || facts.water === "brackish";
  if (
    nitrite !== undefined &&
    nitrite >= (isSalt ? NITRITE_DANGER_SALT : NITRITE_DANGER_FRESH) &&
    facts.animals !== 0
  )
    alarms.push({
      code: "nitrite",
      because: `nitrite is at ${short(nitrite)} mg/L`,
      source: isSalt ? "nitrite-and-chloride" : "common-practice",
    });
  const pH = best("ph");
  if (pH !== undefined && (pH < PH_DANGER.low || pH > PH_DANGER.high))
    alarms.push({ code: "pH far out", because: `the pH reads ${short(pH)}`, source: "common-practice" });
  return alarms;
}

/** Not yet an alarm, and not to be left until next week. */
function isStrained(facts: HelpFacts, ammonia: AmmoniaHere | undefined): boolean {
  const nh3 = ammonia?.answer.value.nh3MgPerL.high ?? 0;
  const nitrite = facts.readings.get("nitrite")?.estimate.best ?? 0;
  const oxygen = facts.readings.get("oxygen")?.estimate.best ?? 10;
  return nh3 >= LEVELS.target.nh3 || nitrite >= 0.3 || oxygen < 5;
}

export function short(value: number): string {
  return String(Number(value.toPrecision(2)));
}

function shortened(words: string): string {
  return words.length <= 80 ? words : `${words.slice(0, 79).trimEnd()}…`;
}
