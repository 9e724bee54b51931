import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  alongPath,
  changesToReach,
  daysToLimit,
  grow,
  longestInterval,
  PATH_START,
  type StraightPath,
  settledPeak,
  settledTrough,
  smallestFraction,
  waterChange,
} from "../../src/core/trends/balance.ts";
import {
  type CensoredRow,
  censoredRegression,
  profileInterval,
} from "../../src/core/trends/censored-regression.ts";
import { chartCells } from "../../src/core/trends/chart-cells.ts";
import { intervalUpdate } from "../../src/core/trends/interval-update.ts";
import {
  kendallExactUpperTail,
  kendallS,
  kendallTiedUpperTail,
  kendallVariance,
  mannKendall,
} from "../../src/core/trends/kendall.ts";
import { leastSquares } from "../../src/core/trends/least-squares.ts";
import {
  chiSquaredQuantileOneDf,
  logNormalBetween,
  logNormalCdf,
  normalCdf,
} from "../../src/core/trends/normal.ts";
import { productionNow } from "../../src/core/trends/production.ts";
import { studentQuantile } from "../../src/core/trends/student.ts";
import { theilSen } from "../../src/core/trends/theil-sen.ts";
import { turnbullShares, turnbullSurvival } from "../../src/core/trends/turnbull.ts";
import { allowedError, type CheckRow, checkRows } from "../support/check-rows.ts";

type Inputs = Readonly<Record<string, unknown>>;

const reference = new URL("../../data/reference/", import.meta.url);

/** A table of plain numbers and words: nothing in it is quoted. */
function readTable(file: string): Record<string, string>[] {
  const [head = "", ...lines] = readFileSync(new URL(file, reference), "utf8").trim().split(/\r?\n/);
  const names = head.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((value, i) => [names[i] ?? "", value])));
}

const rows = checkRows("trends-checks.csv");

function number(inputs: Inputs, name: string): number {
  const value = inputs[name];
  if (typeof value !== "number") throw new Error(`no number called ${name}`);
  return value;
}

function numbers(inputs: Inputs, name: string): number[] {
  return inputs[name] as number[];
}

function column(table: Record<string, string>[], name: string): number[] {
  return table.map((row) => Number(row[name]));
}

const open = (value: unknown, side: number) =>
  typeof value === "number" ? value : side * Number.POSITIVE_INFINITY;

/** Times and values of a row: from its file, or written in the row itself. */
function series(inputs: Inputs): { t: number[]; y: number[] } {
  if (typeof inputs["file"] !== "string") {
    const y = numbers(inputs, "y");
    return { t: (inputs["t"] ?? inputs["x"] ?? y.map((_, i) => i)) as number[], y };
  }
  const table = readTable(inputs["file"]);
  const has = (name: string) => table[0]?.[name] !== undefined;
  return {
    t: column(table, has("t") ? "t" : "x"),
    y: column(table, has("y") ? "y" : "value"),
  };
}

/** The values in order of their partner, as Kendall's count between two quantities needs. */
function inOrder({ t, y }: { t: number[]; y: number[] }): number[] {
  return t
    .map((at, i) => ({ at, value: y[i] ?? Number.NaN }))
    .sort((a, b) => a.at - b.at)
    .map(({ value }) => value);
}

function straight(inputs: Inputs) {
  const table = readTable(inputs["file"] as string);
  const y = column(table, "y");
  const model = inputs["model"] as string;
  const design = table.map((row) => {
    const x = Number(row["x"]);
    if (model === "noint") return [x];
    if (model === "y=B0+B1*x") return [1, x];
    if (model === "y=B0+B1*x+B2*x^2") return [1, x, x * x];
    return [1, ...[1, 2, 3, 4, 5, 6].map((i) => Number(row[`x${i}`]))];
  });
  const fit = leastSquares(design, y, model !== "noint");
  const term = Number(String(inputs["term"] ?? "B0").slice(1)) - (model === "noint" ? 1 : 0);
  return { fit, term };
}

function byName(inputs: Inputs, known: Record<string, number | undefined>): number | undefined {
  return known[inputs["what"] as string];
}

