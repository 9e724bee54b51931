import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type DegreesC,
  type Hours,
  type Litres,
  type LitresPerHour,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { salinityAfterEvaporation, salinityOfBlend } from "../water/salinity-balance.ts";
import type { KilogramsPerDay, Minutes } from "./plant-units.ts";
import { refuseIfNegative, refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";

/** A step of salinity at a stroke beyond which animals are at risk. Source: common-practice. */
const RISKY_STEP = 1;
/** Warmth of tank and top-off water; it moves the result by less than a thousandth. Source: assumption. */
const WATER_C = as<DegreesC>(25);
const FRESH = as<PracticalSalinity>(0);
/** No mains filling is followed longer than this. Source: assumption. */
const HOURS_FOLLOWED = 24;

/** Hours until a pump chamber that is not refilled is down to the pump's inlet. Source: mass-balance. */
export function chamberHours(usable: Litres, evaporation: KilogramsPerDay): Hours {
  if (!(evaporation > 0)) throw new RangeError("nothing evaporates");
  return as<Hours>((usable / evaporation) * 24);
}

export interface TopOffFailureInputs {
  readonly evaporationKgPerDay: Estimate<KilogramsPerDay>;
  readonly systemL: Estimate<Litres>;
  readonly salinity: Estimate<PracticalSalinity>;
  /** The container whose level shows all evaporation and takes the top-off. */
  readonly container: string;
  /** From its running level down to the pump's inlet. */
  readonly usableChamberL: Estimate<Litres>;
  /** Room from its running level to the lowest opening. */
  readonly freeL: Estimate<Litres>;
  /** What falls back when the pump stops. */
  readonly fallbackL: Estimate<Litres>;
  readonly source:
    | {
        readonly kind: "reservoir";
        readonly litres: Estimate<Litres>;
        readonly fillLPerH: Estimate<LitresPerHour>;
      }
    | { readonly kind: "mains"; readonly fillLPerH: Estimate<LitresPerHour> };
}

export interface TopOffFailure {
  readonly ifItStops: {
    /** Until the pump draws air. */
    readonly hoursToDry: Estimate<Hours>;
    readonly salinityThen: Estimate<PracticalSalinity>;
    readonly salinityRisePerDay: Estimate;
  };
  readonly ifItSticksOn: {
    /** All that can come: the reservoir, or a day of mains. */
    readonly litres: Estimate<Litres>;
    readonly salinityThen: Estimate<PracticalSalinity>;
    /** Over the lowest opening with the pump running, and after it stops. */
    readonly overWhileRunningL: Estimate<Litres>;
    readonly overAfterPumpOffL: Estimate<Litres>;
    /** Filling, until it runs over with the pump running. */
    readonly minutesToRunOver: Estimate<Minutes>;
  };
  /** How long a full reservoir lasts in normal running. */
  readonly reservoirDays: Estimate<Days> | undefined;
}

/** What happens when the top-off stops, and when it never stops. */
export function topOffFailure(inputs: TopOffFailureInputs): Answer<TopOffFailure> | NoAnswer {
  const { source } = inputs;
  const refused =
    refuseUnlessPositive({
      evaporation: inputs.evaporationKgPerDay,
      "water of the system": inputs.systemL,
      "filling rate": source.fillLPerH,
      reservoir: source.kind === "reservoir" ? source.litres : undefined,
    }) ??
    refuseIfNegative({
      "usable water in the chamber": inputs.usableChamberL,
      "room to the lowest opening": inputs.freeL,
      "water falling back": inputs.fallbackL,
    }) ??
    refuseOutside({ salinity: inputs.salinity }, 0, 60) ??
    refuseOutside({ "usable water in the chamber": inputs.usableChamberL }, 0, inputs.systemL.low * 0.99);
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    {
      evaporation: inputs.evaporationKgPerDay,
      "water of the system": inputs.systemL,
      salinity: inputs.salinity,
      "usable water in the chamber": inputs.usableChamberL,
      "room to the lowest opening": inputs.freeL,
      "water falling back": inputs.fallbackL,
      "filling rate": source.fillLPerH,
      reservoir: source.kind === "reservoir" ? source.litres : exactly(0),
    },
    (v) => {
      const volume = v["water of the system"];
      const { salinity } = v;
      const chamber = v["usable water in the chamber"];
      const incoming = source.kind === "reservoir" ? v.reservoir : v["filling rate"] * HOURS_FOLLOWED;
      const room = v["room to the lowest opening"];
      const over = Math.max(0, incoming - room);
      return {
        hoursToDry: chamberHours(chamber, v.evaporation),
        salinityDry: salinityAfterEvaporation(volume, salinity, chamber, WATER_C),
        risePerDay: (salinity * v.evaporation) / volume,
        incoming: as<Litres>(incoming),
        // What runs over takes salt with it, so this is the mildest case.
        salinityFull: salinityOfBlend(volume, salinity, as<Litres>(incoming), FRESH, WATER_C),
        overRunning: as<Litres>(over),
        overOff: as<Litres>(Math.max(0, incoming + v["water falling back"] - room)),
        minutes: as<Minutes>((room / v["filling rate"]) * 60),
        days: as<Days>(v.reservoir / v.evaporation),
      };
    },
  );
  const freeAfterFallback = Math.max(0, inputs.freeL.low - inputs.fallbackL.high);
  const cautions: Caution[] = [];
  if (estimates.overOff.high > 0) {
    cautions.push(
      caution(
        "top-off-floods",
        { container: inputs.container, reservoirL: estimates.incoming.best, freeL: freeAfterFallback },
        "danger",
      ),
    );
  }
  if (inputs.salinity.best - estimates.salinityFull.low > RISKY_STEP) {
    cautions.push(
      caution("top-off-shifts-salinity", {
        before: inputs.salinity.best,
        after: estimates.salinityFull.best,
      }),
    );
  }
  if (source.kind === "mains") cautions.push(caution("mains-fill-never-stops", {}, "danger"));
  cautions.push(
    caution("pump-runs-dry", { hours: estimates.hoursToDry.low }),
    caution("two-shut-offs", {}, "note"),
  );
  return {
    kind: "answer",
    value: {
      ifItStops: {
        hoursToDry: estimates.hoursToDry,
        salinityThen: estimates.salinityDry,
        salinityRisePerDay: estimates.risePerDay,
      },
      ifItSticksOn: {
        litres: estimates.incoming,
        salinityThen: estimates.salinityFull,
        overWhileRunningL: estimates.overRunning,
        overAfterPumpOffL: estimates.overOff,
        minutesToRunOver: estimates.minutes,
      },
      reservoirDays: source.kind === "reservoir" ? estimates.days : undefined,
    },
    method: "Evaporation takes water and leaves salt; top-off brings fresh water back",
    working: [
      "stopped: hours = usable litres ÷ litres a day × 24; salinity = S × mass before ÷ mass left",
      "stuck on: salinity = S × mass before ÷ mass with what was added; over = added − room, and again with the water that falls back",
    ],
    constants: [],
    sources: ["mass-balance", "millero-poisson-1981", "common-practice", "assumption"],
    assumptions: [
      "all evaporation shows in one container",
      "a litre of top-off weighs a kilogram",
      ...(source.kind === "mains" ? [`mains filling is followed for ${HOURS_FOLLOWED} h`] : []),
    ],
    cautions,
    driver: drivers.hoursToDry,
  };
}
