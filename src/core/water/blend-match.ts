import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Kilograms,
  type Litres,
  type PH,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { FRESH_HEAT_CAPACITY, SEAWATER_HEAT_CAPACITY, temperatureOfBlend } from "./blend-heat.ts";
import { DENSITY_FITTED } from "./density.ts";
import { DENSITY_EQUATION } from "./evidence.ts";
import { figure } from "./figure.ts";
import { massOfSeawater, volumeOfSeawater } from "./mass.ts";
import {
  type Checked,
  cut,
  firstNotCredible,
  fittedRange,
  keptPossible,
  SALINITY,
  TEMPERATURE,
  VOLUME,
} from "./usable.ts";

/** A body of water as it stands before pouring. */
export interface Water {
  readonly volume: Estimate<Litres>;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
  readonly pH?: PH | undefined;
}

export interface BlendInput {
  readonly tank: Water;
  readonly added: Water;
  /** Whether as many litres are taken out of the tank first. */
  readonly isExchange: boolean;
}

/** What the animals meet after the new water is in. */
export interface Blend {
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
  readonly salinityStep: Estimate<PracticalSalinity>;
  readonly temperatureStep: Estimate<DegreesC>;
  readonly volumeL: Estimate<Litres>;
}

/** Steps that animals should not meet at once, up or down. Source: common-practice. */
const SALINITY_STEP = 1;
const TEMPERATURE_STEP_C = 1;

/** How closely new water matches the tank, and how far pouring it in moves the animals. */
export function blendMatch({ tank, added, isExchange }: BlendInput): Answer<Blend> | NoAnswer {
  const checks = (of: string, water: Water): readonly Checked[] => [
    [`volume of the ${of}`, water.volume, VOLUME],
    [`salinity of the ${of}`, water.salinity, SALINITY],
    [`temperature of the ${of}`, water.temperature, TEMPERATURE],
    ...(water.pH === undefined
      ? []
      : [[`pH of the ${of}`, exactly(water.pH), { unit: "", min: 0, max: 14 }] satisfies Checked]),
  ];
  const unusable = firstNotCredible([...checks("tank", tank), ...checks("new water", added)]);
  if (unusable !== undefined) return unusable;
  if (isExchange && added.volume.best > tank.volume.best) {
    const figures = { what: "the new water", litres: added.volume.best, volumeL: tank.volume.best };
    return noAnswer("more-than-there-is", figures);
  }

  const { estimates, drivers } = propagate(
    {
      "tank volume": cut(tank.volume, VOLUME),
      "tank salinity": cut(tank.salinity, SALINITY),
      "tank temperature": cut(tank.temperature, TEMPERATURE),
      "new water's volume": cut(added.volume, VOLUME),
      "new water's salinity": cut(added.salinity, SALINITY),
      "new water's temperature": cut(added.temperature, TEMPERATURE),
    },
    (v) => {
      const newL = v["new water's volume"];
      const stayingL = isExchange ? Math.max(0, v["tank volume"] - newL) : v["tank volume"];
      const old = parcel(as<Litres>(stayingL), v["tank salinity"], v["tank temperature"]);
      const fresh = parcel(newL, v["new water's salinity"], v["new water's temperature"]);
      const massKg = old.massKg + fresh.massKg;
      const salinity = as<PracticalSalinity>(
        (old.massKg * old.salinity + fresh.massKg * fresh.salinity) / massKg,
      );
      const temperature = temperatureOfBlend(old, fresh);
      return {
        salinity,
        temperature,
        salinityStep: as<PracticalSalinity>(stepTo(salinity, old.salinity, fresh.salinity)),
        temperatureStep: as<DegreesC>(stepTo(temperature, old.temperatureC, fresh.temperatureC)),
        volumeL: volumeOfSeawater(as<Kilograms>(massKg), salinity, temperature),
      };
    },
  );

  return {
    kind: "answer",
    value: keptPossible(estimates, ["temperature", "salinityStep", "temperatureStep"]),
    method: "Salt shared by mass, heat shared by mass and heat capacity.",
    working: [
      `tank water that stays: ${figure(tank.volume.best - (isExchange ? added.volume.best : 0))} L; new water: ${figure(added.volume.best)} L; each × its density ÷ 1000 gives its mass`,
      `salinity = (mass × salinity of both, added up) ÷ total mass = ${figure(estimates.salinity.best)}`,
      `temperature = (mass × heat capacity × temperature of both, added up) ÷ (mass × heat capacity, added up) = ${figure(estimates.temperature.best)} °C`,
      `steps for the animals: ${figure(estimates.salinityStep.best)} ppt and ${figure(estimates.temperatureStep.best)} °C`,
    ],
    constants: [
      DENSITY_EQUATION,
      {
        name: "heat capacity of seawater, salinity 35",
        value: `${SEAWATER_HEAT_CAPACITY} kJ/(kg K)`,
        source: "gsw-3-6-16",
      },
      {
        name: "heat capacity of fresh water",
        value: `${FRESH_HEAT_CAPACITY} kJ/(kg K)`,
        source: "fresh-water-heat",
      },
      {
        name: "step animals should not meet at once",
        value: `${SALINITY_STEP} ppt, ${TEMPERATURE_STEP_C} °C`,
        source: "common-practice",
      },
    ],
    sources: [
      "mass-balance",
      "millero-poisson-1981",
      "gsw-3-6-16",
      "fresh-water-heat",
      "common-practice",
      "jcgm-100-2008",
    ],
    assumptions: [
      "both waters mix completely, and no heat is lost while pouring",
      "the salt is that of seawater in both",
    ],
    cautions: [
      ...stepCautions(estimates),
      ...(tank.pH !== undefined && added.pH !== undefined
        ? [caution("ph-is-not-blended", { tank: tank.pH, added: added.pH })]
        : []),
      ...(isExchange
        ? [caution("unplug-before-draining", {}, "danger")]
        : [caution("level-rises", { litres: added.volume.best })]),
      ...fittedRange("tank salinity", tank.salinity, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("new water's salinity", added.salinity, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("tank temperature", tank.temperature, "°C", DENSITY_FITTED.temperatureC),
      ...fittedRange("new water's temperature", added.temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: drivers.salinity,
  };
}

/** How far the blend lies from the old water; two equal waters move nothing, not even by a rounding. */
function stepTo(blend: number, old: number, fresh: number): number {
  return old === fresh ? 0 : blend - old;
}

function parcel(volumeL: Litres, salinity: PracticalSalinity, temperatureC: DegreesC) {
  return { massKg: massOfSeawater(volumeL, salinity, temperatureC), salinity, temperatureC };
}

function stepCautions({
  salinityStep,
  temperatureStep,
}: Pick<Blend, "salinityStep" | "temperatureStep">): readonly Caution[] {
  const isSalinityJump = Math.abs(salinityStep.best) > SALINITY_STEP;
  const isTemperatureJump = Math.abs(temperatureStep.best) > TEMPERATURE_STEP_C;
  return [
    ...(isSalinityJump ? [caution("salinity-step", { step: salinityStep.best, limit: SALINITY_STEP })] : []),
    ...(isTemperatureJump
      ? [caution("temperature-step", { step: temperatureStep.best, limit: TEMPERATURE_STEP_C })]
      : []),
  ];
}
