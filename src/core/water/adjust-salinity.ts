import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type Kilograms, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, type Caution, type Constant, caution, type NoAnswer, noAnswer } from "../result.ts";
import { adjustmentWorking } from "./adjust-salinity-working.ts";
import { DENSITY_FITTED } from "./density.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import { liftingCautions } from "./handling.ts";
import { amountsFor, type Change, type Route } from "./salinity-amounts.ts";
import { type Pace, paceCautions, paceOf, USUAL_DAILY_FALL, USUAL_DAILY_RISE } from "./salinity-pace.ts";
import { absoluteSalinity } from "./salinity-scales.ts";
import { UNKNOWN_YIELD, YIELD_LIMITS, type YieldFactor } from "./salt-product.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE, VOLUME } from "./usable.ts";

/** What the member has at hand. */
export type Means =
  /** A mix, dissolved in tank water taken out and poured back. */
  | { readonly kind: "dry salt"; readonly yieldFactor?: Estimate<YieldFactor> | undefined }
  /** Stronger or weaker salt water poured in, nothing taken out. */
  | { readonly kind: "brine"; readonly salinity: Estimate<PracticalSalinity> }
  /** Tank water taken out, as many litres of other water put in. */
  | { readonly kind: "exchange"; readonly salinity: Estimate<PracticalSalinity> }
  /** Fresh water poured in, nothing taken out. */
  | { readonly kind: "fresh water" };

export interface AdjustSalinityInput {
  readonly volume: Estimate<Litres>;
  readonly now: Estimate<PracticalSalinity>;
  readonly target: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
  readonly means: Means;
  /** The most that salinity may move in a day; a rise of 1 or a fall of 2 when absent. */
  readonly dailyCap?: PracticalSalinity | undefined;
}

/** One day of a slow change, best figures. */
export interface AdjustmentDay {
  readonly day: number;
  readonly from: PracticalSalinity;
  readonly to: PracticalSalinity;
  readonly addL: Litres;
  readonly removeL: Litres;
  readonly saltKg: Kilograms;
}

export interface SalinityAdjustment {
  /** Of other water, when all is done at once. */
  readonly addL: Estimate<Litres>;
  readonly removeL: Estimate<Litres>;
  /** Of the product as bought; none unless dry salt is used. */
  readonly saltKg: Estimate<Kilograms>;
  readonly resultingVolumeL: Estimate<Litres>;
  readonly change: Estimate<PracticalSalinity>;
  readonly pace: Pace;
  /** Day by day. An exchange in steps takes a little more water than one at once: some new water leaves again. */
  readonly schedule: readonly AdjustmentDay[];
}

const DAILY_CAP = { unit: "ppt per day", min: 0.05, max: 100 };
/** More than this share of the water in one exchange is much at once. Source: common-practice. */
const LARGE_CHANGE = 0.5;
/** Salt in a litre of the tank water taken out to dissolve it, g. Source: common-practice. */
const DISSOLVE_G_PER_L = 50;

