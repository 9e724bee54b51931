import {
  type Accuracy,
  type CyclingParameters,
  cyclingModel,
  greatestGrowth,
  NITRIFIERS,
  PLACE,
} from "./cycling-model.ts";

/** What is done to the water while it cycles. Days count from the first ammonia. */
export interface CyclingPlan {
  readonly days: number;
  /** Points of the curve per day; what is done is done at whole days. */
  readonly pointsPerDay: number;
  /** Ammonia nitrogen to which the water is dosed again when it has fallen under `againBelow`; undefined: never. */
  readonly doseTo?: number;
  readonly againBelow: number;
  /** Nitrite at which dosing waits, mg/L nitrogen. */
  readonly waitsAboveNitrite: number;
  /** Doses really given, as a rise in mg/L nitrogen. */
  readonly loggedDoses: readonly { readonly day: number; readonly rise: number }[];
  /** Up to this day only the doses given count; after it the water is dosed again as described. */
  readonly handUntilDay: number;
  readonly waterChanges: readonly { readonly day: number; readonly changed: number }[];
  /** Alkalinity of the new water, meq/L. */
  readonly sourceAlkalinity: number;
  /** Ammonia nitrogen that must be gone, with its nitrite, within a day, twice. */
  readonly proof: number;
  readonly passBelow: number;
}

/** One run: curves at the plan's points (at whole days before anything is done), and what was put in and taken out. */
export interface CyclingRun {
  readonly tan: Float64Array;
  readonly nitrite: Float64Array;
  readonly nitrate: Float64Array;
  readonly leastAlkalinity: number;
  /** End of the second day of proof; infinite when not reached. */
  readonly readyDay: number;
  /** First day on which the model, not the member, dosed again; infinite when it never did. */
  readonly firstModelDose: number;
  readonly state: Float64Array;
  /** Nitrogen added and taken out with water, mg/L. */
  readonly added: number;
  readonly removed: number;
}

/** Follows one run of the model through the plan, to the end of its days. */
export function runCycle(
  parameters: CyclingParameters,
  start: Float64Array,
  plan: CyclingPlan,
  accuracy?: Accuracy,
): CyclingRun {
  const advance = cyclingModel(parameters, accuracy);
  const prove = cyclingModel({ ...parameters, loadMgNPerLDay: 0 }, accuracy);
  const state = start.slice();
  const proof = start.slice();
  const points = plan.days * plan.pointsPerDay + 1;
  const tan = new Float64Array(points);
  const nitrite = new Float64Array(points);
  const nitrate = new Float64Array(points);
  let added = 0;
  let removed = 0;
  let readyDay = Number.POSITIVE_INFINITY;
  let leastAlkalinity = state[PLACE.alkalinity] as number;

  let firstModelDose = Number.POSITIVE_INFINITY;

  const growth = {
    ammonia: greatestGrowth(parameters, "ammonia"),
    nitrite: greatestGrowth(parameters, "nitrite"),
  };
  const isFar = (group: "ammonia" | "nitrite", cells: number) =>
    // Even growing all day at full speed they could not take the proof up.
    (cells * growth[group] * Math.exp(growth[group])) / NITRIFIERS[group].yield < plan.proof;
  const passes = (from: Float64Array): boolean => {
    if (isFar("ammonia", from[PLACE.ammoniaCells] as number)) return false;
    if (isFar("nitrite", from[PLACE.nitriteCells] as number)) return false;
    proof.set(from);
    proof[PLACE.ammonium] = plan.proof;
    proof[PLACE.nitrite] = 0;
    for (let day = 0; day < 2; day += 1) {
      prove(proof, 1);
      if ((proof[PLACE.ammonium] as number) >= plan.passBelow) return false;
      if ((proof[PLACE.nitrite] as number) >= plan.passBelow) return false;
      proof[PLACE.ammonium] = (proof[PLACE.ammonium] as number) + plan.proof;
    }
    return true;
  };

  const record = (point: number) => {
    tan[point] = Math.max(0, state[PLACE.ammonium] as number);
    nitrite[point] = Math.max(0, state[PLACE.nitrite] as number);
    nitrate[point] = Math.max(0, state[PLACE.nitrate] as number);
  };

  for (let day = 0; day < plan.days; day += 1) {
    record(day * plan.pointsPerDay);
    for (const change of plan.waterChanges) {
      if (change.day !== day) continue;
      for (const place of [PLACE.ammonium, PLACE.nitrite, PLACE.nitrate]) {
        const out = change.changed * (state[place] as number);
        state[place] = (state[place] as number) - out;
        removed += out;
      }
      state[PLACE.alkalinity] =
        (1 - change.changed) * (state[PLACE.alkalinity] as number) + change.changed * plan.sourceAlkalinity;
    }
    for (const dose of plan.loggedDoses) {
      if (dose.day !== day) continue;
      state[PLACE.ammonium] = (state[PLACE.ammonium] as number) + dose.rise;
      added += dose.rise;
    }
    if (readyDay === Number.POSITIVE_INFINITY) {
      // Nobody starts a trial on top of what is still standing; animals keep a little standing always.
      const waits =
        plan.doseTo !== undefined &&
        ((state[PLACE.ammonium] as number) > plan.againBelow ||
          (state[PLACE.nitrite] as number) > plan.againBelow);
      if (!waits && passes(state)) readyDay = day + 2;
    }
    const isDosing = plan.doseTo !== undefined && day > plan.handUntilDay && day > 0 && readyDay > day;
    const isGone =
      (state[PLACE.ammonium] as number) < plan.againBelow &&
      (state[PLACE.nitrite] as number) < plan.waitsAboveNitrite;
    if (isDosing && isGone) {
      const rise = (plan.doseTo ?? 0) - (state[PLACE.ammonium] as number);
      state[PLACE.ammonium] = (state[PLACE.ammonium] as number) + rise;
      added += rise;
      firstModelDose = Math.min(firstModelDose, day);
    }
    for (let step = 1; step <= plan.pointsPerDay; step += 1) {
      advance(state, 1 / plan.pointsPerDay);
      record(day * plan.pointsPerDay + step);
    }
    added += parameters.loadMgNPerLDay;
    leastAlkalinity = Math.min(leastAlkalinity, state[PLACE.alkalinity] as number);
  }
  return { tan, nitrite, nitrate, leastAlkalinity, readyDay, firstModelDose, state, added, removed };
}

/** First time, in days, at which a curve passes below a level, after point `from`; infinite when it never does. */
export function firstBelow(curve: Float64Array, level: number, pointsPerDay: number, from = 0): number {
  for (let point = Math.max(1, from + 1); point < curve.length; point += 1) {
    const before = curve[point - 1] as number;
    const now = curve[point] as number;
    if (before >= level && now < level) return (point - 1 + (before - level) / (before - now)) / pointsPerDay;
  }
  return Number.POSITIVE_INFINITY;
}
