import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Days, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { LEVEL, largeChangeCautions } from "./change-size.ts";
import type { Level } from "./dilution.ts";
import { figure } from "./figure.ts";
import { cut, firstNotCredible, keptPossible, VOLUME } from "./usable.ts";
import type { LevelPerDay } from "./water-change-steady-state.ts";

export interface HoldInput {
  readonly volume: Estimate<Litres>;
  readonly everyDays: Estimate<Days>;
  /** In the new water. */
  readonly source: Estimate<Level>;
  readonly risePerDay: Estimate<LevelPerDay>;
  /** The value that is not to be passed, just before a change. */
  readonly ceiling: Estimate<Level>;
  readonly unit: string;
}

export interface HoldPlan {
  readonly fraction: Estimate<Fraction>;
  readonly litres: Estimate<Litres>;
  /** Lowest point of the routine, just after a change. */
  readonly after: Estimate<Level>;
}

const EVERY_DAYS = { unit: "days", min: 0.01, max: 365 };
const RISE = { unit: "per day", min: 0, max: 1e5 };

/** How much to change each time so that a value never climbs past a ceiling. */
export function waterChangeToHold(input: HoldInput): Answer<HoldPlan> | NoAnswer {
  const { volume, everyDays, source, risePerDay, ceiling, unit } = input;
  const unusable = firstNotCredible([
    ["volume", volume, VOLUME],
    ["days between changes", everyDays, EVERY_DAYS],
    ["value of the new water", source, { ...LEVEL, unit }],
    ["rise per day", risePerDay, { ...RISE, unit: `${unit} per day` }],
    ["ceiling", ceiling, { ...LEVEL, unit }],
  ]);
  if (unusable !== undefined) return unusable;
  if (ceiling.best <= source.best) {
    return noAnswer("source-too-strong", { ceiling: ceiling.best, source: source.best, unit });
  }
  const rise = risePerDay.best * everyDays.best;
  if (rise > ceiling.best - source.best) {
    return noAnswer("no-fraction-is-enough", { ceiling: ceiling.best, rise, unit });
  }

  const { estimates, drivers } = propagate(
    {
      volume: cut(volume, VOLUME),
      "days between changes": cut(everyDays, EVERY_DAYS),
      "value of the new water": cut(source, LEVEL),
      "rise per day": cut(risePerDay, RISE),
      ceiling: cut(ceiling, LEVEL),
    },
    (v) => {
      const between = v["rise per day"] * v["days between changes"];
      const room = v.ceiling - v["value of the new water"];
      // At an end of a range even all of the water may not be enough: all is then the figure.
      const fraction = room > 0 ? Math.min(1, between / room) : 1;
      return {
        fraction: as<Fraction>(fraction),
        litres: as<Litres>(fraction * v.volume),
        after: as<Level>(Math.max(0, v.ceiling - between)),
      };
    },
  );
  return {
    kind: "answer",
    value: keptPossible(estimates, [], ["fraction"]),
    method: "Balance between two changes: each takes out what the tank adds in between.",
    working: [
      `rise between changes = ${figure(risePerDay.best)} ${unit} per day × ${figure(everyDays.best)} days = ${figure(rise)} ${unit}`,
      `share to change = rise ÷ (ceiling − new water) = ${figure(rise)} ÷ (${figure(ceiling.best)} − ${figure(source.best)}) = ${figure(estimates.fraction.best)}`,
      `litres each time = ${figure(estimates.fraction.best)} × ${figure(volume.best)} L = ${figure(estimates.litres.best)} L`,
    ],
    constants: [],
    sources: ["mass-balance", "jcgm-100-2008"],
    assumptions: [
      "the tank adds the same amount every day, whatever the value is",
      "the value is at or below the ceiling to begin with",
      "nothing else takes it out: no algae, no media, no dosing",
    ],
    cautions: [
      ...largeChangeCautions(estimates.fraction.best),
      caution("unplug-before-draining", {}, "danger"),
      caution("measure-again", {}, "note"),
    ],
    driver: drivers.litres,
  };
}