/** What it takes to raise or lower the salinity of a running system. */
export function adjustSalinity(input: AdjustSalinityInput): Answer<SalinityAdjustment> | NoAnswer {
  const { means } = input;
  const route = ROUTE[means.kind];
  const added = "salinity" in means ? means.salinity : exactly(as<PracticalSalinity>(0));
  const yieldGiven = (means.kind === "dry salt" ? means.yieldFactor : undefined) ?? UNKNOWN_YIELD;
  const unusable = firstNotCredible([
    ["volume", input.volume, VOLUME],
    ["salinity now", input.now, SALINITY],
    ["target salinity", input.target, SALINITY],
    ["temperature", input.temperature, TEMPERATURE],
    ["salinity of the added water", added, SALINITY],
    ["yield factor", yieldGiven, YIELD_LIMITS],
    ["daily limit", exactly(input.dailyCap ?? USUAL_DAILY_RISE), DAILY_CAP],
  ]);
  if (unusable !== undefined) return unusable;
  const yieldFactor = cut(yieldGiven, YIELD_LIMITS);
  const impossible = whyImpossible(route, input.now.best, input.target.best, added.best, yieldFactor);
  if (impossible !== undefined) return impossible;

  const isRise = input.target.best >= input.now.best;
  const { estimates, drivers } = propagate(
    {
      volume: cut(input.volume, VOLUME),
      "salinity now": cut(input.now, SALINITY),
      "target salinity": cut(input.target, SALINITY),
      temperature: cut(input.temperature, TEMPERATURE),
      "salinity of the added water": cut(added, SALINITY),
      "yield factor": yieldFactor,
    },
    (v) => {
      const from = v["salinity now"];
      const target = v["target salinity"];
      // A range may reach past the other figure: there, nothing is left to do.
      const to = as<PracticalSalinity>(isRise ? Math.max(from, target) : Math.min(from, target));
      const amounts = orNotKnown(route, {
        volumeL: v.volume,
        from,
        to,
        temperatureC: v.temperature,
        added: v["salinity of the added water"],
        yieldFactor: v["yield factor"],
      });
      return { ...amounts, change: as<PracticalSalinity>(target - from) };
    },
  );
  const pace = paceOf(input.target.best - input.now.best, input.dailyCap);

  return {
    kind: "answer",
    value: {
      ...keptPossible(estimates, ["change"]),
      pace,
      schedule: scheduleOf(route, input, added.best, yieldFactor.best, pace),
    },
    method: METHOD[means.kind],
    working: adjustmentWorking(route, input, added.best, yieldFactor.best, estimates),
    constants: [
      DENSITY_EQUATION,
      ...(route === "dry salt" ? [SALT_PER_SALINITY, yieldConstant(means, yieldFactor)] : []),
      {
        name: "usual daily limit with animals",
        value: `${USUAL_DAILY_RISE} ppt rising, ${USUAL_DAILY_FALL} ppt falling`,
        source: "common-practice",
      },
    ],
    sources: [
      "mass-balance",
      "millero-poisson-1981",
      ...(route === "dry salt" ? (["millero-2008", "salt-hydrate-bounds"] as const) : []),
      "common-practice",
      "jcgm-100-2008",
    ],
    assumptions: [
      "tank and added water are at the temperature given",
      "the volume is the water in the system, without rock and sand",
      "everything is mixed before the next reading",
    ],
    cautions: cautionsFor(input, route, estimates, pace, yieldFactor),
    driver: route === "dry salt" ? drivers.saltKg : drivers.addL,
  };
}

const ROUTE: Record<Means["kind"], Route> = {
  "dry salt": "dry salt",
  brine: "pour in",
  exchange: "exchange",
  "fresh water": "pour in",
};

const METHOD: Record<Means["kind"], string> = {
  "dry salt": "Balance of salt and of mass: salt is added, nothing is taken out.",
  brine: "Balance of salt and of mass: other salt water is added, nothing is taken out.",
  exchange: "Balance of salt and of mass: equal volumes are taken out and put in.",
  "fresh water": "Balance of salt and of mass: fresh water is added, nothing is taken out.",
};

function whyImpossible(
  route: Route,
  now: PracticalSalinity,
  target: PracticalSalinity,
  added: PracticalSalinity,
  yieldFactor: Estimate<YieldFactor>,
): NoAnswer | undefined {
  if (now === target) return undefined;
  if (route === "dry salt") {
    if (target < now) return noAnswer("salt-cannot-lower", { now, target });
    if (absoluteSalinity(target) >= 1000 * yieldFactor.low) {
      return noAnswer("product-too-weak", { yieldFactor: yieldFactor.low, target });
    }
    return undefined;
  }
  const isBetween = (target - now) * (added - target) > 0;
  const isWholeExchange = route === "exchange" && target === added;
  return isBetween || isWholeExchange
    ? undefined
    : noAnswer("target-not-between-waters", { now, target, added });
}

/** The amounts, or no figure at an end of a range that the route cannot reach: there the range is not widened. */
function orNotKnown(route: Route, change: Change) {
  const isReachable =
    whyImpossible(route, change.from, change.to, change.added, exactly(change.yieldFactor)) === undefined;
  if (isReachable) return { ...amountsFor(route, change) };
  const unknown = Number.NaN;
  return {
    addL: as<Litres>(unknown),
    removeL: as<Litres>(unknown),
    saltKg: as<Kilograms>(unknown),
    resultingVolumeL: as<Litres>(unknown),
  };
}

