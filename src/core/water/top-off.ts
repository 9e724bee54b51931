import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type DegreesC,
  type Kilograms,
  type Litres,
  type LitresPerDay,
  type PracticalSalinity,
  type Quantity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { DENSITY_FITTED } from "./density.ts";
import { DENSITY_EQUATION } from "./evidence.ts";
import { figure } from "./figure.ts";
import { massOfFreshWater, massOfSeawater, volumeOfFreshWater } from "./mass.ts";
import {
  cut,
  firstNotCredible,
  fittedRange,
  keptPossible,
  SALINITY,
  TEMPERATURE,
  VOLUME,
  VOLUME_OR_NONE,
} from "./usable.ts";

export type SalinityPerDay = Quantity<"PSS-78/d">;

export interface TopOffInput {
  /** Water in the system when it is full. */
  readonly volume: Estimate<Litres>;
  readonly temperature: Estimate<DegreesC>;
  readonly lost:
    | {
        readonly kind: "litres";
        readonly evaporated: Estimate<Litres>;
        readonly salinityFull: Estimate<PracticalSalinity>;
      }
    | {
        readonly kind: "salinity";
        readonly before: Estimate<PracticalSalinity>;
        readonly now: Estimate<PracticalSalinity>;
      };
  /** How long it took; with it come the figures per day. */
  readonly days?: Estimate<Days> | undefined;
  /** Fresh water in an automatic top-off's reservoir. */
  readonly reservoir?: Estimate<Litres> | undefined;
}

export interface TopOff {
  readonly freshWaterL: Estimate<Litres>;
  readonly salinityFull: Estimate<PracticalSalinity>;
  readonly salinityNow: Estimate<PracticalSalinity>;
  readonly drift: Estimate<PracticalSalinity>;
  readonly freshWaterPerDay?: Estimate<LitresPerDay>;
  readonly driftPerDay?: Estimate<SalinityPerDay>;
  /** Salinity if a full reservoir ran into the full system. */
  readonly salinityIfDumped?: Estimate<PracticalSalinity>;
}

const DAYS = { unit: "days", min: 0.01, max: 3650 };
const MEASURED_SALINITY = { ...SALINITY, min: 0.1 };
/** A fall of salinity that a stuck top-off may not cause. ppt. Source: common-practice. */
const DUMP_LIMIT = 1;

const NONE = exactly(as<Litres>(0));
const ONE_DAY = exactly(as<Days>(1));

