import { between, type Estimate, exactly, mapEstimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Fraction,
  type GramsPerDay,
  type Litres,
  type LitresPerHour,
  type MgPerL,
  type PracticalSalinity,
  type SquareMetres,
} from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { oxygenSaturation } from "../water/oxygen-saturation.ts";
import { type CubicMetresPerDay, cubicMetresPerDay } from "./chamber-oxygen.ts";
import { trainCautions } from "./filter-order.ts";
import { MEDIA, type MediumKind, type SquareMetresPerM3, USABLE_FRACTION, workingSurface } from "./media.ts";
import {
  firstOrderConstant,
  type GramsNPerM2Day,
  HIGHEST_UPTAKE,
  type MetresPerDay,
  nitrificationTemperatureFactor,
  OXYGEN_PER_N,
  saltSlowdown,
} from "./nitrification.ts";
import type { GramsNPerDay, MgNPerL } from "./nitrogen-units.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";
import { type Box, boxOut, type Carried, type FilmSpeed } from "./train-box.ts";

/** What a box is there for. */
export type Purpose = "solids" | "nitrifying" | "skimmer" | "algae" | "low oxygen" | "chemical" | "other";

/** One container of the filter. */
export interface TrainBox {
  readonly label: string;
  readonly purpose: Purpose;
  /** Water in it, running. */
  readonly waterL: Estimate<Litres>;
  readonly media?: { readonly kind: MediumKind; readonly litres: Estimate<Litres> };
  /** Across the flow; gives the velocity. */
  readonly crossSectionM2?: Estimate<SquareMetres>;
  readonly isAerated: boolean;
  /** Oxygen that dirt in it, or carbon dosed into it, uses. */
  readonly wasteDemand?: Estimate<GramsPerDay>;
  /** In the main flow, some of which may pass it by; or fed from the tank by a flow of its own. */
  readonly path:
    | { readonly kind: "main"; readonly bypass: Estimate<Fraction> }
    | { readonly kind: "side stream"; readonly flow: Estimate<LitresPerHour> };
}

export interface FilterTrain {
  /** What the pump really moves, in use. */
  readonly flow: Estimate<LitresPerHour>;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperatureC: Estimate<DegreesC>;
  /** Ammonia made in the tank, or ammonia measured in it. */
  readonly ammonia:
    | { readonly kind: "load"; readonly gPerDay: Estimate<GramsNPerDay> }
    | { readonly kind: "measured"; readonly tan: Estimate<MgNPerL> };
  /** Oxygen of the water leaving the tank; absent: 85–98 % of saturation. */
  readonly tankOxygen?: Estimate<MgPerL>;
  readonly boxes: readonly TrainBox[];
}

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
/** Oxygen transfer of an aerated box, times its volume per hour. Source: assumption. */
const AERATED_PER_H = between(3, 20, 8);
const STILL_PER_H = exactly(0);
/** Share of saturation in the tank when not measured. Source: assumption. */
const TANK_SATURATION = between(0.85, 0.98, 0.92);
/** Ammonia beyond which a tank counts as out of hand. */
const HIGHEST_TAN = 50;

type Values = Readonly<Record<string, number>>;

function of(values: Values, name: string): number {
  const value = values[name];
  if (value === undefined) throw new Error(`the filter sum has no input "${name}"`);
  return value;
}

const key = {
  water: (box: TrainBox, index: number) => `water in box ${index + 1} (${box.label})`,
  media: (box: TrainBox, index: number) => `media in box ${index + 1} (${box.label})`,
  surface: (kind: MediumKind) => `surface of ${MEDIA[kind].name}`,
  section: (box: TrainBox, index: number) => `cross-section of box ${index + 1} (${box.label})`,
  waste: (box: TrainBox, index: number) => `oxygen used by dirt in box ${index + 1} (${box.label})`,
  path: (box: TrainBox, index: number) => `flow share of box ${index + 1} (${box.label})`,
} as const;

function trainInputs(train: FilterTrain): Record<string, Estimate<number>> {
  const inputs: Record<string, Estimate<number>> = {
    flow: train.flow,
    salinity: train.salinity,
    temperature: train.temperatureC,
    "speed of the filter film": between(0.5, 2.4, 1),
    "share of the bed that works": USABLE_FRACTION,
    "strength of aeration": AERATED_PER_H,
    "oxygen in the tank": train.tankOxygen ?? TANK_SATURATION,
    ammonia: train.ammonia.kind === "load" ? train.ammonia.gPerDay : train.ammonia.tan,
  };
  train.boxes.forEach((box, index) => {
    inputs[key.water(box, index)] = box.waterL;
    if (box.media !== undefined) {
      inputs[key.media(box, index)] = box.media.litres;
      inputs[key.surface(box.media.kind)] = MEDIA[box.media.kind].surface;
    }
    if (box.crossSectionM2 !== undefined) inputs[key.section(box, index)] = box.crossSectionM2;
    if (box.wasteDemand !== undefined) inputs[key.waste(box, index)] = box.wasteDemand;
    inputs[key.path(box, index)] = box.path.kind === "main" ? box.path.bypass : box.path.flow;
  });
  return inputs;
}

