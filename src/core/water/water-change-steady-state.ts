import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type Fraction,
  type Litres,
  type LitresPerDay,
  type Quantity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import {
  type ChangeSize,
  checkedSize,
  LEVEL,
  largeChangeCautions,
  SHARE,
  shareOf,
  sizeEstimate,
} from "./change-size.ts";
import { type Level, levelBeforeChange, steadyAfter, steadyBefore } from "./dilution.ts";
import { figure } from "./figure.ts";
import { cut, firstNotCredible, keptPossible, VOLUME } from "./usable.ts";

/** What the tank adds to its own water in a day, in the member's unit. */
export type LevelPerDay = Quantity<string>;

export interface RoutineInput {
  readonly volume: Estimate<Litres>;
  readonly each: ChangeSize;
  readonly everyDays: Estimate<Days>;
  /** In the new water. */
  readonly source: Estimate<Level>;
  /** Below zero when the tank uses it up. */
  readonly risePerDay: Estimate<LevelPerDay>;
  readonly unit: string;
  /** Value right after the last change, to show the way to the steady state. */
  readonly now?: Estimate<Level> | undefined;
}

/** One turn of the routine, best figures. */
export interface RoutineTurn {
  readonly change: number;
  readonly day: Days;
  readonly before: Level;
  readonly after: Level;
}

export interface SteadyState {
  readonly before: Estimate<Level>;
  readonly after: Estimate<Level>;
  /** Over time. */
  readonly mean: Estimate<Level>;
  readonly risePerInterval: Estimate<Level>;
  readonly waterPerDay: Estimate<LitresPerDay>;
  /** Steady value if the same water were exchanged drop by drop. */
  readonly ifContinuous: Estimate<Level>;
  /** Changes until half the way to the steady state is gone; none when all water is changed. */
  readonly changesToHalfway: Estimate<Quantity<"changes">>;
  readonly course: readonly RoutineTurn[];
}

const EVERY_DAYS = { unit: "days", min: 0.01, max: 365 };
const RISE = { unit: "per day", min: -1e5, max: 1e5 };
const CHANGED_SHARE = { ...SHARE, min: 0.001 };
/** Turns shown on the way; by then a change of 30 % is within 1.5 % of the steady state. */
const TURNS_SHOWN = 12;

/** Where a regular routine of water changes comes to rest, before and after each change. */
export function waterChangeSteadyState(input: RoutineInput): Answer<SteadyState> | NoAnswer {
  const { volume, each, everyDays, source, risePerDay, unit, now } = input;
  const amount = sizeEstimate(each);
  const unusable = firstNotCredible([
    ["volume", volume, VOLUME],
    checkedSize(each),
    ["days between changes", everyDays, EVERY_DAYS],
    ["value of the new water", source, { ...LEVEL, unit }],
    ["rise per day", risePerDay, { ...RISE, unit: `${unit} per day` }],
    ["value now", now ?? source, { ...LEVEL, unit }],
  ]);
  if (unusable !== undefined) return unusable;
  if (each.kind === "litres" && amount.best > volume.best) {
    const figures = { what: "the water changed", litres: amount.best, volumeL: volume.best };
    return noAnswer("more-than-there-is", figures);
  }
  const share = shareOf(each.kind, amount.best, volume.best);
  if (share < CHANGED_SHARE.min) {
    return noAnswer("not-credible", { quantity: "share changed", value: share, ...CHANGED_SHARE });
  }

  const { estimates, drivers } = propagate(
    {
      volume: cut(volume, VOLUME),
      "water changed": amount,
      "days between changes": cut(everyDays, EVERY_DAYS),
      "value of the new water": cut(source, LEVEL),
      "rise per day": cut(risePerDay, RISE),
    },
    (v) => {
      const shareHere = shareOf(each.kind, v["water changed"], v.volume);
      const fraction = as<Fraction>(Math.max(CHANGED_SHARE.min, shareHere));
      const rise = as<Level>(v["rise per day"] * v["days between changes"]);
      const routine = { fraction, source: v["value of the new water"], risePerInterval: rise };
      const before = steadyBefore(routine);
      const after = steadyAfter(routine);
      return {
        before,
        after,
        mean: as<Level>((before + after) / 2),
        risePerInterval: rise,
        waterPerDay: as<LitresPerDay>((fraction * v.volume) / v["days between changes"]),
        ifContinuous: before,
        changesToHalfway: as<Quantity<"changes">>(
          fraction === 1 ? 0 : Math.log(0.5) / Math.log(1 - fraction),
        ),
      };
    },
  );
  const lowest = Math.min(estimates.before.best, estimates.after.best);
  if (lowest < 0) return noAnswer("runs-out-between-changes", { before: lowest, unit });
  const rise = estimates.risePerInterval.best;
  const routine = { fraction: share, source: source.best, risePerInterval: rise };

  return {
    kind: "answer",
    value: {
      ...keptPossible(estimates, ["risePerInterval"]),
      course: now === undefined ? [] : courseOf(now.best, routine, everyDays.best),
    },
    method: "Balance between two changes: at rest, a change takes out what the tank adds in between.",
    working: [
      `rise between changes = ${figure(risePerDay.best)} ${unit} per day × ${figure(everyDays.best)} days = ${figure(rise)} ${unit}`,
      `before each change = new water + rise ÷ share changed = ${figure(source.best)} + ${figure(rise)} ÷ ${figure(share)} = ${figure(estimates.before.best)} ${unit}`,
      `after each change = before − rise = ${figure(estimates.after.best)} ${unit}`,
      `before the n-th change = steady before + (1 − share)ⁿ⁻¹ × (start + rise − steady before)`,
      `half the way is gone after ln ½ ÷ ln(1 − share) = ${figure(estimates.changesToHalfway.best)} changes`,
      "exchanged drop by drop, the same water comes to rest at the value before each change",
    ],
    constants: [],
    sources: ["mass-balance", "jcgm-100-2008"],
    assumptions: [
      "the tank adds the same amount every day, whatever the value is",
      "the volume is the water in the system, without rock and sand",
      "nothing else takes it out: no algae, no media, no dosing",
    ],
    cautions: [
      ...largeChangeCautions(share),
      caution("unplug-before-draining", {}, "danger"),
      caution("measure-again", {}, "note"),
    ],
    driver: drivers.before,
  };
}

function courseOf(
  start: Level,
  routine: { readonly fraction: Fraction; readonly source: Level; readonly risePerInterval: Level },
  everyDays: Days,
): readonly RoutineTurn[] {
  return Array.from({ length: TURNS_SHOWN }, (_, index) => {
    const change = index + 1;
    const before = levelBeforeChange(change, start, routine);
    const after = before - routine.fraction * (before - routine.source);
    return { change, day: as<Days>(change * everyDays), before, after: as<Level>(after) };
  });
}
