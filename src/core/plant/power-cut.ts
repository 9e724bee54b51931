import { restingOxygenAllTeleosts } from "../nitrogen/fish-body.ts";
import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Grams,
  type Hours,
  type Litres,
  type MgPerL,
  type PracticalSalinity,
  type SquareMetres,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { oxygenSaturation } from "../water/oxygen-saturation.ts";
import { driftingTemperature } from "./heat.ts";
import { type OutageAction, outageActions } from "./outage-actions.ts";
import {
  bubbleExchange,
  hoursUntilOxygen,
  STILL_K600,
  surfaceExchange,
  transferVelocity,
} from "./outage-oxygen.ts";
import type { CentimetresPerHour, MilligramsPerHour, WattsPerKelvin } from "./plant-units.ts";
import { refuseIfNegative, refuseOutside, refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

/** mg/L. Source: oxygen-guidance. */
export const OXYGEN_ALARM = as<MgPerL>(4);
export const OXYGEN_EMERGENCY = as<MgPerL>(2);
/** Not followed further than this: by then everything else has changed. Source: assumption. */
export const HOURS_FOLLOWED = 72;
/** Share of saturation a running tank has. Source: assumption. */
const USUAL_SATURATION = between(0.85, 1, 0.95);
/** Breathing against rest; twice when active or lately fed. Source: common-practice. */
const ACTIVITY = between(1, 2, 1.5);
/** What corals, bacteria and sediment breathe, as a share of the fishes'. Source: common-practice. */
const OTHERS = between(0.25, 1, 0.5);
/** cm/h at Schmidt number 600: dead air in the best case known, a film on the surface as the low end.
 *  Source: crusius-wanninkhof-2003. */
const STILL = between<number>(0, STILL_K600.lightAir, STILL_K600.deadAir);
/** As a lake in a wind of 3, 4 and 5 m/s: 0.168 + 0.228 × wind^2.2. Source: crusius-wanninkhof-2003; that a pump or
 *  a hand stirs as much is an assumption. */
const STIRRED = between(2.7, 8, 5);
/** Bubbles stir a part of the surface. Source: assumption. */
const BUBBLED = between<number>(STILL_K600.deadAir, 5, 1);
/** Share of its oxygen a bubble gives up per metre of depth. Source: aeration-practice. */
const GIVEN_UP_PER_M = between(0.02, 0.06, 0.03);
/** W/K per m² of open surface for walls, surface and evaporation together. Source: assumption. */
const UA_PER_SURFACE = between(15, 35, 25);

export interface OutageFish {
  readonly name: string;
  readonly count: number;
  /** Of one fish. */
  readonly massG: Estimate<Grams>;
}

export interface PowerCutInputs {
  /** Net water of the display: the filters stand apart once the pump stops. */
  readonly displayL: Estimate<Litres>;
  readonly surfaceM2: Estimate<SquareMetres>;
  readonly waterC: Estimate<DegreesC>;
  readonly salinity: Estimate<PracticalSalinity>;
  /** Measured; taken as 85–100 % of saturation when absent. */
  readonly oxygenMgPerL?: Estimate<MgPerL>;
  /** The fish by mass, or all that breathes as one figure. */
  readonly demand:
    | { readonly fish: readonly OutageFish[] }
    | { readonly mgPerH: Estimate<MilligramsPerHour> };
  readonly airPump?: { readonly airLPerMin: Estimate; readonly depthCm: Estimate };
  readonly roomC: Estimate<DegreesC>;
  /** From a heat balance; estimated from the surface when absent. */
  readonly uaWPerK?: Estimate<WattsPerKelvin>;
  readonly hasGenerator: boolean;
}

/** Hours to a limit; figures at `HOURS_FOLLOWED` mean: not within that time. */
export interface HoursToLimits {
  readonly toAlarmH: Estimate<Hours>;
  readonly toEmergencyH: Estimate<Hours>;
}

export interface PowerCut {
  readonly saturationMgPerL: Estimate<MgPerL>;
  readonly startMgPerL: Estimate<MgPerL>;
  readonly demandMgPerH: Estimate<MilligramsPerHour>;
  readonly still: HoursToLimits;
  readonly stirred: HoursToLimits;
  readonly withAir: HoursToLimits | undefined;
  readonly temperature: readonly { readonly hours: number; readonly waterC: Estimate<DegreesC> }[];
  readonly actions: readonly OutageAction[];
}

/** How long the display lasts when the power fails, and what to do in which order. */
export function powerCut(inputs: PowerCutInputs): Answer<PowerCut> | NoAnswer {
  const refused = refusePowerCut(inputs);
  if (refused !== undefined) return refused;
  const { airPump, demand } = inputs;
  const fish = "fish" in demand ? demand.fish : [];
  const ranged: Readonly<Record<string, Estimate>> = {
    "display volume": inputs.displayL,
    surface: inputs.surfaceM2,
    "water temperature": inputs.waterC,
    salinity: inputs.salinity,
    ...(inputs.oxygenMgPerL === undefined
      ? { "oxygen now, share of saturation": USUAL_SATURATION }
      : { "oxygen now": inputs.oxygenMgPerL }),
    ...("mgPerH" in demand
      ? { "oxygen demand": demand.mgPerH }
      : {
          "activity of the fish": ACTIVITY,
          "corals, bacteria and sediment": OTHERS,
          ...Object.fromEntries(fish.map(({ name, massG }) => [`mass of ${name}`, massG])),
        }),
    "still surface": STILL,
    "stirred surface": STIRRED,
    "surface stirred by bubbles": BUBBLED,
    "oxygen given up by bubbles": GIVEN_UP_PER_M,
    ...(airPump === undefined
      ? {}
      : { "air flow": airPump.airLPerMin, "depth of the air stone": airPump.depthCm }),
    "room temperature": inputs.roomC,
    ...(inputs.uaWPerK === undefined
      ? { "heat per surface": UA_PER_SURFACE }
      : { "heat loss per kelvin": inputs.uaWPerK }),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const t = as<DegreesC>(at("water temperature"));
    const volume = as<Litres>(at("display volume"));
    const area = as<SquareMetres>(at("surface"));
    const saturation = oxygenSaturation(as<PracticalSalinity>(at("salinity")), t);
    const start = as<MgPerL>(
      inputs.oxygenMgPerL === undefined
        ? at("oxygen now, share of saturation") * saturation
        : at("oxygen now"),
    );
    const fishDemand =
      fish.reduce(
        (sum, { name, count }) => sum + count * restingOxygenAllTeleosts(as<Grams>(at(`mass of ${name}`)), t),
        0,
      ) * at("activity of the fish");
    const needed = as<MilligramsPerHour>(
      "mgPerH" in demand ? at("oxygen demand") : fishDemand * (1 + at("corals, bacteria and sediment")),
    );
    const exchange = (k600: string) =>
      surfaceExchange(transferVelocity(as<CentimetresPerHour>(at(k600)), t), area);
    const hours = (exchangeLPerH: number, limit: MgPerL) =>
      as<Hours>(
        Math.min(HOURS_FOLLOWED, hoursUntilOxygen(volume, start, limit, needed, exchangeLPerH, saturation)),
      );
    const air =
      exchange("surface stirred by bubbles") +
      bubbleExchange(at("air flow"), (at("oxygen given up by bubbles") * at("depth of the air stone")) / 100);
    const ua = as<WattsPerKelvin>(
      inputs.uaWPerK === undefined ? at("heat per surface") * area : at("heat loss per kelvin"),
    );
    const room = as<DegreesC>(at("room temperature"));
    return {
      saturation,
      start,
      needed,
      stillAlarm: hours(exchange("still surface"), OXYGEN_ALARM),
      stillEmergency: hours(exchange("still surface"), OXYGEN_EMERGENCY),
      stirredAlarm: hours(exchange("stirred surface"), OXYGEN_ALARM),
      stirredEmergency: hours(exchange("stirred surface"), OXYGEN_EMERGENCY),
      airAlarm: hours(air, OXYGEN_ALARM),
      airEmergency: hours(air, OXYGEN_EMERGENCY),
      after6: driftingTemperature(volume, ua, t, room, as<Hours>(6)),
      after12: driftingTemperature(volume, ua, t, room, as<Hours>(12)),
      after24: driftingTemperature(volume, ua, t, room, as<Hours>(24)),
    };
  });
  const isOxygenAtAlarm = estimates.start.best <= OXYGEN_ALARM;
  const towardRoom = inputs.roomC.best - inputs.waterC.best;
  return {
    kind: "answer",
    value: {
      saturationMgPerL: estimates.saturation,
      startMgPerL: estimates.start,
      demandMgPerH: estimates.needed,
      still: { toAlarmH: followed(estimates.stillAlarm), toEmergencyH: followed(estimates.stillEmergency) },
      stirred: {
        toAlarmH: followed(estimates.stirredAlarm),
        toEmergencyH: followed(estimates.stirredEmergency),
      },
      withAir:
        airPump === undefined
          ? undefined
          : { toAlarmH: followed(estimates.airAlarm), toEmergencyH: followed(estimates.airEmergency) },
      temperature: [
        { hours: 6, waterC: estimates.after6 },
        { hours: 12, waterC: estimates.after12 },
        { hours: 24, waterC: estimates.after24 },
      ],
      actions: outageActions({
        hasBatteryAir: airPump !== undefined,
        hasGenerator: inputs.hasGenerator,
        drift: towardRoom < -1 ? "cooling" : towardRoom > 1 ? "warming" : "steady",
        isOxygenAtAlarm,
      }),
    },
    method: "Oxygen in the display falls by what its animals breathe, and rises by what the surface lets in",
    working: [
      "volume × change per hour = exchange × (saturation − oxygen) − demand, solved for the time to 4 and to 2 mg/L",
      ...("mgPerH" in demand
        ? []
        : [
            "demand: resting rate of each fish by mass and temperature × activity × (1 + corals, bacteria, sediment)",
          ]),
      "exchange: transfer velocity × surface; for bubbles: oxygen in the air pumped × share given up ÷ 9.09 mg/L",
      "temperature: room + (start − room) × e^(−hours × heat loss per kelvin ÷ heat held)",
    ],
    constants: [
      { name: "alarm and emergency", value: "4 and 2 mg/L", source: "oxygen-guidance" },
      {
        name: "still surface, Schmidt number 600",
        value: "0.17 cm/h (0–1.0)",
        source: "crusius-wanninkhof-2003",
      },
      {
        name: "stirred surface, Schmidt number 600",
        value: "5 cm/h (2.7–8)",
        source: "crusius-wanninkhof-2003",
      },
      { name: "activity of the fish", value: "1.5 × rest (1–2)", source: "common-practice" },
      { name: "corals, bacteria and sediment", value: "+50 % (25–100 %)", source: "common-practice" },
      { name: "oxygen given up by a bubble", value: "3 % per metre (2–6)", source: "aeration-practice" },
      { name: "heat capacity of seawater", value: "4.092 kJ/(L K)", source: "gsw-heat-capacity" },
    ],
    sources: [
      "benson-krause-1984",
      "clarke-johnston-1999",
      "crusius-wanninkhof-2003",
      "wanninkhof-2014",
      "oxygen-guidance",
      "aeration-practice",
      "gsw-heat-capacity",
      "common-practice",
      "assumption",
      ...(inputs.hasGenerator ? (["cpsc-generators"] as const) : []),
    ],
    assumptions: [
      "the display alone, well mixed; fish among rock run short first",
      "the animals breathe as before until the limit is reached",
      "lights are off, so that nothing makes oxygen",
      `figures of ${HOURS_FOLLOWED} h mean: not within ${HOURS_FOLLOWED} h`,
    ],
    cautions: powerCutCautions(inputs, estimates.start.best),
    driver: drivers.stillAlarm ?? drivers.stillEmergency,
  };
}

