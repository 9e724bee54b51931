import { describe, expect, it } from "vitest";
import { restingOxygenAllTeleosts } from "../../src/core/nitrogen/fish-body.ts";
import { runtime } from "../../src/core/plant/battery-runtime.ts";
import { blockedDrain } from "../../src/core/plant/blocked-drain.ts";
import { solidVolume } from "../../src/core/plant/displacement.ts";
import * as drain from "../../src/core/plant/drain-flow.ts";
import * as electric from "../../src/core/plant/electric-load.ts";
import * as evaporation from "../../src/core/plant/evaporation.ts";
import * as floor from "../../src/core/plant/floor-load.ts";
import * as heat from "../../src/core/plant/heat.ts";
import * as mixing from "../../src/core/plant/mixing.ts";
import { hoursUntilOxygen, surfaceExchange } from "../../src/core/plant/outage-oxygen.ts";
import {
  equivalentLength,
  type Fitting,
  type NominalSize,
  SCHEDULE_40_BORE_MM,
} from "../../src/core/plant/pipe-data.ts";
import * as pipe from "../../src/core/plant/pipe-loss.ts";
import type { Millimetres } from "../../src/core/plant/plant-units.ts";
import * as pump from "../../src/core/plant/pump-curve.ts";
import { type PumpOffInputs, pumpOffFlood } from "../../src/core/plant/pump-off-flood.ts";
import { permeatePerDay, purifiedWater, tapWaterUsed } from "../../src/core/plant/purified-water.ts";
import type { RowContainer } from "../../src/core/plant/row.ts";
import { chamberHours } from "../../src/core/plant/top-off-failure.ts";
import { flowForDose, uvDose } from "../../src/core/plant/uv-dose.ts";
import { UV_TARGETS, type UvTarget } from "../../src/core/plant/uv-targets.ts";
import * as weir from "../../src/core/plant/weir.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { as, type LitresPerHour, type Metres, type Quantity } from "../../src/core/quantity/units.ts";
import { readVolume } from "../../src/core/quantity/volume.ts";
import type { Shape } from "../../src/core/tank/container.ts";
import { sandSolidsL } from "../../src/core/tank/sand-bed.ts";
import { shapeVolume } from "../../src/core/tank/shape-volume.ts";
import { leftAfterChanges, leftAfterFlow } from "../../src/core/water/dilution.ts";
import { oxygenSaturation } from "../../src/core/water/oxygen-saturation.ts";
import { salinityAfterEvaporation, salinityOfBlend } from "../../src/core/water/salinity-balance.ts";
import { answered } from "../support/answers.ts";
import { allowedError, type CheckRow, checkRows } from "../support/check-rows.ts";

// Each row of the table names its own source in its last column.
const rows = checkRows("plant-checks.csv");

/** A row's input as a number with the unit the caller needs. */
type Read = <Q extends Quantity<string>>(name: string) => Q;

const FEET_PER_METRE = 1 / 0.3048;
const MM_PER_INCH = 25.4;
const US_GPM_IN_L_PER_H = 3.785411784 * 60;
const at25 = as<Quantity<"°C">>(25);
const fresh = as<Quantity<"PSS-78">>(0);

/** A vessel drawn by its water: its rim stands at the water depth. */
const drawn = (shape: Shape, read: Read) => shapeVolume(shape, read("water_depth_cm"));

/** A loss that grows with the square of the flow through one reference. */
const quadraticSystem = (read: Read) => (flow: LitresPerHour) =>
  read<Metres>("static_head_m") +
  read<Metres>("loss_at_ref_m") * (flow / read<LitresPerHour>("ref_flow_l_h")) ** 2;

const targets: Readonly<Record<string, UvTarget>> = {
  "Cryptosporidium 3": "Cryptosporidium, 3 log",
  "Cryptocaryon irritans theront, lethal in vitro": "Cryptocaryon irritans theront, lethal in vitro",
};
const fittings: Readonly<Record<string, Fitting>> = {
  elbow90_screwed: "90° elbow",
  elbow45_screwed: "45° elbow",
};
const sizes: Readonly<Record<string, NominalSize>> = { "2": "2", "1.5": "1 1/2" };

