import { describe, expect, it } from "vitest";
import { crowding, feedConversion, specificGrowth } from "../../src/core/breeding/body-growth.ts";
import * as cysts from "../../src/core/breeding/brine-shrimp.ts";
import { dayAfter, quarantineUntil } from "../../src/core/breeding/calendar.ts";
import { settle, splitCents } from "../../src/core/breeding/cost-split.ts";
import * as counted from "../../src/core/breeding/counted-sample.ts";
import * as culture from "../../src/core/breeding/culture-growth.ts";
import {
  daysForDegreeDays,
  degreeDays,
  degreeDaysOver,
  fitThermalConstant,
} from "../../src/core/breeding/degree-days.ts";
import * as effective from "../../src/core/breeding/effective-size.ts";
import { fairness, fairRota } from "../../src/core/breeding/fair-rota.ts";
import { asNumber } from "../../src/core/breeding/fraction.ts";
import { Kinships, pedigreeOf } from "../../src/core/breeding/pedigree.ts";
import { exactInterval, ratioOfCounts, wilsonInterval } from "../../src/core/breeding/proportion.ts";
import * as survival from "../../src/core/breeding/survival-curve.ts";
import type { Days, DegreesC, Fraction, Grams, Hours, Litres } from "../../src/core/quantity/units.ts";
import { as } from "../../src/core/quantity/units.ts";
import { leftAfterChanges, leftAfterFlow } from "../../src/core/water/dilution.ts";
import { type CheckRow, checkRows } from "../support/check-rows.ts";

// Each row of the table names its own source in its last column.
const rows = checkRows("breeding-checks.csv");

type Inputs = Readonly<Record<string, unknown>>;
type Result = unknown;

const n = (inputs: Inputs, name: string): number => {
  const value = inputs[name];
  if (typeof value !== "number") throw new Error(`no number called ${name}`);
  return value;
};
const ns = (inputs: Inputs, name: string): number[] => {
  const value = inputs[name];
  if (!Array.isArray(value)) throw new Error(`no list called ${name}`);
  return value.map(Number);
};
const ends = ({ low, high }: { low: number; high: number }): number[] => [low, high];
const each = (inputs: Inputs, name: string, volume: string): counted.Density =>
  counted.densityFromScoops(ns(inputs, name), n(inputs, volume));
const curveOf = (i: Inputs) => {
  const times = ns(i, "time");
  const animals = survival.rowsFromAnimals(
    times,
    ns(i, "event").map((event) => event === 1),
  );
  return survival.survivalCurve(times.length, animals);
};
const treeOf = (i: Inputs): Kinships => {
  const pedigree = pedigreeOf(
    (i["pedigree"] as (string | null)[][]).map(([id, sire, dam]) => ({
      id: id ?? "",
      sires: typeof sire === "string" ? [sire] : [],
      ...(typeof dam === "string" ? { dam } : {}),
    })),
  );
  if (pedigree === undefined) throw new Error("a loop");
  return new Kinships(pedigree);
};