function scheduleOf(
  route: Route,
  input: AdjustSalinityInput,
  added: PracticalSalinity,
  yieldFactor: YieldFactor,
  pace: Pace,
): readonly AdjustmentDay[] {
  const days: AdjustmentDay[] = [];
  let volumeL = input.volume.best;
  let from = input.now.best;
  for (let day = 1; day <= pace.days; day++) {
    const isLast = day === pace.days;
    const to = isLast ? input.target.best : as<PracticalSalinity>(input.now.best + day * pace.stepPerDay);
    const temperatureC = input.temperature.best;
    const amounts = amountsFor(route, { volumeL, from, to, temperatureC, added, yieldFactor });
    days.push({ day, from, to, addL: amounts.addL, removeL: amounts.removeL, saltKg: amounts.saltKg });
    volumeL = amounts.resultingVolumeL;
    from = to;
  }
  return days;
}

function yieldConstant(means: Means, yieldFactor: Estimate<YieldFactor>): Constant {
  const isGiven = means.kind === "dry salt" && means.yieldFactor !== undefined;
  return {
    name: isGiven ? "yield factor, as you gave it" : "yield factor, not measured",
    value: `${figure(yieldFactor.best)} g salt per g product (${figure(yieldFactor.low)}–${figure(yieldFactor.high)})`,
    source: isGiven ? "assumption" : "salt-hydrate-bounds",
  };
}

function cautionsFor(
  input: AdjustSalinityInput,
  route: Route,
  amounts: Pick<SalinityAdjustment, "saltKg" | "addL" | "resultingVolumeL">,
  pace: Pace,
  yieldFactor: Estimate<YieldFactor>,
): readonly Caution[] {
  const { means, volume, now, target, temperature } = input;
  const fitted = [
    ...fittedRange("salinity now", now, "ppt", DENSITY_FITTED.salinity),
    ...fittedRange("target salinity", target, "ppt", DENSITY_FITTED.salinity),
    ...("salinity" in means
      ? fittedRange("salinity of the added water", means.salinity, "ppt", DENSITY_FITTED.salinity)
      : []),
    ...fittedRange("temperature", temperature, "°C", DENSITY_FITTED.temperatureC),
  ];
  if (now.best === target.best) return fitted;
  const isYieldUnknown = means.kind === "dry salt" && means.yieldFactor === undefined;
  const error = Math.max(now.high - now.best, now.best - now.low);
  const change = Math.abs(target.best - now.best);
  const rise = amounts.resultingVolumeL.best - volume.best;
  return [
    ...paceCautions(target.best - now.best, pace),
    ...(change <= error ? [caution("change-within-error", { change, error }, "note")] : []),
    ...(isYieldUnknown
      ? [
          caution("yield-unknown", {
            low: yieldFactor.low,
            high: yieldFactor.high,
            saltLowKg: amounts.saltKg.low,
            saltHighKg: amounts.saltKg.high,
          }),
        ]
      : []),
    ...(route === "dry salt"
      ? [
          caution(
            "dissolve-before-adding",
            { litres: Math.min((amounts.saltKg.best * 1000) / DISSOLVE_G_PER_L, volume.best / 2) },
            "danger",
          ),
          ...liftingCautions("the salt", amounts.saltKg.high),
        ]
      : []),
    ...(route === "exchange" ? [caution("unplug-before-draining", {}, "danger")] : []),
    ...(route === "exchange" && amounts.addL.best > LARGE_CHANGE * volume.best
      ? [caution("large-change", { percent: (100 * amounts.addL.best) / volume.best })]
      : []),
    ...(route === "pour in" ? [caution("level-rises", { litres: rise })] : []),
    ...(means.kind === "fresh water" || ("salinity" in means && means.salinity.best === 0)
      ? [caution("fresh-water-quality", {})]
      : []),
    caution("measure-again", {}, "note"),
    ...fitted,
  ];
}
