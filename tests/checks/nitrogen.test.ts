import { describe, expect, it } from "vitest";
import { toTotalScale } from "../../src/core/carbonate/ph-scales.ts";
import * as ammonia from "../../src/core/nitrogen/ammonia-fraction.ts";
import * as chamber from "../../src/core/nitrogen/chamber-oxygen.ts";
import { cyclingState } from "../../src/core/nitrogen/cycling-model.ts";
import { firstBelow, runCycle } from "../../src/core/nitrogen/cycling-run.ts";
import * as body from "../../src/core/nitrogen/fish-body.ts";
import * as food from "../../src/core/nitrogen/food-nitrogen.ts";
import * as kinetics from "../../src/core/nitrogen/growth-kinetics.ts";
import * as meal from "../../src/core/nitrogen/meal-pulse.ts";
import * as media from "../../src/core/nitrogen/media.ts";
import * as nitrate from "../../src/core/nitrogen/nitrate.ts";
import * as nitrification from "../../src/core/nitrogen/nitrification.ts";
import { asNitrogen, convertNitrogen, fromNitrogen } from "../../src/core/nitrogen/nitrogen-units.ts";
import { as, type DegreesC, type Quantity } from "../../src/core/quantity/units.ts";
import * as oxygen from "../../src/core/water/oxygen-saturation.ts";
import { allowedError, checkRows } from "../support/check-rows.ts";

/** Reads one input of a row as a number with the unit that the caller needs. */
type Read = <Q extends Quantity<string>>(name: string) => Q;
type ReadText = <T extends string>(name: string) => T;

const one = (read: Read) => read<Quantity<"fraction">>("usable_fraction");

/** Nitrate gained between two changes, from the figures of a water-change row. */
const rise = (read: Read) =>
  nitrate.nitrateRise(read("production_g_n_d"), read("period_d"), read("volume_l"));

const POINTS_PER_DAY = 50;

/** One dose of ammonia and nothing else, followed for sixty days. */
function singleDose(read: Read, text: ReadText) {
  if (text("params") !== "two-step reference set") throw new Error("another set of parameters");
  return runCycle(
    {
      temperatureC: read("temp_c"),
      oxygenMgPerL: read("o2_mg_l"),
      saltFactor: read("salt_factor"),
      ammoniaGrowthScale: 1,
      nitriteGrowthScale: 1,
      halfFoodScale: 1,
      mineralisationPerDay: 0,
      loadMgNPerLDay: 0,
      loadAlkalinity: 0,
      isAlkalinityLimited: false,
    },
    cyclingState(read("tan0_mg_l"), read("xa0"), read("xn0"), 3),
    {
      days: 60,
      pointsPerDay: POINTS_PER_DAY,
      againBelow: 0,
      waitsAboveNitrite: 0,
      handUntilDay: -1,
      loggedDoses: [],
      waterChanges: [],
      sourceAlkalinity: 3,
      proof: 2,
      passBelow: 0.1,
    },
  );
}