const QUANTITIES: Readonly<Record<string, (i: Inputs) => Result>> = {
  poisson_exact_ci: (i) =>
    ends(counted.poissonInterval(n(i, "count"), n(i, "level"))).map((end) => end / n(i, "volume_mL")),
  density_from_subsamples_ci: (i) => {
    const found = each(i, "counts", "volume_each_mL");
    return { density: found.best, ci: ends(found) };
  },
  total_in_tank_ci: (i) => {
    const found = each(i, "counts", "volume_each_mL");
    const mL = n(i, "tank_L") * 1000;
    return { total: found.best * mL, ci: ends(found).map((end) => end * mL) };
  },
  index_of_dispersion: (i) => {
    const found = counted.dispersionOf(ns(i, "counts"));
    return { D: found.index, df: found.degreesOfFreedom, p: found.chance };
  },
  haemocytometer_mean_variance: (i) => {
    const found = counted.squaresMoments(i["squares_by_count"] as Record<string, number>);
    return { n: found.squares, mean: found.mean, var_n: found.variance };
  },
  haemocytometer_density: (i) =>
    counted.chamberDensityPerML(
      n(i, "mean_per_1mm2_square"),
      1,
      n(i, "chamber_depth_mm"),
      n(i, "dilution_factor"),
    ),
  count_needed_for_relative_half_width: (i) => counted.countNeeded(n(i, "half_width"), n(i, "level")),
  rotifer_growth_rate: (i) => {
    const r = culture.growthRatePerDay(n(i, "N0"), n(i, "Nt"), as<Days>(n(i, "days")));
    return { r, doubling_days: culture.doublingDays(r) };
  },
  max_sustainable_daily_harvest_fraction: (i) => culture.mostHarvest(n(i, "r_per_day")),
  growth_needed_for_daily_harvest: (i) => {
    const found = culture.growthForHarvest(as<Fraction>(n(i, "harvest_fraction")));
    return { r: found.ratePerDay, percent_increase_per_day: found.percentPerDay };
  },
  days_to_density: (i) => culture.daysToDensity(n(i, "N0"), n(i, "target"), n(i, "r_per_day")),
  harvest_volume: (i) => culture.harvestLitres(n(i, "needed"), n(i, "density_per_mL")),
  prey_topup: (i) =>
    culture.topUp(as<Litres>(n(i, "tank_L")), n(i, "target_per_mL"), n(i, "residual_per_mL")),
  culture_volume_for_ration: (i) =>
    culture.cultureForRation(
      n(i, "topup_per_feed") * n(i, "feeds_per_day"),
      n(i, "culture_density_per_mL"),
      as<Fraction>(n(i, "daily_harvest_fraction")),
    ),
  lifetime_rotifer_budget_per_larva: (i) => {
    const all = ns(i, "days").map((days) =>
      culture.larvaBudget(n(i, "eaten_per_day"), as<Days>(days), n(i, "offered_multiple")),
    );
    return {
      eaten: all.map(({ eaten }) => eaten),
      offered_per_day: all[0]?.offeredPerDay,
      offered: all.map(({ offered }) => offered),
    };
  },
  artemia_hatching_efficiency: (i) =>
    cysts.hatchingEfficiency(n(i, "mean_nauplii_per_250uL"), n(i, "flask_mL"), as<Grams>(n(i, "cysts_g"))),
  artemia_hatching_percentage: (i) =>
    cysts.hatchingPercentage(n(i, "nauplii"), n(i, "umbrella"), n(i, "unhatched_embryos")),
  artemia_nauplius_dry_weight: (i) =>
    cysts.naupliusDryWeightUg(n(i, "hatching_output_mg_per_g"), n(i, "hatching_efficiency_per_g")),
  artemia_full_cysts_per_gram: (i) =>
    cysts.fullCystsPerGram(n(i, "hatching_efficiency_per_g"), n(i, "hatching_percent")),
  artemia_cysts_for_nauplii: (i) =>
    "hatching_efficiency_per_g" in i
      ? cysts.cystsFor(
          n(i, "nauplii_needed"),
          { kind: "per gram", naupliiPerG: n(i, "hatching_efficiency_per_g") },
          as<Fraction>(n(i, "harvest_loss_fraction")),
        )
      : cysts.cystsFor(n(i, "nauplii_needed"), {
          kind: "per cyst",
          fullCystsPerG: n(i, "full_cysts_per_g"),
          hatchingPercent: n(i, "hatching_percent"),
        }),
  artemia_hatch_volume: (i) => cysts.hatchLitres(as<Grams>(n(i, "cysts_g")), n(i, "max_g_per_L")),
  artemia_hatching_synchrony: (i) =>
    cysts.hatchingSynchrony(as<Hours>(n(i, "T10_h")), as<Hours>(n(i, "T90_h"))),
  wilson_ci: (i) => ends(wilsonInterval(n(i, "x"), n(i, "n"), n(i, "level"))),
  clopper_pearson_ci: (i) => ends(exactInterval(n(i, "x"), n(i, "n"), n(i, "level"))),
  stage_survival_chain: (i) => {
    const numbers = [n(i, "eggs"), n(i, "hatched"), n(i, "metamorphosed"), n(i, "juveniles")];
    const { shares, overall } = survival.stageChain(numbers);
    return { hatch: shares[0], larval: shares[1], juvenile: shares[2], overall };
  },
  daily_mortality_from_survival: (i) => {
    const found = survival.dailyMortality(n(i, "survival"), as<Days>(n(i, "days")));
    return { Z: found.ratePerDay, daily_survival: found.dailySurvival };
  },
  survival_from_two_counts_ci: (i) => {
    const found = ratioOfCounts(
      { count: n(i, "start_count"), volume: n(i, "start_volume_L") },
      { count: n(i, "end_count"), volume: n(i, "end_volume_L") },
    );
    return { survival: found.best, ci: ends(found) };
  },
  kaplan_meier: (i) => {
    const steps = curveOf(i);
    return {
      t: steps.map(({ time }) => time),
      S: steps.map((step) => step.survival),
      se: steps.map(({ standardError }) => standardError),
    };
  },
  kaplan_meier_ci: (i) => {
    const step = survival.stepAt(curveOf(i), n(i, "at"));
    if (step === undefined) throw new Error("no step");
    return {
      log: ends(survival.logInterval(step, n(i, "level"))),
      "log-log": ends(survival.logLogInterval(step, n(i, "level"))),
    };
  },
  kaplan_meier_median: (i) => survival.medianSurvival(curveOf(i)),
  kaplan_meier_with_transfers: (i) => {
    const ledger = (i["ledger_day_deaths_transfers"] as number[][]).map(
      ([time = 0, deaths = 0, leftAlive = 0]) => ({ time, deaths, leftAlive, joined: 0 }),
    );
    const start = n(i, "n0");
    const step = survival.stepAt(survival.survivalCurve(start, ledger), n(i, "at"));
    if (step === undefined) throw new Error("no step");
    const dead = ledger.reduce((sum, { deaths }) => sum + deaths, 0);
    return {
      S: step.survival,
      ci_log: ends(survival.logInterval(step)),
      naive_alive_here_over_n0: (ledger.at(-1)?.leftAlive ?? 0) / start,
      naive_1_minus_deaths_over_n0: 1 - dead / start,
    };
  },
  degree_days: (i) =>
    degreeDays(as<DegreesC>(n(i, "T_C")), as<Days>(n(i, "days")), as<DegreesC>(n(i, "T0_C"))),
  thermal_constant_two_points: (i) => {
    const found = fitThermalConstant([
      { temperature: as<DegreesC>(n(i, "T1_C")), days: as<Days>(n(i, "d1")) },
      { temperature: as<DegreesC>(n(i, "T2_C")), days: as<Days>(n(i, "d2")) },
    ]);
    return { T0_C: found?.base, K_degC_d: found?.degreeDays };
  },
  degree_days_varying: (i) =>
    degreeDaysOver(
      ns(i, "daily_mean_C").map((mean) => as<DegreesC>(mean)),
      as<DegreesC>(n(i, "T0_C")),
    ),
  incubation_hours_to_days: (i) => {
    const days = as<Days>(n(i, "hours") / 24);
    return { days, degC_d: degreeDays(as<DegreesC>(n(i, "mean_T_C")), days, as<DegreesC>(0)) };
  },
  hatch_eta_from_degree_days: (i) =>
    daysForDegreeDays(
      degreeDays(as<DegreesC>(n(i, "target_degC_d")), as<Days>(1), as<DegreesC>(0)),
      as<DegreesC>(n(i, "T_C")),
      as<DegreesC>(0),
    ),
  dph_date: (i) => dayAfter(String(i["hatch_date"]), n(i, "dph")),
  specific_growth_rate: (i) => {
    const found = specificGrowth(n(i, "W0_mg"), n(i, "Wt_mg"), as<Days>(n(i, "days")));
    return { SGR: found.percentPerDay, daily_percent: found.dailyGainPercent };
  },
  feed_conversion: (i) => {
    const g = (name: string): Grams => as<Grams>(n(i, name));
    const found = feedConversion(
      g("feed_g"),
      g("biomass_start_g"),
      g("biomass_end_g"),
      g("biomass_dead_removed_g"),
    );
    return { economic_FCR: found.economic, biological_FCR: found.biological };
  },
  stocking_density: (i) => {
    const found = crowding(n(i, "n"), as<Grams>(n(i, "mean_weight_g")), as<Litres>(n(i, "tank_L")));
    return { per_L: found.perL, biomass_g: found.biomassG, g_per_L: found.gPerL };
  },
  serial_water_change_remaining: (i) => leftAfterChanges(as<Fraction>(n(i, "fraction")), n(i, "times")),
  continuous_exchange_remaining: (i) => leftAfterFlow(as<Litres>(n(i, "turnovers")), as<Litres>(1)),
  water_changes_needed: (i) => {
    const share = as<Fraction>(n(i, "fraction"));
    let changes = 0;
    while (n(i, "from") * leftAfterChanges(share, changes) > n(i, "to")) changes += 1;
    return changes;
  },
  inbreeding_F: (i) => {
    const tree = treeOf(i);
    const wanted = i["of"];
    const of = (id: unknown): number => asNumber(tree.inbreeding(String(id)));
    return Array.isArray(wanted) ? wanted.map(of) : of(wanted);
  },
  relationship_A: (i) => {
    const tree = treeOf(i);
    return (i["pairs"] as string[][]).map(([a = "", b = ""]) => asNumber(tree.relationship(a, b)));
  },
  expected_F_unknown_sire: (i) =>
    effective.expectedInbreeding(ns(i, "dam_kinship_with_candidate_sires"), ns(i, "probabilities")),
  Ne_sex_ratio: (i) => effective.effectiveFromSexes(n(i, "males"), n(i, "females")),
  delta_F_from_Ne: (i) => effective.inbreedingPerGeneration(n(i, "Ne")),
  F_after_generations: (i) => effective.inbreedingAfter(n(i, "Ne"), n(i, "generations")),
  Ne_family_size_variance: (i) => effective.effectiveFromFamilies(n(i, "N"), n(i, "Vk")),
  Ne_fluctuating: (i) => effective.effectiveOverGenerations(ns(i, "N_by_generation")),
  founder_equivalents: (i) => effective.founderEquivalents(ns(i, "contributions")),
  rota_counts: (i) => {
    const members = i["members"] as string[];
    const rota = fairRota(
      members.map((id) => ({ id, load: 0 })),
      Array.from({ length: n(i, "slots") }, (_, slot) => slot),
      () => false,
    );
    return Object.fromEntries(members.map((id) => [id, rota.filter((chosen) => chosen === id).length]));
  },
  rota_sequence: (i) => {
    const away = i["away"] as Record<string, number[]>;
    return fairRota(
      (i["members"] as string[]).map((id) => ({ id, load: 0 })),
      Array.from({ length: n(i, "slots") }, (_, slot) => slot),
      (id, slot) => away[id]?.includes(slot) ?? false,
    );
  },
  jain_fairness: (i) => fairness(ns(i, "loads")),
  cost_split_cents: (i) => splitCents(n(i, "total_cents"), ns(i, "weights")),
  settlement: (i) => {
    const paid = i["paid_cents"] as Record<string, number>;
    const names = Object.keys(paid);
    const total = names.reduce((sum, name) => sum + (paid[name] ?? 0), 0);
    const shares = splitCents(
      total,
      names.map((name) => (i["weights"] as Record<string, number>)[name] ?? 0),
    );
    const net = names.map((id, index) => ({ id, cents: (paid[id] ?? 0) - (shares[index] ?? 0) }));
    return {
      net: Object.fromEntries(net.map(({ id, cents }) => [id, cents])),
      transfers: settle(net).map(({ from, to, cents }) => [from, to, cents]),
    };
  },
  quarantine_clear_date: (i) =>
    quarantineUntil(String(i["start"]), n(i, "days"), i["restart_events"] as string[]),
};

