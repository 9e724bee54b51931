import { between, type Estimate, exactly } from "../quantity/estimate.ts";
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
import { oxygenSaturation } from "../water/oxygen-saturation.ts";
import { cubicMetresPerDay } from "./chamber-oxygen.ts";
import { MEDIA, type MediumKind, type SquareMetresPerM3, USABLE_FRACTION, workingSurface } from "./media.ts";
import {
  firstOrderConstant,
  type GramsNPerM2Day,
  HIGHEST_UPTAKE,
  type MetresPerDay,
  nitrificationTemperatureFactor,
  saltSlowdown,
} from "./nitrification.ts";
import type { GramsNPerDay, MgNPerL } from "./nitrogen-units.ts";
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

/** Oxygen transfer of an aerated box, times its volume per hour. Source: assumption. */
const AERATED_PER_H = between(3, 20, 8);
const STILL_PER_H = exactly(0);
/** Share of saturation in the tank when not measured. Source: assumption. */
const TANK_SATURATION = between(0.85, 0.98, 0.92);
/** Ammonia beyond which a tank counts as out of hand. */
export const HIGHEST_TAN = 50;

export type TrainValues = Readonly<Record<string, number>>;

function of(values: TrainValues, name: string): number {
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

/** The ranged inputs of a train, by the names a member reads. */
export function trainInputs(train: FilterTrain): Record<string, Estimate<number>> {
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
export function setUp(train: FilterTrain, values: TrainValues) {
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
export function runThrough(train: FilterTrain, set: ReturnType<typeof setUp>, tan: MgNPerL) {
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

/** Every figure of the train at one point of its inputs' ranges, by box number and name. */
export function trainFigures(train: FilterTrain, values: TrainValues): Record<string, number> {
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
