import type { Driver, Estimate } from "../quantity/estimate.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { chanceOf, DEFAULT_OXYGEN, ensemble, type Member, type Random } from "./cycling-ensemble.ts";
import {
  BELIEF,
  type Belief,
  beliefsOf,
  believedAt,
  type CyclingReading,
  type CyclingSituation,
} from "./cycling-input.ts";
import { NITRIFIERS } from "./cycling-model.ts";
import { cyclingCautions } from "./cycling-remarks.ts";
import type { CyclingPlan } from "./cycling-run.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";
import { weightedEstimate } from "./weighted-quantile.ts";

/** One day of the outlook: half the courses above and below `best`, eight in ten within the range. */
export interface CyclingDay {
  readonly day: number;
  readonly ammonia: Estimate;
  readonly nitrite: Estimate;
  readonly nitrate: Estimate;
}

export interface CyclingOutlook {
  readonly curve: readonly CyclingDay[];
  /** Day on which the filter has proven itself twice; an end beyond the outlook is infinite. */
  readonly readyDay: Estimate;
  /** Share of the courses that get there within the outlook. */
  readonly readyShare: number;
  readonly nitritePeak: Estimate;
  readonly nitritePeakDay: Estimate;
  /** Ammonia nitrogen of the proof: gone within a day, with its nitrite, twice. */
  readonly proofMgPerL: number;
  /** Growth against fresh water, and cells at the start, as the readings leave them. */
  readonly growth: Estimate;
  readonly seed: Estimate;
  /** Readings that hardly any course agrees with. */
  readonly misfits: readonly CyclingReading[];
}

const DEFAULT_DAYS = 120;
/** Level both must fall under. Source: common-practice. */
export const PASS_BELOW_MG_PER_L = 0.1;
/** Ammonia at which a dosed tank is dosed again, mg/L. Source: common-practice. */
const AGAIN_BELOW = 0.5;
/** Nitrite nitrogen at which dosing is held back. Source: common-practice. */
const WAITS_ABOVE_NITRITE = 5;
/**
 * How a new filter will take up ammonia and nitrite, and when it can be trusted.
 * `random` decides which of the possible courses are looked at; the same numbers give the same answer.
 */