/** What computes each quantity of the table, from the row's inputs, in the row's unit. */
const compute: Record<string, (read: Read, text: ReadText) => number> = {
  nh3_fraction_fresh: (read) => ammonia.ammoniaFraction(ammonia.ammoniumPkaFresh(read("temp_c")), read("ph")),
  nh3_fraction_seawater: (read) =>
    ammonia.ammoniaFraction(ammonia.ammoniumPkaKhoo(read("salinity"), read("temp_c")), read("ph")),
  nh3_from_tan_fresh: (read) =>
    read("tan_mg_l") * ammonia.ammoniaFraction(ammonia.ammoniumPkaFresh(read("temp_c")), read("ph")),
  nh3_from_tan_seawater: (read) =>
    read("tan_mg_n_l") *
    ammonia.ammoniaFraction(ammonia.ammoniumPkaKhoo(read("salinity"), read("temp_c")), read("ph")),
  nh3_fraction_clegg_whitfield: (read, text) => {
    if (text("basis") !== "molal") throw new Error("only the molal basis is tabulated");
    const pKa = ammonia.ammoniumPkaCleggWhitfield(read("salinity"), read("temp_c"));
    const shift = text("scale") === "free" ? -toTotalScale("free", read("salinity"), read("temp_c")) : 0;
    return ammonia.ammoniaFraction(pKa + shift, read("ph"));
  },
  pka_nh4_total_scale: (read) => ammonia.ammoniumPkaTotalScale(read("salinity"), read("temp_c")),
  pka_nh4_khoo: (read) => ammonia.ammoniumPkaKhoo(read("salinity"), read("temp_c")),
  epa_saltwater_total_ammonia: (read, text) =>
    ammonia.epaTotalAmmoniaLimit(
      text("criterion") === "CMC" ? "maximum" : "continuous",
      read("ph"),
      read("temp_c"),
      read("salinity"),
    ),
  convert_nitrogen: (read, text) => convertNitrogen(read("value_mg_l"), text("from"), text("to")),
  fish_mass_from_length: (read, text) => {
    text("species");
    return body.fishMass({ a: read("a"), b: read("b"), lengthUnit: "cm" }, read("length_cm"));
  },
  fish_o2_stonefish_mg_h: (read) => body.restingOxygenAmbush(read("mass_g")),
  fish_o2_clarke_johnston_mg_h: (read) =>
    body.restingOxygenAllTeleosts(read("mass_g"), read("temp_c"), read("exponent")),
  tan_from_feed: (read) =>
    food.tanByPelletRule(read("feed_g_d"), read("protein_fraction_as_fed"), read("factor")),
  tan_from_feed_n_route: (read) =>
    food.tanFromFeed(read("feed_g_d"), read("protein_fraction_as_fed"), read("n_excreted_fraction")),
  protein_as_fed: (read) => food.proteinAsFed(read("moisture"), read("protein_dry_basis")),
  meal_ammonia_cumulative: (read) => meal.mealAmmoniaSoFar(read("tan_total_g"), read("tau_h"), read("hours")),
  meal_ammonia_peak_rate: (read) => meal.mealAmmoniaPeak(read("tan_total_g"), read("tau_h")),
  o2_demand_nitrification: (read) => nitrification.nitrificationOxygen(read("tan_g_d"), read("coef")),
  alk_demand_nitrification: (read) => {
    // The row's rounded 7.14 g CaCO₃ per g N is what the stoichiometry must reproduce.
    expect(nitrification.nitrificationCaCO3(as(1))).toBeCloseTo(read("coef"), 1);
    return nitrification.nitrificationCaCO3(read("tan_g_d"));
  },
  dkh_drop_nitrification: (read) =>
    nitrification.alkalinityDrop(read("tan_g_d"), read("volume_l"), "ammonium salt"),
  dkh_drop_feed_to_nitrate: (read) =>
    nitrification.alkalinityDrop(
      as(
        food.feedNitrogen(read("feed_g_d"), read("protein_fraction_as_fed")) * read("n_to_nitrate_fraction"),
      ),
      read("volume_l"),
      "food",
    ),
  alkalinity_water_change_steady_before: (read) =>
    nitrification.alkalinityBeforeChange(read("source_dkh"), read("loss_per_period_dkh"), read("fraction")),
  media_area_areal_rate: (read) => nitrification.filmArea(read("tan_g_d"), read("rate_g_m2_d")),
  media_area_first_order: (read) =>
    nitrification.filmArea(
      read("tan_g_d"),
      nitrification.filmUptake(read("tan_mg_l"), read("k1a_m_d"), nitrification.HIGHEST_UPTAKE.fresh),
    ),
  media_volume: (read) => media.mediaVolume(read("area_m2"), read("specific_surface_m2_m3"), one(read)),
  o2_penetration_mm: (read) =>
    nitrification.oxygenPenetration(read("deff_m2_s"), read("do_mg_l"), read("k0_g_m3_d")),
  tan_steady_single_pass: (read) =>
    nitrification.tanWithSinglePass(read("tan_load_g_d"), read("flow_l_h"), read("removal_per_pass")),
  nitrate_water_change_steady: (read, text) => {
    const steady = nitrate.steadyNitrate(
      rise(read),
      read("fraction"),
      asNitrogen(read("source_no3_mg_l"), "NO3"),
    );
    return fromNitrogen(text("when") === "before" ? steady.before : steady.after, "NO3");
  },
  nitrate_water_change_cycle_before: (read) =>
    fromNitrogen(
      nitrate.nitrateBeforeChange(
        read("cycle"),
        asNitrogen(read("start_no3_mg_l"), "NO3"),
        rise(read),
        read("fraction"),
        asNitrogen(read("source_no3_mg_l"), "NO3"),
      ),
      "NO3",
    ),
  nitrate_continuous_exchange_steady: (read) =>
    fromNitrogen(
      nitrate.nitrateWithExchange(
        read("production_g_n_d"),
        read("exchange_l_d"),
        asNitrogen(read("source_no3_mg_l"), "NO3"),
      ),
      "NO3",
    ),
  chamber_do_out_zero_order: (read) =>
    chamber.oxygenOutFixedDemand(
      chamber.cubicMetresPerDay(read("flow_l_h")),
      read("do_in_mg_l"),
      read("o2_demand_g_d"),
      read("aeration_g_d"),
    ),
  chamber_do_out_monod: (read) =>
    chamber.oxygenOutMonod(read("flow_m3_d"), read("do_in_mg_l"), read("our_max_g_d"), read("k_o_mg_l"), {
      capacityM3PerDay: read("kla_v_m3_d"),
      saturation: read("do_sat_mg_l"),
    }),
  flow_for_low_oxygen: (read) =>
    chamber.flowForLowOxygen(read("o2_demand_g_d"), read("do_in_mg_l"), read("do_target_mg_l")),
  temp_factor_arrhenius: (read) =>
    kinetics.arrheniusFactor(read("ea_j_mol"), read("temp_c"), read<DegreesC>("temp_ref_c")),
  temp_factor_asm: (read) => kinetics.asmRate(read("k20"), read("k10"), read("temp_c")),
  monod_aob_rate: (read) =>
    read("mu_max_d") *
    kinetics.monod(read("s_nh_mg_l"), read("k_nh")) *
    kinetics.monod(read("o2_mg_l"), read("k_o")),
  "cycling_day_tan_below_0.1": (read, text) => firstBelow(singleDose(read, text).tan, 0.1, POINTS_PER_DAY),
  "cycling_day_no2_below_0.1": (read, text) => {
    const { nitrite } = singleDose(read, text);
    return firstBelow(nitrite, 0.1, POINTS_PER_DAY, nitrite.indexOf(Math.max(...nitrite)));
  },
  cycling_no2_peak: (read, text) => Math.max(...singleDose(read, text).nitrite),
  o2_saturation_mg_l: (read) => oxygen.oxygenSaturation(read("salinity"), read("temp_c")),
};

const rows = checkRows("nitrogen-checks.csv");

describe("published nitrogen values", () => {
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
    const value = rule(read, text);
    expect(Number.isFinite(value)).toBe(true);
    expect(Math.abs(value - Number(row.expected))).toBeLessThanOrEqual(allowedError(row));
    expect([...used].sort()).toEqual(Object.keys(row.inputs).sort());
  });

  it("has a row for everything it knows how to compute", () => {
    const asked = new Set(rows.map((row) => row.quantity));
    expect(Object.keys(compute).filter((quantity) => !asked.has(quantity))).toEqual([]);
  });
});
