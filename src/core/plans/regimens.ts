import type { EventKind } from "../log/entry.ts";
import type { ParameterId } from "../log/parameters.ts";
import type { SourceId } from "../sources.ts";
import type { Seen } from "./until.ts";

export const REGIMEN_IDS = [
  "cycling",
  "ethanol ramp",
  "water changes",
  "quarantine",
  "salinity watch",
] as const;
export type RegimenId = (typeof REGIMEN_IDS)[number];

/** The figures a regimen runs by; each pattern uses those that concern it. */
export interface RegimenSettings {
  /** Days between two water changes, or the length of a quarantine. */
  readonly days?: number;
  /** Of the water, 0 to 1. */
  readonly share?: number;
  /** Strength of the alcohol in the reservoir, per cent by volume. */
  readonly percent?: number;
  readonly dosesPerDay?: number;
  /** Nitrate to come down to, mg/L as NO₃. */
  readonly nitrate?: number;
  /** Total ammonia to feed a filter with, mg/L as N. */
  readonly ammonia?: number;
}

export interface RegimenPattern {
  readonly id: RegimenId;
  readonly about: string;
  /** When it waits, and when it ends, in words. */
  readonly rules: readonly string[];
  readonly source: SourceId;
  readonly usual: RegimenSettings;
}

/** Ammonia that counts as gone and nitrite that counts as gone, mg/L as N and as NO₂. Source: common-practice. */
const GONE = { ammonia: 0.25, nitrite: 0.3 };
/** Above this ammonia a young filter is fed no more, mg/L as N. Source: common-practice. */
const TOO_MUCH_AMMONIA = 5;
/** Below this oxygen no carbon goes in, mg/L. Source: common-practice. */
const LEAST_OXYGEN = 5;
/** A reading older than this says too little, days. Source: assumption. */
const TEST_AGE_DAYS = { cycling: 3, nitrate: 10, oxygen: 3 };
/** Nitrate below this share of its highest has begun to fall. Source: assumption. */
const FALLING_SHARE = 0.85;
const DAY_MS = 86_400_000;

export const REGIMENS: readonly RegimenPattern[] = [
  {
    id: "cycling",
    about: "Ammonium salt for a filter without animals: tests every day, and a dose whenever it is eaten up",
    rules: [
      `No dose while ammonia stands at ${GONE.ammonia} mg/L as N or more, or without a test in ${TEST_AGE_DAYS.cycling} days.`,
      `Holds above ${TOO_MUCH_AMMONIA} mg/L as N. Ends when ammonia and nitrite are both gone in two tests in a row after a dose.`,
    ],
    source: "common-practice",
    usual: { ammonia: 2 },
  },
  {
    id: "ethanol ramp",
    about: "Dilute alcohol against nitrate: a little every day, a step more each week of doses",
    rules: [
      "Holds while pump, aeration or skimmer is off, while oxygen is low, and without a nitrate test in 10 days.",
      "Takes no further step once nitrate falls. Ends at the nitrate you want, read twice; stops at once after a death.",
    ],
    source: "common-practice",
    usual: { percent: 10, dosesPerDay: 8, nitrate: 10 },
  },
  {
    id: "water changes",
    about: "A share of the water every so many days, with the salt for it",
    rules: ["Holds nothing back; pause, shift or stop it yourself."],
    source: "common-practice",
    usual: { days: 7, share: 0.15 },
  },
  {
    id: "quarantine",
    about: "A count-down with a daily look at the animals; it starts again on every new arrival",
    rules: ["A new arrival or a death in the log starts the count again. Ends when the days are over."],
    source: "common-practice",
    usual: { days: 30 },
  },
  {
    id: "salinity watch",
    about: "Top-off looked at every third day, salinity measured every week",
    rules: ["Says so when the last salinity lies outside the range you want."],
    source: "common-practice",
    usual: {},
  },
];

/** What the log of a tank says, for a regimen to be judged by. Times in milliseconds since 1970. */
export interface TankLog {
  /** Newest first, of that parameter, since the regimen was planned. */
  readings(parameter: ParameterId): readonly Seen[];
  /** Since the regimen was planned. */
  events(event: EventKind): readonly { readonly at: number; readonly text: string }[];
  /** What is switched off now. */
  readonly off: readonly string[];
}

export type Verdict =
  | { readonly kind: "go"; readonly why?: string }
  /** Nothing today; it looks again next time. */
  | { readonly kind: "hold"; readonly why: string }
  /** Came to its good end. */
  | { readonly kind: "end"; readonly why: string }
  /** Called off. */
  | { readonly kind: "stop"; readonly why: string };

const GO: Verdict = { kind: "go" };

/** What the log says to a regimen now. Pure: the same log and time give the same verdict. */
export function judgeRegimen(
  id: RegimenId,
  settings: RegimenSettings,
  log: TankLog,
  startedAt: number,
  now: number,
): Verdict {
  switch (id) {
    case "cycling":
      return judgeCycling(log, startedAt, now);
    case "ethanol ramp":
      return judgeRamp(settings, log, startedAt, now);
    case "quarantine":
      return judgeQuarantine(settings, log, startedAt, now);
    case "water changes":
    case "salinity watch":
      return GO;
  }
}