export function cycling(situation: CyclingSituation, random: Random): Answer<CyclingOutlook> | NoAnswer {
  const readings = situation.readings ?? [];
  const days = Math.round(situation.days ?? DEFAULT_DAYS);
  const { ammonia, seed } = situation;
  const refusal = figureRefusal([
    ["volume", situation.volumeL, "L", 1, 10_000_000],
    ["temperature", situation.temperatureC, "°C", 5, 38],
    ["salinity", situation.salinity, "", 0, 45],
    ["oxygen", situation.oxygen, "mg/L", 0.5, 20],
    ["alkalinity", situation.alkalinity, "meq/L", 0, 20],
    ["days to look ahead", days, "d", 7, 365],
    ammonia.kind === "dosed"
      ? ["ammonia dosed to", ammonia.to, "mg/L N", 0.1, 20]
      : ["ammonia of the animals", ammonia.load, "g N/day", 1e-4, 10_000],
    ["live rock", seed.kind === "live rock" ? seed.massKg : undefined, "kg", 0, 100_000],
    ["mature media", seed.kind === "mature media" ? seed.litres : undefined, "L", 0, 100_000],
    ...readings.flatMap((reading) => [
      ["day of a reading", reading.day, "", 0, days] as const,
      [`${reading.kind} read`, reading.value.best, "mg/L N", 0, 200] as const,
      // The top colour of a card has no upper end.
      [
        `${reading.kind} read`,
        Math.min(reading.value.high, 1000),
        "mg/L N",
        reading.value.low,
        1000,
      ] as const,
    ]),
    ...(situation.waterChanges ?? []).flatMap((change) => [
      ["share of water changed", change.changed, "", 0, 1] as const,
      ["day of a water change", change.day, "", 0, days] as const,
    ]),
    ...(ammonia.kind === "dosed" ? (ammonia.given ?? []) : []).flatMap((dose) => [
      ["dose given", dose.rise, "mg/L N", 0, 20] as const,
      ["day of a dose", dose.day, "", 0, days] as const,
    ]),
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const plan = planOf(situation, days);
  const beliefs = beliefsOf(situation);
  const members = ensemble({ situation, beliefs, plan }, readings, random);
  const value = outlookFrom(members, beliefs, plan, readings);
  return {
    kind: "answer",
    value,
    method:
      readings.length === 0
        ? "growth of two groups of bacteria, followed 200 times over what is uncertain"
        : "growth of two groups of bacteria, followed 200 times and weighted by your readings",
    working: [
      "growth = greatest growth × food ÷ (food + half level) × oxygen ÷ (oxygen + half level) × cells",
      "ammonia → nitrite → nitrate: each group makes 1 ÷ yield of product as it grows, and dies at a constant rate",
      `proof: ${rounded(plan.proof)} mg/L ammonia nitrogen gone within a day, with its nitrite, to under ${PASS_BELOW_MG_PER_L} mg/L, twice running`,
      `half of the courses are proven by day ${Number.isFinite(value.readyDay.best) ? rounded(value.readyDay.best) : `${days} or later`}`,
      ...(readings.length === 0
        ? []
        : [`${readings.length} readings weigh the courses; each counts as the interval its kit leaves`]),
    ],
    constants: [
      {
        name: "greatest growth at 20 °C in fresh water, both groups",
        value: `${NITRIFIERS.ammonia.growth} per day`,
        source: "nitrifier-parameter-set",
      },
      {
        name: "half levels: ammonia, nitrite",
        value: `${NITRIFIERS.ammonia.halfFood}, ${NITRIFIERS.nitrite.halfFood} mg/L N`,
        source: "nitrifier-parameter-set",
      },
      {
        name: "yields",
        value: `${NITRIFIERS.ammonia.yield}, ${NITRIFIERS.nitrite.yield} g per g N`,
        source: "nitrifier-parameter-set",
      },
      { name: "warmth", value: "68 and 44 kJ/mol", source: "vannecke-volcke" },
      {
        name: "growth in this water against fresh water",
        value: rounded(beliefs[BELIEF.growth]?.figure.best ?? 1, 2).toString(),
        source: "nijhof-bovendeur-1990",
      },
    ],
    sources: [
      "nitrifier-parameter-set",
      "asm-iwa-str9",
      "vannecke-volcke",
      "nijhof-bovendeur-1990",
      "srac-4502",
      "common-practice",
      "assumption",
    ],
    assumptions: [
      ...(situation.oxygen === undefined ? [`oxygen stays near ${DEFAULT_OXYGEN} mg/L`] : []),
      ...(situation.alkalinity === undefined ? ["alkalinity is kept up"] : []),
      ...(ammonia.kind === "dosed" && ammonia.isRepeated
        ? [
            `dosed again when ammonia is under ${AGAIN_BELOW} and nitrite under ${WAITS_ABOVE_NITRITE} mg/L nitrogen`,
          ]
        : []),
      "the bacteria sit on surfaces: water changes do not take them out",
      "readings are taken before the dose or water change of their day",
      "nitrate readings are not used: many kits read nitrite as nitrate",
      `ready as habit has it (common practice, no source): under ${PASS_BELOW_MG_PER_L} mg/L within a day, twice`,
    ],
    cautions: cyclingCautions(situation, value, members, days),
    driver: readyDriver(members, beliefs, days),
  };
}

/** The model acts once a day; what happened at noon counts for the nearer morning. */
function onWholeDays<T extends { readonly day: number }>(events: readonly T[]): readonly T[] {
  return events.map((event) => ({ ...event, day: Math.round(event.day) }));
}

function planOf(situation: CyclingSituation, days: number): CyclingPlan {
  const { ammonia } = situation;
  const shared = {
    days,
    pointsPerDay: 1,
    againBelow: AGAIN_BELOW,
    waitsAboveNitrite: WAITS_ABOVE_NITRITE,
    waterChanges: onWholeDays(situation.waterChanges ?? []),
    sourceAlkalinity: situation.alkalinity?.best ?? 2.5,
    passBelow: PASS_BELOW_MG_PER_L,
  };
  if (ammonia.kind === "animals") {
    return {
      ...shared,
      loggedDoses: [],
      handUntilDay: -1,
      proof: (ammonia.load.best * 1000) / situation.volumeL.best,
    };
  }
  return {
    ...shared,
    ...(ammonia.isRepeated ? { doseTo: ammonia.to.best } : {}),
    loggedDoses: onWholeDays(ammonia.given ?? []),
    // Doses written down are all there were, up to the last thing written down.
    handUntilDay:
      ammonia.given === undefined
        ? -1
        : Math.max(
            -1,
            ...ammonia.given.map((dose) => dose.day),
            ...(situation.readings ?? []).map((r) => r.day),
          ),
    proof: ammonia.to.best,
  };
}

function outlookFrom(
  members: readonly Member[],
  beliefs: readonly Belief[],
  plan: CyclingPlan,
  readings: readonly CyclingReading[],
): CyclingOutlook {
  const weights = members.map((member) => member.weight);
  const over = (figure: (member: Member) => number) => weightedEstimate(members.map(figure), weights);
  const fittedTo = (index: number) => {
    const belief = beliefs[index];
    if (belief === undefined) throw new Error(`no belief ${index}`);
    return over((member) => believedAt(belief, member.place[index] as number));
  };
  const peakDay = ({ run }: Member) => run.nitrite.indexOf(Math.max(...run.nitrite));
  return {
    curve: Array.from({ length: plan.days + 1 }, (_, day) => ({
      day,
      ammonia: over(({ run }) => run.tan[day] as number),
      nitrite: over(({ run }) => run.nitrite[day] as number),
      nitrate: over(({ run }) => run.nitrate[day] as number),
    })),
    readyDay: over(({ run }) => run.readyDay),
    readyShare: members.reduce(
      (sum, { run, weight }) => sum + (Number.isFinite(run.readyDay) ? weight : 0),
      0,
    ),
    nitritePeak: over((member) => member.run.nitrite[peakDay(member)] as number),
    nitritePeakDay: over(peakDay),
    proofMgPerL: plan.proof,
    growth: fittedTo(BELIEF.growth),
    seed: fittedTo(BELIEF.seed),
    misfits: readings.filter((reading) => {
      const chance = members.reduce(
        (sum, { run, weight }) => sum + weight * chanceOf(run, reading, plan.doseTo ?? plan.proof),
        0,
      );
      return chance < MISFIT_CHANCE;
    }),
  };
}

/** Chance under which a reading counts as not agreeing with any course. Source: assumption. */
const MISFIT_CHANCE = 0.05;

/** Which uncertain figure goes most with the day of being ready. */
function readyDriver(
  members: readonly Member[],
  beliefs: readonly Belief[],
  days: number,
): Driver | undefined {
  const shares = beliefs.map((_, figure) => {
    const ready = (member: Member) => Math.min(member.run.readyDay, days + 1);
    const mean = (of: (member: Member) => number) =>
      members.reduce((sum, member) => sum + member.weight * of(member), 0);
    const place = (member: Member) => member.place[figure] as number;
    const [meanPlace, meanReady] = [mean(place), mean(ready)];
    const covariance = mean((m) => (place(m) - meanPlace) * (ready(m) - meanReady));
    const variance = mean((m) => (place(m) - meanPlace) ** 2);
    const belief = beliefs[figure];
    const isKnown = belief !== undefined && belief.figure.low === belief.figure.high;
    return isKnown || variance === 0 ? 0 : covariance ** 2 / variance;
  });
  const total = shares.reduce((sum, share) => sum + share, 0);
  const widest = shares.indexOf(Math.max(...shares));
  const input = beliefs[widest]?.name;
  if (input === undefined || total === 0) return undefined;
  return { input, share: (shares[widest] ?? 0) / total };
}