function tobit(inputs: Inputs): number | undefined {
  const table = readTable(inputs["file"] as string);
  const row = (withX: boolean): CensoredRow[] =>
    table.map((r) => {
      const bought = Number(r["durable"]);
      return {
        value: { low: bought > 0 ? bought : Number.NEGATIVE_INFINITY, high: bought },
        design: withX ? [1, Number(r["age"]), Number(r["quant"])] : [1],
        offset: 0,
      };
    });
  const fit = censoredRegression(row(true));
  const [b0, age, quant] = fit.coefficients;
  const [seB0, seAge, seQuant, seScale] = fit.standardErrors;
  return byName(inputs, {
    B0: b0,
    B_age: age,
    B_quant: quant,
    scale: fit.scale,
    loglik: fit.logLikelihood,
    loglik_intercept_only: censoredRegression(row(false)).logLikelihood,
    se_B0: seB0,
    se_B_age: seAge,
    se_B_quant: seQuant,
    se_log_scale: seScale,
  });
}

function intervalOnTime(inputs: Inputs): number | undefined {
  const table = readTable(inputs["file"] as string);
  const row = (withTime: boolean): CensoredRow[] =>
    table.map((r) => ({
      value: { low: Number(r["lo"]), high: Number(r["hi"]) },
      design: withTime ? [1, Number(r["t"])] : [1],
      offset: 0,
    }));
  const fit = censoredRegression(row(true));
  const flat = censoredRegression(row(false));
  return byName(inputs, {
    intercept: fit.coefficients[0],
    slope: fit.coefficients[1],
    scale: fit.scale,
    loglik: fit.logLikelihood,
    loglik_no_slope: flat.logLikelihood,
    LR_slope: 2 * (fit.logLikelihood - flat.logLikelihood),
    se_intercept: fit.standardErrors[0],
    se_slope: fit.standardErrors[1],
    se_log_scale: fit.standardErrors[2],
  });
}

function intervalLognormal(inputs: Inputs): number | undefined {
  const intervals = inputs["intervals"] as [number | null, number | null][];
  const fit = censoredRegression(
    intervals.map(([low, high]) => ({
      value: {
        low: low === null ? Number.NEGATIVE_INFINITY : Math.log(low),
        high: high === null ? Number.POSITIVE_INFINITY : Math.log(high),
      },
      design: [1],
      offset: 0,
    })),
  );
  return byName(inputs, {
    mu_log: fit.coefficients[0],
    sigma_log: fit.scale,
    loglik: fit.logLikelihood,
  });
}

function leftCensored(inputs: Inputs): number | undefined {
  const table = readTable(inputs["file"] as string);
  const isBelow = (r: Record<string, string>) => r["below"] === "1";
  const fit = censoredRegression(
    table.map((r) => ({
      value: {
        low: isBelow(r) ? Number.NEGATIVE_INFINITY : Math.log(Number(r["value"])),
        high: Math.log(Number(r["value"])),
      },
      design: [1],
      offset: 0,
    })),
  );
  // A density per mg/L is a density per log unit divided by the value.
  const jacobian = table.reduce((sum, r) => (isBelow(r) ? sum : sum + Math.log(Number(r["value"]))), 0);
  return byName(inputs, {
    mu_log: fit.coefficients[0],
    sigma_log: fit.scale,
    loglik_original_units: fit.logLikelihood - jacobian,
  });
}

const CHART = [0, 5, 10, 20, 40, 80, 160];

/** Path coefficients and cells of the readings of a file of readings and changes. */
function balanceRecord(file: string, uptakePerDay: number) {
  const readings: { t: number; path: StraightPath; low: number; high: number }[] = [];
  let path = PATH_START;
  let now = 0;
  for (const row of readTable(file)) {
    const t = Number(row["t"]);
    path = alongPath(path, { kind: "grow", days: t - now }, uptakePerDay);
    now = t;
    if (row["kind"] === "reading") {
      const cell = chartCells(CHART)[CHART.indexOf(Number(row["value"]))];
      readings.push({ t, path, low: cell?.low ?? Number.NaN, high: cell?.high ?? Number.NaN });
    } else {
      const change = { fraction: Number(row["fraction"]), newWaterMgPerL: Number(row["new_conc"]) };
      path = alongPath(path, { kind: "change", ...change }, uptakePerDay);
    }
  }
  return readings;
}

function balanceFit(inputs: Inputs): number | readonly number[] | undefined {
  const sigma = number(inputs, "sigma");
  const record = balanceRecord(inputs["file"] as string, number(inputs, "k")).map(
    ({ path, low, high }): CensoredRow => ({
      value: { low, high },
      design: [path.start, path.perDay],
      offset: path.offset,
    }),
  );
  const fit = censoredRegression(record, sigma);
  if (inputs["what"] === "profile80_p")
    return profileInterval(record, 1, chiSquaredQuantileOneDf(0.8), sigma);
  if (inputs["what"] === "profile95_p")
    return profileInterval(record, 1, chiSquaredQuantileOneDf(0.95), sigma);
  return byName(inputs, {
    C0: fit.coefficients[0],
    p: fit.coefficients[1],
    se_C0: fit.standardErrors[0],
    se_p: fit.standardErrors[1],
    loglik: fit.logLikelihood,
  });
}

