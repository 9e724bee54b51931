import { type Estimate, mapEstimate, propagate } from "../quantity/estimate.ts";
import { as, type MgPerL } from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import type { CubicMetresPerDay } from "./chamber-oxygen.ts";
import { trainCautions } from "./filter-order.ts";
import {
  type FilterTrain,
  HIGHEST_TAN,
  runThrough,
  setUp,
  type TrainValues,
  trainFigures,
  trainInputs,
} from "./filter-train-sum.ts";
import { OXYGEN_PER_N } from "./nitrification.ts";
import type { MgNPerL } from "./nitrogen-units.ts";
import { notBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";
import { type Box, boxOut, type Carried, type FilmSpeed } from "./train-box.ts";

export type OxygenState = "oxic" | "low" | "anoxic";

export interface BoxResult {
  readonly label: string;
  readonly flow: Estimate;
  readonly residenceMin: Estimate;
  readonly velocityMPerH?: Estimate;
  readonly tanIn: Estimate;
  readonly tanOut: Estimate;
  readonly oxygenIn: Estimate;
  readonly oxygenOut: Estimate;
  readonly nitrifiedGPerDay: Estimate;
  readonly state: OxygenState;
  /** Flow under which this box would fall below 0.5 mg/L with what lives in it; absent: at no flow. */
  readonly anoxicBelowLPerH?: number;
  /** Oxygen it would keep at this flow if every gram the whole system uses were used in it. */
  readonly leastPossibleMgPerL: number;
}

export interface FilterTrainResult {
  /** Ammonia nitrogen where the tank settles; absent when the filter cannot take the load. */
  readonly tankTan?: Estimate;
  readonly saturationMgPerL: Estimate;
  readonly boxes: readonly BoxResult[];
  readonly nitrifiedGPerDay: Estimate;
  /** The film cannot take up the load at any level: ammonia would rise without end. */
  readonly isOverloaded: boolean;
}

/** Limits of the verdict, mg/L. Source: common-practice. */
export const OXIC_ABOVE = 2;
export const ANOXIC_BELOW = 0.5;
/** Largest flow at which a box with this water coming in stays under the anoxic limit. */
function anoxicFlow(box: Box, into: Carried, film: FilmSpeed, saturation: MgPerL): number | undefined {
  const isAnoxic = (flow: number) =>
    boxOut({ ...box, flow: as<CubicMetresPerDay>(flow) }, into, film, saturation).oxygen < ANOXIC_BELOW;
  let low = 1e-5;
  if (!isAnoxic(low)) return undefined;
  let high = 1e5;
  for (let step = 0; step < 60; step += 1) {
    const middle = Math.sqrt(low * high);
    if (isAnoxic(middle)) low = middle;
    else high = middle;
  }
  return (low * 1000) / 24;
}

/** Water, ammonia and oxygen through a filter, box by box, and which boxes can ever run low on oxygen. */
export function filterTrain(train: FilterTrain): Answer<FilterTrainResult> | NoAnswer {
  if (train.boxes.length === 0) return noAnswer("no-filter-boxes", {});
  const refusal = figureRefusal([
    ["flow", train.flow, "L/h", 0.1, 10_000_000],
    ["salinity", train.salinity, "", 0, 45],
    ["temperature", train.temperatureC, "°C", 1, 40],
    train.ammonia.kind === "load"
      ? ["ammonia made", train.ammonia.gPerDay, "g N/day", 0, 100_000]
      : ["ammonia measured", train.ammonia.tan, "mg/L N", 0, HIGHEST_TAN],
    ["oxygen in the tank", train.tankOxygen, "mg/L", 0, 25],
    ...train.boxes.flatMap((box) => [
      [`water in ${box.label}`, box.waterL, "L", 0.05, 1_000_000] as const,
      [`media in ${box.label}`, box.media?.litres, "L", 0, 1_000_000] as const,
      [`cross-section of ${box.label}`, box.crossSectionM2, "m²", 1e-4, 1000] as const,
      [`oxygen used by dirt in ${box.label}`, box.wasteDemand, "g/day", 0, 100_000] as const,
      box.path.kind === "main"
        ? ([`share passing ${box.label} by`, box.path.bypass, "", 0, 0.999] as const)
        : ([`flow into ${box.label}`, box.path.flow, "L/h", 0.01, 10_000_000] as const),
    ]),
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const inputs = trainInputs(train);
  const { estimates, drivers } = propagate(inputs, (values: TrainValues) => trainFigures(train, values));
  const get = (name: string): Estimate => {
    const estimate = (estimates as Readonly<Record<string, Estimate>>)[name];
    if (estimate === undefined) throw new Error(`the filter sum has no output "${name}"`);
    return notBelowZero(estimate);
  };
  const best: TrainValues = Object.fromEntries(
    Object.entries(inputs).map(([name, input]) => [name, input.best]),
  );
  const set = setUp(train, best);
  const { passes, nitrified } = runThrough(train, set, as<MgNPerL>(get("tan").best));
  const wholeDemand =
    OXYGEN_PER_N * (train.ammonia.kind === "load" ? train.ammonia.gPerDay.best : nitrified) +
    set.boxes.reduce((sum, box) => sum + box.wasteDemand, 0);
  const boxes = train.boxes.map((box, index): BoxResult => {
    const each = set.boxes[index];
    const pass = passes[index];
    if (each === undefined || pass === undefined) throw new Error("every box is run through");
    const out = get(`${index} oxygenOut`);
    const anoxicBelowLPerH = anoxicFlow(each, pass.into, set.film, set.saturation);
    return {
      label: box.label,
      flow: get(`${index} flow`),
      residenceMin: get(`${index} residence`),
      ...(box.crossSectionM2 === undefined ? {} : { velocityMPerH: get(`${index} velocity`) }),
      tanIn: get(`${index} tanIn`),
      tanOut: get(`${index} tanOut`),
      oxygenIn: get(`${index} oxygenIn`),
      oxygenOut: out,
      nitrifiedGPerDay: get(`${index} taken`),
      state: out.best > OXIC_ABOVE ? "oxic" : out.best < ANOXIC_BELOW ? "anoxic" : "low",
      ...(anoxicBelowLPerH === undefined ? {} : { anoxicBelowLPerH }),
      leastPossibleMgPerL: Math.max(0, pass.into.oxygen - wholeDemand / each.flow),
    };
  });
  const isOverloaded = train.ammonia.kind === "load" && nitrified < train.ammonia.gPerDay.best * 0.999;
  const tankTan = mapEstimate(get("tan"), (tan) => Math.min(tan, HIGHEST_TAN));
  const value: FilterTrainResult = {
    ...(isOverloaded ? {} : { tankTan }),
    saturationMgPerL: get("saturation"),
    boxes,
    nitrifiedGPerDay: get("nitrified"),
    isOverloaded,
  };
  return {
    kind: "answer",
    value,
    method: "steady balance of ammonia and oxygen over stirred boxes, one after the other",
    working: [
      "in each box: flow × (in − out) = film area × uptake × oxygen factor",
      `oxygen in each box: flow × (in − out) + aeration = ${OXYGEN_PER_N} × nitrogen nitrified + use by dirt`,
      ...(train.ammonia.kind === "load" && !isOverloaded
        ? [
            `ammonia in the tank settles where the boxes take up what is made: ${rounded(tankTan.best)} mg/L nitrogen`,
          ]
        : []),
      ...boxes.map(
        (box) =>
          `${box.label}: ${rounded(box.flow.best)} L/h, ${rounded(box.residenceMin.best)} min, oxygen ${rounded(box.oxygenIn.best)} → ${rounded(box.oxygenOut.best)} mg/L`,
      ),
    ],
    constants: [
      { name: "oxygen for nitrification", value: `${OXYGEN_PER_N} g per g N`, source: "zhu-chen-2002" },
      {
        name: "oxygen at half speed",
        value: "0.5 mg/L (nitrifiers), 0.2 mg/L (others)",
        source: "asm-iwa-str9",
      },
      {
        name: "uptake of the film",
        value: "0.22 m/day in fresh water, × 0.41 in sea water, up to 0.69 / 0.28 g N per m² and day",
        source: "nijhof-bovendeur-1990",
      },
      { name: "aerated box", value: "3–20 volumes of oxygen exchange an hour", source: "assumption" },
      { name: "oxic / low / anoxic", value: "over 2 / 0.5–2 / under 0.5 mg/L", source: "common-practice" },
    ],
    sources: [
      "mass-balance",
      "nijhof-bovendeur-1990",
      "kinyage-pedersen",
      "zhu-chen-2002",
      "asm-iwa-str9",
      "benson-krause-1984",
      "common-practice",
      "assumption",
    ],
    assumptions: [
      "each box is stirred: what leaves it is what is in it",
      "the film has grown in at this salinity and temperature",
      ...(train.tankOxygen === undefined ? ["water leaves the tank 85–98 % saturated with oxygen"] : []),
      "inside thick porous pieces a low-oxygen core can exist at any flow; it is not counted here",
    ],
    cautions: trainCautions(train, value),
    driver: train.ammonia.kind === "load" ? drivers["tan"] : drivers["nitrified"],
  };
}
