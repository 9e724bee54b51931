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

const sp = (s: number) => as<Quantity<"PSS-78">>(s);
const celsius = (t: number) => as<Quantity<"°C">>(t);

describe("whole tables", () => {
  // Conductivity in mS/cm, TEOS-10 reference library (gsw 3.6.16, C_from_SP), columns 5 to 35 °C.
  const TABLE_C = [5, 10, 15, 20, 25, 30, 35];
  it.each([
    [0.1, [0.131, 0.1501, 0.1701, 0.1908, 0.2122, 0.2342, 0.2567]],
    [1, [1.2165, 1.3938, 1.5788, 1.7708, 1.9689, 2.1724, 2.3806]],
    [5, [5.5654, 6.3659, 7.2009, 8.0667, 8.9599, 9.8769, 10.8146]],
    [20, [20.1102, 22.9391, 25.8873, 28.942, 32.091, 35.3223, 38.6243]],
    [35, [33.4554, 38.0897, 42.9175, 47.918, 53.071, 58.357, 63.7569]],
    [40, [37.7175, 42.9197, 48.3387, 53.951, 59.7339, 65.6656, 71.7249]],
  ])("conductivity at salinity %d", (s, printed) => {
    for (const [column, expected] of printed.entries()) {
      const found = conductivity.conductivityFromSalinity(sp(s), celsius(TABLE_C[column] ?? Number.NaN));
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-4);
    }
  });

  // Specific gravity of salinity 35, 10 and 42 (gsw 3.6.16, EOS-80 agrees): sample and reference °C.
  it.each([
    [25, 25, 1.00753, 1.02637, 1.03169],
    [20, 20, 1.0076, 1.0266, 1.03196],
    [(60 - 32) / 1.8, (60 - 32) / 1.8, 1.00768, 1.02686, 1.03227],
    [15.6, 4, 1.0067, 1.02586, 1.03126],
    [20, 4, 1.00582, 1.02479, 1.03014],
  ])("specific gravity at %d over %d °C", (sampleC, referenceC, at10, at35, at42) => {
    const found = [10, 35, 42].map((s) =>
      gravity.specificGravity(sp(s), celsius(sampleC), celsius(referenceC)),
    );
    for (const [index, expected] of [at10, at35, at42].entries()) {
      expect(Math.abs((found[index] ?? Number.NaN) - expected)).toBeLessThanOrEqual(1.5e-5);
    }
  });

  // What a glass hydrometer shows in water of salinity 35, by sample temperature: gsw 3.6.16 densities and
  // the glass coefficient of ISO 1768:1975.
  it.each([
    [25, 25, [1.02875, 1.02767, 1.02665, 1.02609, 1.0255]],
    [20, 20, [1.02769, 1.0266, 1.02558, 1.02503, 1.02444]],
    [(60 - 32) / 1.8, (60 - 32) / 1.8, [1.02697, 1.02589, 1.02487, 1.02431, 1.02372]],
    [20, 4, [1.02587, 1.02479, 1.02377, 1.02321, 1.02262]],
  ])("a hydrometer made for %d over %d °C", (madeC, referenceC, printed) => {
    const made = {
      calibrationC: celsius(madeC),
      referenceC: celsius(referenceC),
      expansion: hydrometer.GLASS_EXPANSION,
    };
    for (const [index, sampleC] of [15, 20, 24, 26, 28].entries()) {
      const found = hydrometer.hydrometerReading(sp(35), celsius(sampleC), made);
      expect(Math.abs(found - (printed[index] ?? Number.NaN))).toBeLessThanOrEqual(1.5e-5);
    }
  });

  it("the recipes add up to seawater", () => {
    // Chloride of each salt: Cl 35.453 g/mol; Br counts as Cl in chlorinity (definition). Kester et al. 1967
    // aim at chlorinity 19.373, ASTM D1141-98 states 19.38 g/kg (its litre weighs 1.0248 kg at 20 °C).
    const chlorideShare: Record<string, number> = {
      NaCl: 35.453 / 58.443,
      KCl: 35.453 / 74.551,
      KBr: 35.453 / 119.002,
      MgCl2: 70.906 / 95.211,
      CaCl2: 70.906 / 110.984,
      SrCl2: 70.906 / 158.526,
      "MgCl2.6H2O": 70.906 / 203.303,
      "CaCl2.2H2O": 70.906 / 147.015,
      "SrCl2.6H2O": 70.906 / 266.618,
    };
    const chloride = (recipe: Record<string, number>) =>
      Object.entries(recipe).reduce((sum, [salt, grams]) => sum + grams * (chlorideShare[salt] ?? 0), 0);
    // Chlorinity is 0.3285234 × the silver (107.868 g/mol) that takes up the halide: 0.99955 × halide as chloride.
    expect(Math.abs(chloride(recipes.KESTER_1967_G_PER_KG) * 0.99955 - 19.373)).toBeLessThan(0.002);
    expect(Math.abs((chloride(recipes.ASTM_D1141_G_PER_L) / 1.0248) * 0.99955 - 19.38)).toBeLessThan(0.02);
  });

  it("the reference composition is all of the salt", () => {
    const sum = Object.values(composition.ION_MASS_FRACTION).reduce((total, share) => total + share, 0);
    expect(sum).toBeCloseTo(1, 6); // mass fractions, by definition
  });
});

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