const plan = (i: Inputs) => ({
  everyDays: number(i, "every_days"),
  fraction: number(i, "fraction"),
  newWaterMgPerL: number(i, "new_conc"),
});

/** How each quantity of the reference file is asked of the core. */
const asked: Record<string, (inputs: Inputs) => number | readonly number[] | undefined> = {
  ols_coefficient: (i) => straight(i).fit.coefficients[straight(i).term],
  ols_std_error: (i) => straight(i).fit.standardErrors[straight(i).term],
  ols_residual_sd: (i) => straight(i).fit.residualSd,
  ols_r_squared: (i) => straight(i).fit.rSquared,
  mk_S: (i) => kendallS(inOrder(series(i))),
  mk_var_S: (i) => kendallVariance(series(i).y),
  mk_z: (i) => mannKendall(inOrder(series(i))).z,
  mk_p_two_sided_normal: (i) => 2 * normalCdf(-Math.abs(mannKendall(inOrder(series(i))).z)),
  kendall_tau_a: (i) => mannKendall(inOrder(series(i))).tauA,
  sen_slope: (i) => theilSen(series(i).t, series(i).y).slope,
  sen_intercept_median: (i) => theilSen(series(i).t, series(i).y).intercept,
  sen_ci95_interpolated_rank: (i) => {
    const { low, high } = theilSen(series(i).t, series(i).y, 0.95);
    return [low, high];
  },
  mk_p_one_sided_exact: (i) =>
    i["y"] === undefined
      ? kendallExactUpperTail(number(i, "n"), number(i, "S"))
      : kendallExactUpperTail(numbers(i, "y").length, kendallS(numbers(i, "y"))),
  mk_p_two_sided_exact: (i) => 2 * kendallExactUpperTail(number(i, "n"), number(i, "S")),
  mk_p_one_sided_permutation_ties: (i) =>
    kendallTiedUpperTail(numbers(i, "y"), Math.abs(kendallS(numbers(i, "y")))),
  kendall_p_two_sided_exact: (i) =>
    mannKendall(inOrder({ t: numbers(i, "x"), y: numbers(i, "y") })).pTwoSided,
  kendall_z_no_continuity: (i) => {
    const y = inOrder({ t: numbers(i, "x"), y: numbers(i, "y") });
    return kendallS(y) / Math.sqrt(kendallVariance(y));
  },
  tobit_left0_gaussian: tobit,
  interval_gaussian_on_time: intervalOnTime,
  interval_lognormal: intervalLognormal,
  lognormal_left_censored: leftCensored,
  turnbull_survival: (i) => {
    const table = readTable(i["file"] as string);
    const shares = turnbullShares(table.map((r) => ({ low: Number(r["lo"]), high: Number(r["hi"]) })));
    const end = /,([\d.]+)\]$/.exec(i["where"] as string)?.[1];
    return turnbullSurvival(shares, Number(end));
  },
  mass_balance_interval_ml: balanceFit,
  mass_balance_loglik: (i) =>
    balanceRecord(i["file"] as string, number(i, "k")).reduce((sum, { path, low, high }) => {
      const level = path.start * number(i, "C0") + path.perDay * number(i, "p") + path.offset;
      const sigma = number(i, "sigma");
      return sum + logNormalBetween((low - level) / sigma, (high - level) / sigma);
    }, 0),
  naive_ols_slope_same_record: (i) => {
    const readings = readTable(i["file"] as string).filter((row) => row["kind"] === "reading");
    return leastSquares(
      column(readings, "t").map((t) => [1, t]),
      column(readings, "value"),
      true,
    ).coefficients[1];
  },
  grow: (i) => grow(number(i, "C"), number(i, "p"), number(i, "k"), number(i, "days")),
  water_change: (i) => waterChange(number(i, "C"), number(i, "fraction"), number(i, "new_conc")),
  settled_before_change: (i) => settledPeak(number(i, "p"), number(i, "k"), plan(i)),
  settled_after_change: (i) => settledTrough(number(i, "p"), number(i, "k"), plan(i)),
  smallest_fraction_to_keep_peak: (i) =>
    smallestFraction(
      number(i, "p"),
      number(i, "k"),
      number(i, "every_days"),
      number(i, "new_conc"),
      number(i, "limit"),
    ),
  longest_interval_to_keep_peak: (i) =>
    longestInterval(
      number(i, "p"),
      number(i, "k"),
      number(i, "fraction"),
      number(i, "new_conc"),
      number(i, "limit"),
    ),
  days_to_limit: (i) => daysToLimit(number(i, "C"), number(i, "p"), number(i, "k"), number(i, "limit")),
  changes_needed_to_reach: (i) =>
    changesToReach(number(i, "C"), number(i, "target"), number(i, "fraction"), number(i, "new_conc")),
  interval_update: (i) => {
    const update = intervalUpdate(
      number(i, "m"),
      number(i, "P"),
      number(i, "sd_read"),
      open(i["lo"], -1),
      open(i["hi"], 1),
    );
    return byName(i, {
      log_Z: update.logChance,
      mean: update.mean,
      var: update.variance,
    });
  },
  normal_cdf: (i) => normalCdf(number(i, "x")),
  log_normal_cdf: (i) => logNormalCdf(number(i, "x")),
  chi2_quantile_df1: (i) => chiSquaredQuantileOneDf(number(i, "q")),
  t_quantile: (i) => studentQuantile(number(i, "q"), number(i, "df")),
};