/** A display over one receiving group, for rows that give only a part of it. */
function flood(parts: {
  displayM2?: number;
  aboveMm?: number;
  boxL?: number;
  receivers: readonly RowContainer[];
  cascade?: readonly RowContainer[];
  margin?: number;
}) {
  const inputs: PumpOffInputs = {
    display: {
      name: "display",
      areaM2: exactly(as<Quantity<"m²">>(parts.displayM2 ?? 1)),
      aboveCrestMm: exactly(as<Millimetres>(parts.aboveMm ?? 0)),
      returns: [],
    },
    overflowBoxL: exactly(as<Quantity<"L">>(parts.boxL ?? 0)),
    pipes: [],
    row: [...(parts.cascade ?? []), ...parts.receivers],
    margin: parts.margin ?? 1,
  };
  return answered(pumpOffFlood(inputs)).value;
}

function receiver(
  name: string,
  areaM2: number,
  freeboardMm: number,
  onward: RowContainer["onward"],
): RowContainer {
  return { name, areaM2: exactly(as(areaM2)), freeboardMm: exactly(as(freeboardMm)), onward };
}

function linked(areas: readonly number[], freeboardMm: number): readonly RowContainer[] {
  return areas.map((area, index) =>
    receiver(
      `box ${index}`,
      area,
      freeboardMm,
      index === areas.length - 1 ? "holds the pump" : "shares level",
    ),
  );
}

