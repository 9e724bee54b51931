import { describe, expect, it } from "vitest";
import { as, type Quantity } from "../../src/core/quantity/units.ts";
import * as conductivity from "../../src/core/water/conductivity.ts";
import * as density from "../../src/core/water/density.ts";
import * as hydrometer from "../../src/core/water/hydrometer.ts";
import * as oxygen from "../../src/core/water/oxygen-saturation.ts";
import * as recipes from "../../src/core/water/recipes.ts";
import * as composition from "../../src/core/water/reference-composition.ts";
import * as balance from "../../src/core/water/salinity-balance.ts";
import * as scales from "../../src/core/water/salinity-scales.ts";
import * as mixing from "../../src/core/water/salt-balance.ts";
import * as gravity from "../../src/core/water/specific-gravity.ts";
import { allowedError, checkRows } from "../support/check-rows.ts";

/** Reads one input of a row as a number with the unit that the caller needs. */
type Read = <Q extends Quantity<string>>(name: string) => Q;
type ReadText = <T extends string>(name: string) => T;

const tankKg = (read: Read) =>
  as<Quantity<"kg">>((read("V_L") * density.seawaterDensity(read("SP_now"), read("t_C"))) / 1000);

const scale = (read: Read): hydrometer.HydrometerScale => ({
  calibrationC: read("t_cal_C"),
  referenceC: read("t_ref_C"),
  expansion: read("glass_gamma_per_C"),
});