function judgeCycling(log: TankLog, startedAt: number, now: number): Verdict {
  const ammonia = log.readings("ammonia");
  const nitrite = log.readings("nitrite");
  const firstDose = Math.min(...log.events("dose").map(({ at }) => at), Number.POSITIVE_INFINITY);
  const isGone = (readings: readonly Seen[], limit: number): boolean =>
    readings.length >= 2 &&
    readings.slice(0, 2).every((reading) => reading.high <= limit && reading.at > firstDose);
  if (isGone(ammonia, GONE.ammonia) && isGone(nitrite, GONE.nitrite))
    return {
      kind: "end",
      why: "ammonia and nitrite were gone in two tests in a row after a dose. Prove it with /cycle ready before animals go in",
    };
  const last = ammonia[0];
  if (last !== undefined && last.best > TOO_MUCH_AMMONIA)
    return {
      kind: "hold",
      why: `ammonia was ${said(last.best)} mg/L as N: above ${TOO_MUCH_AMMONIA} the bacteria themselves slow down. Wait, or change water`,
    };
  const tooOld = TEST_AGE_DAYS.cycling;
  if (now - (last?.at ?? startedAt) > tooOld * DAY_MS)
    return { kind: "hold", why: `no ammonia test in ${tooOld} days: log one first` };
  return GO;
}

/** Whether a filter may be fed again: only when the last dose is eaten. */
export function judgeAmmoniumDose(log: TankLog): Verdict {
  const last = log.readings("ammonia")[0];
  const dosed = log.events("dose").some(({ at }) => last === undefined || at >= last.at);
  if (dosed)
    return {
      kind: "hold",
      why: "there is no ammonia test since the last dose: test, log it, then look again",
    };
  return last !== undefined && last.high >= GONE.ammonia
    ? { kind: "hold", why: `ammonia still stands at ${said(last.best)} mg/L as N: it is not eaten up yet` }
    : GO;
}

function judgeRamp(
  { nitrate: wanted = 0 }: RegimenSettings,
  log: TankLog,
  startedAt: number,
  now: number,
): Verdict {
  if (log.events("death").length > 0)
    return {
      kind: "stop",
      why: "a death is in the log. Stop the carbon, aerate, test ammonia and oxygen; ask a vet when in doubt",
    };
  const nitrate = log.readings("nitrate");
  if (nitrate.length >= 2 && nitrate.slice(0, 2).every(({ high }) => high <= wanted))
    return {
      kind: "end",
      why: `nitrate was at or under ${said(wanted)} mg/L twice. Halve the dose, and keep testing`,
    };
  const off = log.off.find((device) => /skimmer|pump|aerat|air/i.test(device));
  if (off !== undefined)
    return { kind: "hold", why: `the ${off} is off: what grows on alcohol takes the oxygen the fish need` };
  const oxygen = log.readings("oxygen")[0];
  if (oxygen !== undefined && now - oxygen.at <= TEST_AGE_DAYS.oxygen * DAY_MS && oxygen.low < LEAST_OXYGEN)
    return { kind: "hold", why: `oxygen was ${said(oxygen.best)} mg/L, under ${LEAST_OXYGEN}` };
  if (now - (nitrate[0]?.at ?? startedAt) > TEST_AGE_DAYS.nitrate * DAY_MS)
    return { kind: "hold", why: `no nitrate test in ${TEST_AGE_DAYS.nitrate} days: log one first` };
  return GO;
}

/**
 * The week of the ramp that today's dose belongs to: one more for every seven days dosed, and none further
 * once nitrate began to fall. Source: common-practice (a step a week, only while nitrate does not fall).
 */
export function rampWeek(doseTimes: readonly number[], nitrate: readonly Seen[]): number {
  const oldestFirst = nitrate.toReversed();
  let highest = 0;
  let fellAt = Number.POSITIVE_INFINITY;
  for (const { best, at } of oldestFirst) {
    if (best < FALLING_SHARE * highest && at < fellAt) fellAt = at;
    highest = Math.max(highest, best);
  }
  const days = new Set(doseTimes.filter((at) => at <= fellAt).map((at) => Math.floor(at / DAY_MS)));
  return 1 + Math.floor(days.size / 7);
}

function judgeQuarantine(
  { days = 0 }: RegimenSettings,
  log: TankLog,
  startedAt: number,
  now: number,
): Verdict {
  const { since, cause } = quarantineStart(log, startedAt);
  const over = now - since >= days * DAY_MS;
  if (over) return { kind: "end", why: `${days} days have passed since ${cause}` };
  const left = Math.ceil((days * DAY_MS - (now - since)) / DAY_MS);
  return { kind: "go", why: `${left === 1 ? "1 day" : `${left} days`} to go, counted from ${cause}` };
}

/** What the count runs from: the start, or whatever set it back last. */
export function quarantineStart(
  log: TankLog,
  startedAt: number,
): { readonly since: number; readonly cause: string } {
  const arrival = Math.max(0, ...log.events("livestock in").map(({ at }) => at));
  const death = Math.max(0, ...log.events("death").map(({ at }) => at));
  const since = Math.max(startedAt, arrival, death);
  if (since === startedAt) return { since, cause: "the start" };
  return { since, cause: since === arrival ? "the last new arrival" : "the last death" };
}

function said(value: number): string {
  return String(Number(value.toPrecision(3)));
}
