import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type MgPerL, type PH, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { type AmmoniaState, LEVELS, nh3Share, type PhScale, pkaFor, stateAt } from "./ammonia-levels.ts";
import { ammoniaCautions } from "./ammonia-remarks.ts";
import { asNitrogen, fromNitrogen, type MgNPerL } from "./nitrogen-units.ts";
import { allNotBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";

export type { AmmoniaState, PhScale } from "./ammonia-levels.ts";

/** What a kit for total ammonia prints its figure as. */
export type AmmoniaForm = "TAN" | "NH3" | "NH4" | "NH3-N" | "NH4-N";
export interface AmmoniaSituation {
  /** Total ammonia as read, mg/L in the form named. */
  readonly reading: Estimate;
  readonly form: AmmoniaForm | "not said";
  readonly pH: Estimate<PH>;
  readonly scale: PhScale;
  readonly temperatureC: Estimate<DegreesC>;
  readonly salinity: Estimate<PracticalSalinity>;
  /** Where to get to, mg/L as NH₃; default the criterion for lasting exposure. */
  readonly limitNh3?: MgPerL;
  /** The water to change with. */
  readonly source?: { readonly tan: Estimate<MgNPerL>; readonly pH?: Estimate<PH> };
  /** An ammonia binder was used within the last two days. */
  readonly binderUsed?: boolean;
}

/** A level of NH₃ that someone has set, and the total ammonia that reaches it here. */
export interface AmmoniaLevel {
  readonly name: string;
  /** As NH₃. */
  readonly nh3MgPerL: number;
  /** Total ammonia nitrogen at which this water reaches it. */
  readonly tan: Estimate;
  /** The reading against the level: above 1 is over it. */
  readonly times: Estimate;
  readonly source: SourceId;
}

export interface UnionisedAmmonia {
  readonly tan: Estimate;
  readonly nh3Share: Estimate;
  /** As NH₃, the whole molecule; limits are mostly given so. */
  readonly nh3MgPerL: Estimate;
  readonly nh3NMgPerL: Estimate;
  readonly state: AmmoniaState;
  /** The state at the high end of the range. */
  readonly stateAtWorst: AmmoniaState;
  readonly levels: readonly AmmoniaLevel[];
  readonly limitNh3: number;
  /** What brings it under the limit; absent when it is there already. */
  readonly remedy?: {
    /** Share of water to change; absent when no change of this water gets there. */
    readonly waterChange?: Estimate;
    /** Share of the present food at which ammonia would settle at the limit, in days and not at once. */
    readonly foodShare: Estimate;
  };
}

/** Doubt of the pKa and of what a pH meter really reads in sea water. Source: assumption, ±10 %. */
const MODEL_DOUBT: Estimate = { best: 1, low: 0.9, high: 1.1 };
const CHANGE_STEPS = 400;

/** How much of the ammonia read is the harmful form, how that compares, and what brings it down. */
export function unionisedAmmonia(given: AmmoniaSituation): Answer<UnionisedAmmonia> | NoAnswer {
  const { form } = given;
  if (form === "not said") return noAnswer("ammonia-form-not-said", { value: rounded(given.reading.best) });
  const refusal = figureRefusal([
    ["ammonia reading", given.reading, "mg/L", 0, 100],
    ["pH", given.pH, "", 5.5, 10],
    ["temperature", given.temperatureC, "°C", 0, 40],
    ["salinity", given.salinity, "", 0, 45],
    ["limit", given.limitNh3, "mg/L NH₃", 0.001, 2],
    ["ammonia of the new water", given.source?.tan, "mg/L N", 0, 100],
    ["pH of the new water", given.source?.pH, "", 5.5, 10],
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const limit = given.limitNh3 ?? as<MgPerL>(LEVELS.continuous.nh3);
  const sourcePh = given.source?.pH;
  const inputs = {
    "ammonia reading": given.reading,
    pH: given.pH,
    temperature: given.temperatureC,
    salinity: given.salinity,
    "pH scale and model": MODEL_DOUBT,
    "ammonia of the new water": given.source?.tan ?? exactly(as<MgNPerL>(0)),
    "pH of the new water": sourcePh ?? exactly(given.pH.best),
  };
  const { estimates, drivers } = propagate(inputs, (v) => {
    const shareAt = (pH: number) =>
      nh3Share(as<PH>(pH), given.scale, v.temperature, v.salinity) * v["pH scale and model"];
    const tan = asNitrogen(v["ammonia reading"], form);
    const ammoniaShare = shareAt(v.pH);
    const nh3N = as<MgNPerL>(tan * ammoniaShare);
    const nh3 = fromNitrogen(nh3N, "NH3");
    const tanAt = (level: number) => asNitrogen(level, "NH3") / ammoniaShare;
    // With no pH named the new water has the tank's, doubts and all.
    const newPh = sourcePh === undefined ? v.pH : v["pH of the new water"];
    return {
      tan: tan as number,
      nh3Share: ammoniaShare,
      nh3N: nh3N as number,
      nh3,
      tanAtTarget: tanAt(LEVELS.target.nh3),
      tanAtContinuous: tanAt(LEVELS.continuous.nh3),
      tanAtHarm: tanAt(LEVELS.harm.nh3),
      tanAtMaximum: tanAt(LEVELS.maximum.nh3),
      timesTarget: nh3 / LEVELS.target.nh3,
      timesContinuous: nh3 / LEVELS.continuous.nh3,
      timesHarm: nh3 / LEVELS.harm.nh3,
      timesMaximum: nh3 / LEVELS.maximum.nh3,
      change: changeNeeded((share) => {
        const mixed = (1 - share) * tan + share * v["ammonia of the new water"];
        return fromNitrogen(as<MgNPerL>(mixed * shareAt((1 - share) * v.pH + share * newPh)), "NH3") <= limit;
      }),
      foodShare: nh3 > 0 ? Math.min(1, limit / nh3) : 1,
    };
  });
  const e = allNotBelowZero(estimates);
  const levels: AmmoniaLevel[] = [
    { ...LEVELS.target, nh3MgPerL: LEVELS.target.nh3, tan: e.tanAtTarget, times: e.timesTarget },
    {
      ...LEVELS.continuous,
      nh3MgPerL: LEVELS.continuous.nh3,
      tan: e.tanAtContinuous,
      times: e.timesContinuous,
    },
    { ...LEVELS.harm, nh3MgPerL: LEVELS.harm.nh3, tan: e.tanAtHarm, times: e.timesHarm },
    { ...LEVELS.maximum, nh3MgPerL: LEVELS.maximum.nh3, tan: e.tanAtMaximum, times: e.timesMaximum },
  ].map(({ name, nh3MgPerL, tan, times, source }) => ({ name, nh3MgPerL, tan, times, source }));
  const isOver = e.nh3.best > limit;
  const canReach = e.change.best <= 1;
  const value: UnionisedAmmonia = {
    tan: e.tan,
    nh3Share: e.nh3Share,
    nh3MgPerL: e.nh3,
    nh3NMgPerL: e.nh3N,
    state: stateAt(e.nh3.best),
    stateAtWorst: stateAt(e.nh3.high),
    levels,
    limitNh3: limit,
    ...(isOver
      ? {
          remedy: {
            ...(canReach
              ? {
                  waterChange: {
                    ...e.change,

                    high: Math.min(1, e.change.high),
                  },
                }
              : {}),
            foodShare: {
              ...e.foodShare,

              high: Math.min(1, e.foodShare.high),
            },
          },
        }
      : {}),
  };
  return {
    kind: "answer",
    value,
    method:
      given.scale === "total"
        ? "total-scale ammonium equilibrium of sea water"
        : "ammonium equilibrium of sea water for a pH meter set with ordinary buffers",
    working: [
      `ammonia nitrogen = reading ÷ mass of the form per nitrogen = ${rounded(e.tan.best)} mg/L`,
      `share as NH₃ = 1 ÷ (1 + 10^(pKa − pH)) = ${rounded(e.nh3Share.best * 100)} %`,
      `NH₃ = ammonia nitrogen × share × 1.216 = ${rounded(e.nh3.best)} mg/L`,
      ...(isOver && canReach
        ? [
            `after a change of share f: ((1 − f) × tank + f × new water) × share at the mixed pH = ${limit} mg/L NH₃`,
          ]
        : []),
    ],
    constants: [
      {
        name: "pKa of ammonium at these figures",
        value: rounded(pkaFor(given.scale, given.temperatureC.best, given.salinity.best), 4).toString(),
        source: given.scale === "total" ? "clegg-whitfield-1995" : "khoo-1977",
      },
      { name: "mass of NH₃ per nitrogen", value: "1.2159", source: "standard-atomic-weights" },
      ...levels.map((level) => ({
        name: level.name,
        value: `${rounded(level.nh3MgPerL)} mg/L as NH₃`,
        source: level.source,
      })),
    ],
    sources: [
      ...(given.scale === "total"
        ? (["clegg-whitfield-1995"] as const)
        : (["khoo-1977", "emerson-1975"] as const)),
      "ut-recirculation-notes",
      "epa-440-5-88-004",
      "ifas-fa16",
    ],
    assumptions: [
      "the kit reads all ammonia, bound to a proton or not",
      ...(given.source === undefined ? ["the new water has no ammonia and the tank's pH"] : []),
      ...(given.source !== undefined && sourcePh === undefined ? ["the new water has the tank's pH"] : []),
      ...(sourcePh === undefined ? [] : ["pH mixes in proportion, as in waters of like alkalinity"]),
      "the food share holds once ammonia has settled, with the filter as it is",
    ],
    cautions: ammoniaCautions(given, value),
    driver: drivers.nh3,
  };
}

/** Smallest share of water that meets the condition, or 2 when none does (over 1: not possible). */
function changeNeeded(meets: (share: number) => boolean): number {
  for (let step = 0; step <= CHANGE_STEPS; step += 1) {
    if (!meets(step / CHANGE_STEPS)) continue;
    if (step === 0) return 0;
    let [low, high] = [(step - 1) / CHANGE_STEPS, step / CHANGE_STEPS];
    for (let halving = 0; halving < 20; halving += 1) {
      const middle = (low + high) / 2;
      if (meets(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return 2;
}