function expectWithin(row: CheckRow, actual: number, expected: number): void {
  if (row.tolerance === "exact") {
    expect(actual).toBe(expected);
    return;
  }
  const allowed = allowedError({ ...row, expected: String(expected) });
  expect(allowed).toBeGreaterThan(0);
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(allowed);
}

describe("reference rows for trends", () => {
  it("has rows, and a way to ask each quantity", () => {
    expect(rows).toHaveLength(141);
    expect(rows.filter((row) => asked[row.quantity] === undefined)).toEqual([]);
    expect(rows.filter((row) => row.provenance === "")).toEqual([]);
  });

  it.each(rows)("$id $quantity $provenance", (row) => {
    const { quantity, inputs, expected } = row;
    const answer = asked[quantity]?.(inputs);
    if (answer === undefined) throw new Error("the core gave no figure");
    if (expected === "never") {
      expect(answer).toBe(Number.POSITIVE_INFINITY);
    } else if (typeof answer === "number") {
      expectWithin(row, answer, Number(expected));
    } else {
      const ends = JSON.parse(expected) as number[];
      expect(answer).toHaveLength(ends.length);
      ends.forEach((end, i) => {
        expectWithin(row, answer[i] ?? Number.NaN, end);
      });
    }
  });
});

describe("tables beside the rows", () => {
  it.each(readTable("trends-data/kendall-exact.csv"))(
    "Kendall's exact chance for n $n, S $S (counting recursion, checked against R 4.2.2)",
    (row) => {
      const p = kendallExactUpperTail(Number(row["n"]), Number(row["S"]));
      expect(Math.abs(p - Number(row["P_S_at_least"]))).toBeLessThanOrEqual(1e-12);
    },
  );

  it.each(readTable("trends-data/mass-balance-13-coefficients.csv"))(
    "straight path at day $t (closed form)",
    (row) => {
      const at = balanceRecord("trends-data/mass-balance-13.csv", 0).find(({ t }) => t === Number(row["t"]));
      expect(at?.path.start).toBeCloseTo(Number(row["A"]), 9);
      expect(at?.path.perDay).toBeCloseTo(Number(row["B"]), 9);
      expect(at?.path.offset).toBeCloseTo(Number(row["D"]), 9);
    },
  );
});

describe("the record whose true production is 3 a day", () => {
  const instrument = { id: "chart", kind: "chart", steps: CHART } as const;
  const table = readTable("trends-data/mass-balance-13.csv");
  const readings = table
    .filter((row) => row["kind"] === "reading")
    .map((row) => ({ at: Number(row["t"]), value: Number(row["value"]), instrument }));
  const events = table
    .filter((row) => row["kind"] === "water_change")
    .map((row) => ({
      kind: "water change" as const,
      at: Number(row["t"]),
      fraction: Number(row["fraction"]),
      newWater: Number(row["new_conc"]),
    }));
  const found = productionNow(readings, events, 28);

  it("is told within its range, and near the likelihood fit of R (2.977, 95 % 2.09 to 3.65)", () => {
    expect(found?.refusal).toBeUndefined();
    expect(found?.net.low80).toBeLessThan(3);
    expect(found?.net.high80).toBeGreaterThan(3);
    expect(found?.net.best).toBeGreaterThan(2.08551426073);
    expect(found?.net.best).toBeLessThan(3.65306346394);
  });

  it("is not taken for the slope through its readings (R lm: 0.521)", () => {
    expect(found?.net.low95).toBeGreaterThan(0.521256828743);
  });
});