/** The train at one point of its inputs' ranges. */
function setUp(train: FilterTrain, values: Values) {
  const salinity = as<PracticalSalinity>(of(values, "salinity"));
  const temperature = as<DegreesC>(of(values, "temperature"));
  const saturation = oxygenSaturation(salinity, temperature);
  const given = of(values, "oxygen in the tank");
  const oxygen = as<MgPerL>(train.tankOxygen === undefined ? given * saturation : given);
  const warmth = nitrificationTemperatureFactor(temperature);
  const film: FilmSpeed = {
    firstOrder: as<MetresPerDay>(
      firstOrderConstant(salinity) * warmth * of(values, "speed of the filter film"),
    ),
    ceiling: as<GramsNPerM2Day>(HIGHEST_UPTAKE.fresh * saltSlowdown(salinity) * warmth),
  };
  const main = as<LitresPerHour>(of(values, "flow"));
  const boxes = train.boxes.map((box, index): Box => {
    const path = of(values, key.path(box, index));
    const waterL = of(values, key.water(box, index));
    const flow = as<LitresPerHour>(box.path.kind === "main" ? main * (1 - path) : path);
    const area =
      box.media === undefined
        ? as<SquareMetres>(0)
        : workingSurface(
            as<Litres>(of(values, key.media(box, index))),
            as<SquareMetresPerM3>(of(values, key.surface(box.media.kind))),
            as<Fraction>(of(values, "share of the bed that works")),
          );
    const perHour = box.isAerated ? of(values, "strength of aeration") : STILL_PER_H.best;
    return {
      flow: cubicMetresPerDay(flow),
      area,
      wasteDemand: box.wasteDemand === undefined ? 0 : of(values, key.waste(box, index)),
      aeration: (perHour * 24 * waterL) / 1000,
    };
  });
  return { saturation, oxygen, film, boxes, main: cubicMetresPerDay(main) };
}

/** Box by box at one tank level: what goes in, what comes out, and grams nitrified a day in all. */
function runThrough(train: FilterTrain, set: ReturnType<typeof setUp>, tan: MgNPerL) {
  let carried: Carried = { tan, oxygen: set.oxygen };
  let nitrified = 0;
  const passes = train.boxes.map((each, index) => {
    const box = set.boxes[index];
    if (box === undefined) throw new Error("every box is set up");
    const into = each.path.kind === "main" ? carried : { tan, oxygen: set.oxygen };
    const out = boxOut(box, into, set.film, set.saturation);
    const taken = box.flow * (into.tan - out.tan);
    nitrified += taken;
    if (each.path.kind === "main") {
      const through = box.flow / set.main;
      carried = {
        tan: as<MgNPerL>(through * out.tan + (1 - through) * into.tan),
        oxygen: as<MgPerL>(through * out.oxygen + (1 - through) * into.oxygen),
      };
    }
    return { into, out, taken };
  });
  return { passes, nitrified };
}

/** The tank level at which the filter takes up what is made, or the highest level when it cannot. */
function tankLevel(train: FilterTrain, set: ReturnType<typeof setUp>, given: number): MgNPerL {
  if (train.ammonia.kind === "measured") return as<MgNPerL>(given);
  let low = 0;
  let high = HIGHEST_TAN;
  for (let step = 0; step < 36; step += 1) {
    const middle = (low + high) / 2;
    if (runThrough(train, set, as<MgNPerL>(middle)).nitrified < given) low = middle;
    else high = middle;
  }
  return as<MgNPerL>(high);
}

function figures(train: FilterTrain, values: Values): Record<string, number> {
  const set = setUp(train, values);
  const tan = tankLevel(train, set, of(values, "ammonia"));
  const { passes, nitrified } = runThrough(train, set, tan);
  const result: Record<string, number> = { tan, nitrified, saturation: set.saturation };
  passes.forEach(({ into, out, taken }, index) => {
    const box = set.boxes[index];
    const each = train.boxes[index];
    if (box === undefined || each === undefined) return;
    const litresPerH = (box.flow * 1000) / 24;
    result[`${index} flow`] = litresPerH;
    result[`${index} residence`] = (of(values, key.water(each, index)) / litresPerH) * 60;
    result[`${index} velocity`] =
      each.crossSectionM2 === undefined ? 0 : litresPerH / 1000 / of(values, key.section(each, index));
    result[`${index} tanIn`] = into.tan;
    result[`${index} tanOut`] = out.tan;
    result[`${index} oxygenIn`] = into.oxygen;
    result[`${index} oxygenOut`] = out.oxygen;
    result[`${index} taken`] = taken;
  });
  return result;
}

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
  const { estimates, drivers } = propagate(inputs, (values: Values) => figures(train, values));
  const get = (name: string): Estimate => {
    const estimate = (estimates as Readonly<Record<string, Estimate>>)[name];
    if (estimate === undefined) throw new Error(`the filter sum has no output "${name}"`);
    const low = Math.max(0, estimate.low);
    return { ...estimate, low };
  };
  const best: Values = Object.fromEntries(Object.entries(inputs).map(([name, input]) => [name, input.best]));
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