/** What computes each quantity of the table, in the row's unit. */
const compute: Readonly<Record<string, (read: Read, row: CheckRow) => number | boolean>> = {
  "convert.to_litres": (read, row) => {
    const unit = { us_gal: "US gal", imp_gal: "imp gal" }[String(row.inputs["unit"])];
    const result = readVolume(`${read("value")} ${unit}`, {});
    if (result.kind !== "read") throw new Error(`not read: ${JSON.stringify(result)}`);
    return result.value.estimate.best;
  },
  "volume.box": (read) =>
    drawn(
      {
        kind: "box",
        lengthCm: read("length_cm"),
        widthCm: read("width_cm"),
        heightCm: read("water_depth_cm"),
      },
      read,
    ),
  "volume.cylinder_vertical": (read) =>
    drawn(
      { kind: "upright cylinder", diameterCm: read("inside_diameter_cm"), heightCm: read("water_depth_cm") },
      read,
    ),
  "volume.cylinder_horizontal_partial": (read) =>
    drawn(
      { kind: "horizontal drum", diameterCm: read("inside_diameter_cm"), lengthCm: read("length_cm") },
      read,
    ),
  "volume.bow_front": (read) =>
    drawn(
      {
        kind: "bow front",
        lengthCm: read("length_cm"),
        endWidthCm: read("end_width_cm"),
        bowDepthCm: read("bow_depth_cm"),
        heightCm: read("water_depth_cm"),
      },
      read,
    ),
  "volume.quarter_round": (read) =>
    drawn({ kind: "quarter round", radiusCm: read("radius_cm"), heightCm: read("water_depth_cm") }, read),
  "volume.hexagon": (read) =>
    drawn(
      { kind: "hexagon", acrossFlatsCm: read("across_flats_cm"), heightCm: read("water_depth_cm") },
      read,
    ),
  "volume.l_shape": (read) =>
    drawn(
      {
        kind: "L-shape",
        lengthCm: read("outer_length_cm"),
        widthCm: read("outer_width_cm"),
        cutLengthCm: read("cut_length_cm"),
        cutWidthCm: read("cut_width_cm"),
        heightCm: read("water_depth_cm"),
      },
      read,
    ),
  "volume.tapered_tub": (read) =>
    drawn(
      {
        kind: "tapered tub",
        bottomLengthCm: read("bottom_length_cm"),
        bottomWidthCm: read("bottom_width_cm"),
        topLengthCm: read("top_length_cm"),
        topWidthCm: read("top_width_cm"),
        heightCm: read("tub_height_cm"),
      },
      read,
    ),
  "displacement.rock": (read) => solidVolume(read("dry_mass_kg"), read("solid_density_kg_m3")),
  "displacement.sand_solids": (read) =>
    sandSolidsL(as(read("bed_area_cm2") / 1e4), read("bed_depth_cm"), read("porosity")),
  "weir.flow_francis": (read, row) =>
    weir.francisFlow(read("crest_length_m"), as(read("head_m") * 1000), contractions(row)),
  "weir.head_francis": (read, row) =>
    weir.francisHead(read("crest_length_m"), read("flow_l_h"), contractions(row)),
  "weir.head_toothed": (read) =>
    weir.toothedHead(read("slots_n"), as(read("slot_width_m") * 1000), read("flow_l_h")),
  "pipe.headloss_hw_ft_per_100ft": (read) =>
    pipe.hazenWilliamsLoss(
      as(100 / FEET_PER_METRE),
      as(read("flow_us_gpm") * US_GPM_IN_L_PER_H),
      as(read("inside_diameter_in") * MM_PER_INCH),
      read("C"),
    ) * FEET_PER_METRE,
  "pipe.headloss_hw": (read) =>
    pipe.hazenWilliamsLoss(read("length_m"), read("flow_l_h"), read("inside_diameter_mm"), read("C")),
  "pipe.headloss_darcy": (read) =>
    pipe.darcyLoss(
      read("length_m"),
      read("flow_l_h"),
      read("inside_diameter_mm"),
      read("sum_K"),
      read("kinematic_viscosity_m2_s"),
      read("roughness_mm"),
    ),
  "pipe.velocity": (read) => pipe.pipeVelocity(read("flow_l_h"), read("inside_diameter_mm")),
  "pipe.volume": (read) => pipe.pipeVolume(read("length_m"), read("inside_diameter_mm")),
  "fitting.equivalent_length_ft": (_, { inputs }) => {
    const fitting = fittings[String(inputs["fitting"])];
    const size = sizes[String(inputs["nominal_in"])];
    if (fitting === undefined || size === undefined) throw new Error("a fitting or size not in the tables");
    return (equivalentLength(fitting, SCHEDULE_40_BORE_MM[size]) ?? Number.NaN) * FEET_PER_METRE;
  },
  "drain.full_siphon_flow": (read) =>
    drain.fullSiphonFlow(
      read("drop_m"),
      read("pipe_length_m"),
      read("inside_diameter_mm"),
      // The row's sum holds the exit, which the equation counts by itself.
      read("sum_K_including_entry_exit") - 1,
      read("kinematic_viscosity_m2_s"),
    ),
  "drain.standpipe_open_crest": (read) => drain.openStandpipeFlow(read("crest_diameter_mm"), read("head_mm")),
  "drain.vertical_stack_partial": (read) =>
    drain.wallFilmFlow(read("inside_diameter_mm"), read("fill_fraction")),
  "drain.sloped_partial_manning": (read) =>
    drain.slopedFlow(read("inside_diameter_mm"), read("depth_ratio"), read("slope"), read("n")),
  "pump.operating_point_parabola": (read) => {
    const curve: pump.PumpCurve = {
      kind: "two figures",
      shutOffHeadM: read("max_head_m"),
      maxFlowLPerH: read("max_flow_l_h"),
    };
    return pump.operatingFlow((q) => pump.pumpHead(curve, q), quadraticSystem(read), pump.lastFlow(curve));
  },
  "pump.operating_point_points": (read, { inputs }) => {
    const points = inputs["curve_l_h_m"] as [number, number][];
    const curve: pump.PumpCurve = {
      kind: "points",
      points: points.map(([flow, head]) => ({ flowLPerH: as<LitresPerHour>(flow), headM: as<Metres>(head) })),
    };
    return pump.operatingFlow((q) => pump.pumpHead(curve, q), quadraticSystem(read), pump.lastFlow(curve));
  },
  "pump.wire_to_water_efficiency": (read) =>
    pump.wireToWaterEfficiency(read("flow_l_h"), read("head_m"), read("density_kg_m3"), read("electric_w")),
  "draindown.fallback_volume": (read, { inputs }) => {
    const between = inputs["intermediate_m2_mm"] as [number, number][];
    return flood({
      displayM2: read("display_surface_m2"),
      aboveMm: read("running_level_above_lowest_open_point_mm"),
      // Pipes and box stand in the row as litres already.
      boxL: read("pipe_volume_l") + read("overflow_box_drain_l"),
      cascade: between.map(([areaM2, aboveMm], index) => ({
        ...receiver(`drum ${index}`, areaM2, 100, "overflows"),
        aboveOutletMm: exactly(as<Millimetres>(aboveMm)),
      })),
      receivers: linked([1], 500),
    }).fallback.totalL.best;
  },
  "draindown.free_volume_linked": (read, { inputs }) =>
    flood({ receivers: linked(inputs["areas_m2"] as number[], read("lowest_rim_above_running_level_mm")) })
      .freeL.best,
  "draindown.linked_level_rise": (read, { inputs }) =>
    flood({ boxL: read("fallback_l"), receivers: linked(inputs["areas_m2"] as number[], 500) }).riseMm.best,
  "draindown.single_container_overflows": (read) =>
    flood({
      boxL: read("fallback_l"),
      receivers: linked([read("area_m2")], read("freeboard_mm")),
      margin: read("margin"),
    }).verdict.outcome === "floods",
  "draindown.max_display_drop_allowed": (read) =>
    flood({
      displayM2: read("display_surface_m2"),
      boxL: read("other_fallback_l"),
      // A square metre with as many millimetres of room as the row has litres.
      receivers: linked([1], read("free_volume_l")),
      margin: read("margin"),
    }).allowedDropMm.best,
  "blockage.display_rise": (read) =>
    answered(
      blockedDrain({
        pumpableL: exactly(read("pump_chamber_pumpable_l")),
        areaM2: exactly(read("display_surface_m2")),
        freeboardMm: exactly(as(100)),
      }),
    ).value.riseMm.best,
  "flow.residence_time": (read) => mixing.residenceTime(read("volume_l"), read("flow_l_h")),
  "flow.turnover": (read) => mixing.turnover(read("volume_l"), read("flow_l_h")),
  "flow.superficial_velocity": (read) =>
    mixing.superficialVelocity(read("flow_l_h"), read("cross_section_cm2")),
  "flow.ebct": (read) => mixing.residenceTime(read("media_bed_l"), read("flow_l_h")),
  "mix.cstr_fraction_remaining": (read) =>
    mixing.leftAfterFlushing(read("volume_l"), read("flow_l_h"), read("hours")),
  "mix.cstr_time": (read) =>
    mixing.flushingTime(read("volume_l"), read("flow_l_h"), as(read("percent") / 100)),
  "mix.closed_loop_two_volumes_t95": (read) =>
    mixing.closedLoopTime(read("volume1_l"), read("volume2_l"), read("flow_l_h"), as(0.95)),
  "mix.n_tank_washout": (read) => mixing.leftInTankRow(read("n_tanks"), read("theta")),
  "loop.concentration_step": (read) => mixing.concentrationStep(read("load_g_h"), read("flow_l_h")),
  "waterchange.batch_remaining": (read) => leftAfterChanges(read("fraction"), read("times")),
  "waterchange.continuous_remaining": (read) => leftAfterFlow(read("exchanged_l"), read("volume_l")),
  "waterchange.pump_time": (read) => mixing.residenceTime(read("litres"), read("pump_flow_l_h")),
  "ro.permeate_per_day": (read) =>
    permeatePerDay(
      read("rated_l_day"),
      read("rated_pressure_kpa"),
      read("feed_pressure_kpa"),
      read("feed_temp_c"),
    ),
  "ro.days_to_make": (read) =>
    answered(
      purifiedWater({
        litres: exactly(read("litres")),
        // Fed as it is rated, a unit makes its rating.
        ratedLPerDay: exactly(read("permeate_l_day")),
        ratedPressureKPa: as(345),
        feedPressureKPa: exactly(as(345)),
        feedC: exactly(at25),
      }),
    ).value.days.best,
  "ro.feed_used": (read) => tapWaterUsed(read("permeate_l"), read("waste_ratio")),
  "heat.u_value": (read) =>
    heat.uValue(
      read("inside_h_w_m2k"),
      read("thickness_mm"),
      read("conductivity_w_mk"),
      read("outside_h_w_m2k"),
    ),
  "heat.wall_loss": (read) =>
    heat.wallLoss(read("u_w_m2k"), read("area_m2"), read("water_c"), read("room_c")),
  "evaporation.shah_rate": (read) =>
    evaporation.shahRate(read("water_c"), read("room_c"), read("relative_humidity")),
  "evaporation.ashrae_per_day": (read) =>
    evaporation.ashraeEvaporation(
      read("area_m2"),
      read("water_c"),
      read("room_c"),
      read("relative_humidity"),
      read("activity_factor"),
    ),
  "evaporation.latent_power": (read) => evaporation.latentPower(read("kg_per_day"), at25),
  "topoff.salinity_if_not_replaced": (read) =>
    salinityAfterEvaporation(read("volume_l"), read("salinity"), read("evaporated_l"), at25),
  "topoff.salinity_if_reservoir_dumps": (read) =>
    salinityOfBlend(read("volume_l"), read("salinity"), read("added_fresh_l"), fresh, at25),
  "topoff.pump_chamber_hours": (read) => chamberHours(read("usable_chamber_l"), read("evaporation_l_day")),
  "heat.time_constant": (read) => heat.timeConstant(read("volume_l"), read("ua_w_k")),
  "heat.outage_temperature": (read) =>
    heat.driftingTemperature(
      read("volume_l"),
      read("ua_w_k"),
      read("start_c"),
      read("room_c"),
      read("hours"),
    ),
  "heat.raise_energy": (read) => heat.warmingEnergy(read("volume_l"), read("delta_k")),
  "chiller.tons_to_kw": (read) => (read("tons") * heat.WATTS_PER_TON) / 1000,
  "chiller.pulldown_hours": (read) =>
    heat.pulldownTime(read("volume_l"), read("delta_k"), read("capacity_w"), read("steady_heat_gain_w")),
  "loop.temperature_step": (read) => heat.temperatureStep(read("power_w"), read("flow_l_h")),
  "electric.monthly_cost": (read) =>
    electric.energyCost(read("watts"), read("hours_per_day"), read("price_per_kwh"), read("days")),
  "electric.min_breaker_a": (read) =>
    electric.leastRating(read("continuous_w"), read("noncontinuous_w"), read("volts")),
  "electric.max_continuous_w": (read) => electric.mostContinuous(read("breaker_a"), read("volts")),
  "electric.current": (read) => electric.current(read("watts"), read("volts"), read("power_factor")),
  "battery.runtime": (read) =>
    runtime(
      read("amp_hours"),
      read("volts"),
      read("depth_of_discharge"),
      read("inverter_efficiency"),
      read("load_w"),
    ),
  "structure.pressure": (read) => floor.floorPressure(read("total_mass_kg"), read("footprint_m2")),
  "structure.psf": (read) =>
    floor.poundsPerSquareFoot(floor.floorPressure(read("total_mass_kg"), read("footprint_m2"))),
  "structure.water_depth_equal_to_live_load": (read) =>
    floor.depthEqualToLoad(read("live_load_psf"), read("density_kg_m3")),
  "structure.foot_bearing": (read) =>
    floor.footBearing(read("total_mass_kg"), read("feet_n"), read("foot_area_cm2")),
  "oxygen.saturation": (read) => oxygenSaturation(read("salinity"), read("temp_c")),
  "oxygen.resting_rate": (read) =>
    restingOxygenAllTeleosts(read("fish_mass_g"), read("temp_c")) / (read("fish_mass_g") / 1000),
  "oxygen.outage_time": (read) =>
    hoursUntilOxygen(
      read("volume_l"),
      read("start_mg_l"),
      read("limit_mg_l"),
      read("demand_mg_h"),
      surfaceExchange(read("k_l_cm_h"), read("surface_m2")),
      read("saturation_mg_l"),
    ),
  "uv.dose": (read) => uvDose(read("avg_intensity_mw_cm2"), read("contact_volume_l"), read("flow_l_h")),
  "uv.max_flow_for_dose": (read) =>
    flowForDose(read("avg_intensity_mw_cm2"), read("contact_volume_l"), read("dose_mj_cm2")),
  "uv.required_dose": (_, { inputs }) => {
    const target = targets[[inputs["target"], inputs["log_inactivation"]].filter(Boolean).join(" ")];
    if (target === undefined) throw new Error("a target not in the table");
    return UV_TARGETS[target].dose.best;
  },
};

describe("rows of published values and first principles", () => {
  it.each(rows)("$id $quantity", (row) => {
    const read: Read = (name) => {
      const value = row.inputs[name];
      if (typeof value !== "number") throw new Error(`${row.id}: no number called ${name}`);
      return as(value);
    };
    const found = compute[row.quantity]?.(read, row);
    if (found === undefined) throw new Error(`${row.id}: nothing computes ${row.quantity}`);
    if (typeof found === "boolean") {
      expect(String(found)).toBe(row.expected);
      return;
    }
    const allowed = row.tolerance === "exact" ? 0 : allowedError(row);
    expect(Math.abs(found - Number(row.expected))).toBeLessThanOrEqual(allowed);
  });

  it("has all its rows, and a row for each quantity computed", () => {
    expect(rows).toHaveLength(84);
    expect(new Set(rows.map(({ quantity }) => quantity))).toEqual(new Set(Object.keys(compute)));
  });
});

function contractions(row: CheckRow): weir.EndContractions {
  const count = row.inputs["end_contractions"];
  if (count !== 0 && count !== 1 && count !== 2)
    throw new Error(`${row.id}: ${String(count)} end contractions`);
  return count;
}