/** A range cut to the time followed, and to no less than nothing. */
function followed(hours: Estimate<Hours>): Estimate<Hours> {
  const cut = (value: number) => as<Hours>(Math.min(HOURS_FOLLOWED, Math.max(0, value)));
  return { best: cut(hours.best), low: cut(hours.low), high: cut(hours.high) };
}

function refusePowerCut(inputs: PowerCutInputs): NoAnswer | undefined {
  const { demand, airPump } = inputs;
  if ("fish" in demand && demand.fish.length === 0)
    return noAnswer("nothing-named", { what: "the fish, or what they breathe" });
  const fish = "fish" in demand ? demand.fish : [];
  return (
    refuseSameNames(fish) ??
    refuseUnlessPositive({
      "display volume": inputs.displayL,
      surface: inputs.surfaceM2,
      "oxygen demand": "mgPerH" in demand ? demand.mgPerH : undefined,
      "heat loss per kelvin": inputs.uaWPerK,
      ...Object.fromEntries(fish.map(({ name, massG }) => [`mass of ${name}`, massG])),
      ...Object.fromEntries(fish.map(({ name, count }) => [`number of ${name}`, exactly(count)])),
    }) ??
    refuseIfNegative({
      "oxygen now": inputs.oxygenMgPerL,
      "air flow": airPump?.airLPerMin,
      "depth of the air stone": airPump?.depthCm,
    }) ??
    refuseOutside({ "water temperature": inputs.waterC }, 0, 40) ??
    refuseOutside({ "room temperature": inputs.roomC }, -30, 50) ??
    refuseOutside({ salinity: inputs.salinity }, 0, 45)
  );
}

function powerCutCautions(inputs: PowerCutInputs, startMgPerL: number): readonly Caution[] {
  return [
    ...(startMgPerL <= OXYGEN_ALARM
      ? [caution("oxygen-already-low", { nowMgPerL: startMgPerL, alarmMgPerL: OXYGEN_ALARM }, "danger")]
      : []),
    caution("display-alone-in-outage", {}),
    caution("still-surface-buys-minutes", {}),
    ...(inputs.airPump === undefined ? [] : [caution("battery-fades", {}, "note")]),
    ...(inputs.hasGenerator ? [caution("generator-outdoors-only", {}, "danger")] : []),
    caution("stagnant-filter-water", {}),
  ];
}