/** How much fresh water replaces what evaporated, and how fast salinity drifts without it. */
export function topOff(input: TopOffInput): Answer<TopOff> | NoAnswer {
  const { lost, volume, temperature } = input;
  const before = lost.kind === "litres" ? lost.salinityFull : lost.before;
  const now = lost.kind === "litres" ? before : lost.now;
  const evaporated = lost.kind === "litres" ? lost.evaporated : NONE;
  const days = input.days ?? ONE_DAY;
  const reservoir = input.reservoir ?? NONE;
  const unusable = firstNotCredible([
    ["volume", volume, VOLUME],
    ["temperature", temperature, TEMPERATURE],
    ["salinity before", before, MEASURED_SALINITY],
    ["salinity now", now, MEASURED_SALINITY],
    ["evaporated water", evaporated, VOLUME_OR_NONE],
    ["number of days", days, DAYS],
    ["reservoir", reservoir, VOLUME_OR_NONE],
  ]);
  if (unusable !== undefined) return unusable;
  if (now.high < before.low) return noAnswer("salinity-fell", { before: before.best, now: now.best });

  const { estimates, drivers } = propagate(
    {
      volume: cut(volume, VOLUME),
      "salinity before": cut(before, MEASURED_SALINITY),
      // With the litres known, the salinity now follows from them and is no input of its own.
      "salinity now": lost.kind === "litres" ? exactly(now.best) : cut(now, MEASURED_SALINITY),
      "evaporated water": cut(evaporated, VOLUME_OR_NONE),
      temperature: cut(temperature, TEMPERATURE),
      "number of days": cut(days, DAYS),
      reservoir: cut(reservoir, VOLUME_OR_NONE),
    },
    (v) => {
      const full = v["salinity before"];
      const t = v.temperature;
      const fullKg = massOfSeawater(v.volume, full, t);
      const lostKg =
        lost.kind === "litres"
          ? massOfFreshWater(v["evaporated water"], t)
          : as<Kilograms>(fullKg * Math.max(0, 1 - full / v["salinity now"]));
      const salinityNow = lostKg < fullKg ? (full * fullKg) / (fullKg - lostKg) : Number.NaN;
      const freshWaterL = volumeOfFreshWater(lostKg, t);
      const dumpKg = massOfFreshWater(v.reservoir, t);
      return {
        freshWaterL,
        salinityFull: full,
        salinityNow: as<PracticalSalinity>(salinityNow),
        drift: as<PracticalSalinity>(salinityNow - full),
        freshWaterPerDay: as<LitresPerDay>(freshWaterL / v["number of days"]),
        driftPerDay: as<SalinityPerDay>((salinityNow - full) / v["number of days"]),
        salinityIfDumped: as<PracticalSalinity>((full * fullKg) / (fullKg + dumpKg)),
      };
    },
  );
  if (Number.isNaN(estimates.salinityNow.best)) {
    const figures = { what: "the evaporated water", litres: evaporated.best, volumeL: volume.best };
    return noAnswer("more-than-there-is", figures);
  }
  const { freshWaterPerDay, driftPerDay, salinityIfDumped, ...always } = keptPossible(estimates, [
    "drift",
    "driftPerDay",
  ]);
  const fall = before.best - salinityIfDumped.best;

  return {
    kind: "answer",
    value: {
      ...always,
      ...(input.days === undefined ? {} : { freshWaterPerDay, driftPerDay }),
      ...(input.reservoir === undefined ? {} : { salinityIfDumped }),
    },
    method: "Balance of salt and of mass: water leaves, the salt stays.",
    working: working(input, before.best, always),
    constants: [DENSITY_EQUATION],
    sources: ["mass-balance", "millero-poisson-1981", "common-practice", "jcgm-100-2008"],
    assumptions: [
      "only water was lost: no spray, no spills, no salt water taken out",
      "nothing was topped off in the meantime",
      "the volume is the water in the system when full, without rock and sand",
    ],
    cautions: [
      ...errorCautions(input),
      caution("top-off-with-fresh-water", {}, "note"),
      caution("fresh-water-quality", {}, "note"),
      ...(input.reservoir !== undefined && fall > DUMP_LIMIT
        ? [caution("reservoir-can-dump", { litres: reservoir.best, fall }, "danger")]
        : []),
      ...fittedRange("salinity", before, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("salinity now", always.salinityNow, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: lost.kind === "litres" ? drivers.drift : drivers.freshWaterL,
  };
}

/** Two readings closer together than their own errors, added as squares, show nothing for certain. */
function errorCautions({ lost }: TopOffInput): readonly Caution[] {
  if (lost.kind === "litres") return [];
  const change = Math.abs(lost.now.best - lost.before.best);
  const error = Math.hypot(lost.before.high - lost.before.best, lost.now.best - lost.now.low);
  return error > 0 && change <= error ? [caution("change-within-error", { change, error })] : [];
}

function working(
  { lost, volume, temperature }: TopOffInput,
  before: PracticalSalinity,
  found: Pick<TopOff, "freshWaterL" | "salinityNow">,
): readonly string[] {
  const fullKg = massOfSeawater(volume.best, before, temperature.best);
  const lostKg = massOfFreshWater(found.freshWaterL.best, temperature.best);
  const full = `mass of the full system = ${figure(volume.best)} L × density ÷ 1000 = ${figure(fullKg)} kg`;
  return lost.kind === "litres"
    ? [
        full,
        `mass evaporated = ${figure(lost.evaporated.best)} L × density of pure water ÷ 1000 = ${figure(lostKg)} kg`,
        `salinity now = ${figure(before)} × mass before ÷ mass left = ${figure(found.salinityNow.best)}`,
        `fresh water to add = the water evaporated = ${figure(found.freshWaterL.best)} L`,
      ]
    : [
        full,
        `mass evaporated = full mass × (1 − before ${figure(before)} ÷ now ${figure(lost.now.best)}) = ${figure(lostKg)} kg`,
        `fresh water to add = that mass ÷ density of pure water = ${figure(found.freshWaterL.best)} L`,
      ];
}