/** What computes each quantity of the table, from the row's inputs, in the row's unit. */
const compute: Record<string, (read: Read, text: ReadText) => number> = {
  practical_salinity_from_ratio: (read) =>
    conductivity.salinityFromRatio(read("R"), read("t68_C"), read("p_dbar")),
  practical_salinity_from_conductivity: (read) =>
    conductivity.salinityFromConductivity(read("C_mS_cm"), read("t_C")),
  conductivity_from_practical_salinity: (read) =>
    conductivity.conductivityFromSalinity(read("SP"), read("t_C")),
  practical_salinity_from_C25: (read) => conductivity.salinityFromConductivityAt25(read("C25_mS_cm")),
  practical_salinity_from_linear_compensated: (read) =>
    conductivity.salinityFromLinearCompensated(
      read("C25_display_mS_cm"),
      read("t_C"),
      read("alpha_pct_per_C"),
    ),
  density_eos80_one_atm: (read) => density.densityAtT68(read("S"), read("t68_C")),
  density_seawater: (read) => density.seawaterDensity(read("SP"), read("t_C")),
  specific_gravity: (read) => gravity.specificGravity(read("SP"), read("t_C"), read("tref_C")),
  practical_salinity_from_specific_gravity: (read) =>
    gravity.salinityFromSpecificGravity(read("SG"), read("t_C"), read("tref_C")),
  practical_salinity_from_hydrometer: (read) =>
    hydrometer.salinityFromHydrometer(read("reading"), read("t_sample_C"), scale(read)),
  hydrometer_corrected_sg: (read) =>
    hydrometer.hydrometerCorrected(read("reading"), read("t_sample_C"), scale(read)),
  hydrometer_reading: (read) => hydrometer.hydrometerReading(read("SP"), read("t_sample_C"), scale(read)),
  absolute_salinity: (read) => scales.absoluteSalinity(read("SP")),
  practical_salinity_from_absolute: (read) => scales.practicalFromAbsolute(read("SA_g_kg")),
  chlorinity: (read) => scales.chlorinity(read("SP")),
  salt_concentration_g_per_L: (read) => scales.saltGramsPerLitre(read("SP"), read("t_C")),
  practical_salinity_from_g_per_L: (read) =>
    scales.salinityFromGramsPerLitre(read("salt_g_per_L"), read("t_C")),
  pss78_in_range: (read) => (scales.inPss78Range(read("SP")) ? 1 : 0),
  salt_mass_for_final_volume: (read) =>
    1000 *
    mixing.batchForFinalVolume(read("V_final_L"), read("SP"), read("t_C"), read("yield_factor")).saltKg,
  water_volume_for_final_volume: (read) =>
    mixing.batchForFinalVolume(read("V_final_L"), read("SP"), read("t_C"), read("yield_factor")).waterL,
  salt_mass_for_water_volume: (read) =>
    1000 *
    mixing.batchForWaterVolume(read("V_water_L"), read("SP"), read("t_C"), read("yield_factor")).saltKg,
  final_volume_for_water_volume: (read) =>
    mixing.batchForWaterVolume(read("V_water_L"), read("SP"), read("t_C"), read("yield_factor")).finalVolumeL,
  yield_factor_from_trial: (read) =>
    mixing.yieldFromWaterTrial(
      read("V_water_L"),
      as<Quantity<"kg">>(read("salt_product_g") / 1000),
      read("SP_measured"),
      read("t_C"),
    ),
  dry_salt_to_raise: (read) =>
    1000 * mixing.drySaltToRaise(tankKg(read), read("SP_now"), read("SP_target"), read("yield_factor")),
  salinity_after_water_change: (read) =>
    balance.salinityAfterSwap(read("V_L"), read("V_changed_L"), read("SP_tank"), read("SP_new"), read("t_C")),
  water_change_volume_for_target: (read) =>
    balance.swapVolumeForTarget(read("V_L"), read("SP_tank"), read("SP_new"), read("SP_target"), read("t_C")),
  salinity_of_blend: (read) =>
    balance.salinityOfBlend(read("V1_L"), read("SP1"), read("V2_L"), read("SP2"), read("t_C")),
  salinity_after_evaporation: (read) =>
    balance.salinityAfterEvaporation(read("V_L"), read("SP"), read("V_evaporated_L"), read("t_C")),
  freshwater_volume_to_target: (read) =>
    balance.freshWaterToReach(read("V_L"), read("SP_now"), read("SP_target"), read("t_C")),
  oxygen_saturation_mg_L: (read) => oxygen.oxygenSaturation(read("SP"), read("t_C"), read("P_kPa")),
  oxygen_saturation_mg_L_at_altitude: (read) =>
    oxygen.oxygenSaturation(read("SP"), read("t_C"), oxygen.pressureAtAltitude(read("altitude_m"))),
  oxygen_saturation_umol_kg: (read) => oxygen.oxygenSaturationPerKg(read("SP"), read("t_C")),
  oxygen_percent_saturation: (read) =>
    oxygen.percentSaturation(
      read("DO_mg_L"),
      oxygen.oxygenSaturation(read("SP"), read("t_C"), read("P_kPa")),
    ),
  pressure_from_altitude: (read) => oxygen.pressureAtAltitude(read("altitude_m")),
  recipe_kester_1967_salt_g: (read, text) => recipes.kesterSaltGrams(text("salt"), read("mass_solution_kg")),
  recipe_astm_d1141_salt_g: (read, text) => recipes.astmSaltGrams(text("salt"), read("volume_solution_L")),
  reference_composition_ion_g_per_kg: (read, text) => composition.ionGramsPerKg(text("ion"), read("SP")),
};

const rows = checkRows("seawater-checks.csv");

describe("published seawater values", () => {
  it.each(rows)("$id $quantity", (row) => {
    const rule = compute[row.quantity];
    if (rule === undefined) throw new Error(`nothing computes ${row.quantity}`);
    const used = new Set<string>();
    const read: Read = <Q extends Quantity<string>>(name: string) => {
      used.add(name);
      const value = row.inputs[name];
      if (typeof value !== "number") throw new Error(`${row.id} has no number ${name}`);
      return as<Q>(value);
    };
    const text: ReadText = <T extends string>(name: string) => {
      used.add(name);
      const value = row.inputs[name];
      if (typeof value !== "string") throw new Error(`${row.id} has no text ${name}`);
      return value as T;
    };
    if (row.expected === "REJECT") {
      expect(() => rule(read, text)).toThrow(RangeError);
    } else {
      const value = rule(read, text);
      expect(Number.isFinite(value)).toBe(true);
      expect(Math.abs(value - Number(row.expected))).toBeLessThanOrEqual(allowedError(row));
    }
    expect([...used].sort()).toEqual(Object.keys(row.inputs).sort());
  });

  it("has a row for everything it knows how to compute", () => {
    const asked = new Set(rows.map((row) => row.quantity));
    expect(Object.keys(compute).filter((quantity) => !asked.has(quantity))).toEqual([]);
  });
});
