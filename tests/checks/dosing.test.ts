import { expect, it } from "vitest";
import { type AlkalinityUnit, convertAlkalinity } from "../../src/core/carbonate/alkalinity-units.ts";
import * as system from "../../src/core/carbonate/carbonate-system.ts";
import { log10K1, log10K2 } from "../../src/core/carbonate/equilibrium-constants.ts";
import {
  type AlkalinitySalt,
  type MineralSalt,
  saltForAlkalinity,
  saltForCation,
} from "../../src/core/carbonate/mineral-salts.ts";
import { hydrogenActivity } from "../../src/core/carbonate/ph-scales.ts";
import { ethanolCod, ethanolMass } from "../../src/core/dosing/alcohol.ts";
import { nitrateOf, nitrogenInAlgae } from "../../src/core/dosing/algae-export.ts";
import { BINDERS, binderMass } from "../../src/core/dosing/ammonia-binder.ts";
import { ammoniumChlorideFor } from "../../src/core/dosing/ammonium-dose.ts";
import { stockForDilution } from "../../src/core/dosing/dilution.ts";
import { pumpSecondsPerDose } from "../../src/core/dosing/dosing-pump.ts";
import * as denitrification from "../../src/core/dosing/ethanol-denitrification.ts";
import { gramsForChange } from "../../src/core/dosing/target-dose.ts";
import { asNitrogen } from "../../src/core/nitrogen/nitrogen-units.ts";
import { as, type Litres, type Quantity } from "../../src/core/quantity/units.ts";
import { allowedError, checkRows } from "../support/check-rows.ts";

/** Reads one input of a row as a number with the unit that the caller needs. */
type Read = <Q extends Quantity<string>>(name: string) => Q;

const millilitres = (read: Read, name: string) => as<Litres>(read(name) / 1000);
const ethanolPoured = (read: Read) => ethanolMass(millilitres(read, "volume_ml"), read("abv"));
const harvest = (read: Read) => nitrogenInAlgae(read("wet_g"), read("dry_fraction"), read("n_fraction_dry"));

/** What computes each quantity of the table, from the row's inputs, in the row's unit. */
const compute: Record<string, (read: Read, text: (name: string) => string) => number> = {
  dilution_v1_ml: (read) => 1000 * stockForDilution(read("c1"), read("c2"), millilitres(read, "v2_ml")),
  stock_dose_ml: (read) =>
    (1000 * gramsForChange(read("target_mg_l"), read("system_l"))) /
    (read("solute_g") / (read("stock_ml") / 1000)),
  dosing_pump_seconds: (read) =>
    pumpSecondsPerDose(millilitres(read, "total_ml_d"), read("doses_per_day"), read("pump_ml_min")),
  ethanol_mass: (read) => ethanolPoured(read),
  ethanol_cod: (read) => ethanolCod(ethanolPoured(read)),
  ethanol_for_nitrate_with_growth: (read) => denitrification.ethanolForNitrate(read("no3_n_g")),
  ethanol_for_nitrate_cod_route: (read) =>
    denitrification.ethanolForNitrateByCod(read("no3_n_g"), read("cod_per_n")),
  denit_cod_demand_with_oxygen: (read) =>
    denitrification.codForSideStream(
      read("flow_m3_d"),
      { nitrateN: read("no3_n_removed_mg_l") },
      read("do_in_mg_l"),
      read("yield_cod"),
    ),
  carbon_dose_o2_demand: (read) =>
    denitrification.oxygenTakenByDose(
      millilitres(read, "volume_ml"),
      read("abv"),
      read("system_l"),
      read("yield_cod"),
    ),
  alk_recovered_denit: (read) => denitrification.alkalinityRecovered(read("no3_n_g")),
  algae_n_export: (read) => harvest(read),
  algae_no3_equivalent: (read) => nitrateOf(harvest(read), read("volume_l")),
  convert_alkalinity: (read, text) =>
    convertAlkalinity(read("value"), text("from") as AlkalinityUnit, text("to") as AlkalinityUnit),
  alk_dose_g: (read, text) =>
    saltForAlkalinity(text("salt") as AlkalinitySalt, read("delta_dkh"), read("volume_l")) / read("purity"),
  cation_dose_g: (read, text) =>
    saltForCation(
      text("salt") as Exclude<MineralSalt, AlkalinitySalt>,
      read("delta_mg_l"),
      read("volume_l"),
    ) / read("purity"),
  nh4cl_for_tan_g: (read) => ammoniumChlorideFor(read("target_tan_mg_n_l"), read("volume_l")),
  nh4cl_for_nh4_ion_g: (read) =>
    ammoniumChlorideFor(asNitrogen(read("target_nh4_mg_l"), "NH4"), read("volume_l")),
  binder_mass_per_mg_tan: (read, text) => {
    expect(text("reagent")).toBe("NaHOCH2SO3");
    expect(read("molar_mass")).toBe(BINDERS["sodium hydroxymethanesulfonate"].molarMass);
    return binderMass(read("molar_mass"), read("tan_mg_n_l"), read("volume_l"));
  },
  log10_K1_lueker: (read) => log10K1(read("salinity"), read("temp_c")),
  log10_K2_lueker: (read) => log10K2(read("salinity"), read("temp_c")),
  nbs_fH: (read) => hydrogenActivity(read("salinity"), read("temp_c")),
  ph_total_from_ta_fco2: (read) =>
    system.pHFromAlkalinityFugacity(read("ta_umol_kg"), read("fco2_uatm"), read("salinity"), read("temp_c")),
  ph_total_from_ta_dic: (read) =>
    system.pHFromAlkalinityCarbon(read("ta_umol_kg"), read("dic_umol_kg"), read("salinity"), read("temp_c")),
  fco2_from_ta_ph: (read) =>
    system.fugacityFromAlkalinityPH(read("ta_umol_kg"), read("ph_total"), read("salinity"), read("temp_c")),
};

const rows = checkRows("dosing-checks.csv");

it.each(rows.map((row) => [row.id, row.quantity, row] as const))("%s %s", (_id, _quantity, row) => {
  const used = new Set<string>();
  const input = (name: string): unknown => {
    used.add(name);
    if (!(name in row.inputs)) throw new Error(`${row.id} has no input ${name}`);
    return row.inputs[name];
  };
  const read: Read = <Q extends Quantity<string>>(name: string) => as<Q>(Number(input(name)));
  const text = (name: string): string => String(input(name));
  const value = compute[row.quantity]?.(read, text);
  expect(value, "a quantity nobody computes").toBeDefined();
  expect(Math.abs(Number(value) - Number(row.expected))).toBeLessThanOrEqual(allowedError(row));
  expect([...used].sort(), "an input left unread").toEqual(Object.keys(row.inputs).sort());
});

it("computes nothing that no row asks for", () => {
  expect(Object.keys(compute).sort()).toEqual([...new Set(rows.map((row) => row.quantity))].sort());
});