function mustAgree(row: CheckRow, got: unknown, expected: unknown, place: string): void {
  const tolerance = Number(row.tolerance);
  if (typeof expected === "number") {
    expect(got, place).toBeTypeOf("number");
    expect(Math.abs(Number(got) - expected), `${place}: ${String(got)} for ${expected}`).toBeLessThanOrEqual(
      // A tolerance of nothing means equal as printed.
      tolerance === 0 ? 1e-9 * Math.max(1, Math.abs(expected)) : tolerance,
    );
  } else if (Array.isArray(expected)) {
    expect(got, place).toHaveLength(expected.length);
    expected.forEach((each, index) => {
      mustAgree(row, (got as unknown[])[index], each, `${place}[${index}]`);
    });
  } else if (typeof expected === "object" && expected !== null) {
    expect(Object.keys(got as object).sort(), place).toEqual(Object.keys(expected).sort());
    for (const [key, each] of Object.entries(expected))
      mustAgree(row, (got as Record<string, unknown>)[key], each, `${place}.${key}`);
  } else expect(got, place).toBe(expected);
}

describe("breeding", () => {
  it.each(rows)("$id $quantity", (row) => {
    const compute = QUANTITIES[row.quantity];
    if (compute === undefined) throw new Error(`nothing computes ${row.quantity}`);
    mustAgree(row, compute(row.inputs), JSON.parse(row.expected), row.quantity);
  });

  it("uses every row, and has no quantity without one", () => {
    expect(rows).toHaveLength(73);
    expect([...new Set(rows.map(({ quantity }) => quantity))].sort()).toEqual(Object.keys(QUANTITIES).sort());
  });
});
