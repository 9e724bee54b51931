import { describe, expect, it } from "vitest";
import type { ParameterId } from "../../../../src/core/log/parameters.ts";
import { looksLikeSlip, type PastValue } from "../../../../src/core/log/slips.ts";

const START = Date.UTC(2026, 0, 4, 19);
const at = (day: number) => new Date(START + day * 86_400_000).toISOString();
const record = (...values: number[]): PastValue[] => values.map((value, i) => ({ value, at: at(7 * i) }));
const ask = (parameter: ParameterId, value: number, past: readonly PastValue[], rest = {}) =>
  looksLikeSlip({ parameter, value, at: at(7 * past.length), ...rest }, past);

describe("a slip is asked about", () => {
  it("when nitrate as nitrogen stands where the ion was meant", () => {
    // 25 mg/L NO₃ is 25 ÷ 4.4268 = 5.65 mg/L N.
    const asked = ask("nitrate", 5.65, record(22, 26, 24, 28, 23));
    expect(asked?.choices[0]).toMatchObject({ kind: "value", what: expect.stringContaining("NO₃-N") });
    expect(asked?.choices[0]).toHaveProperty("value", expect.closeTo(25, 1));
    expect(asked?.choices.at(-1)).toEqual({ kind: "keep", label: "Yes, 5.65 mg/L as NO₃" });
  });

  it.each([
    ["calcium", 43, [430, 420, 440], 430],
    ["alkalinity", 7.5, [2.7, 2.6, 2.7, 2.8], 2.68], // 7.5 dKH ÷ 2.804
    ["salinity", 1.0264, [34.8, 35, 35.2], 35], // 1.0264 at 25/25 °C is 35.0 (EOS-80)
    ["temperature", 2.55, [25, 25.5, 26], 25.5],
    ["phosphate", 0.1, [0.3, 0.33, 0.31, 0.29, 0.3], 0.307], // × 3.0662
    ["ammonia", 0.644, [0.5, 0.52, 0.49, 0.51, 0.5, 0.53, 0.48], 0.5], // 0.5 mg/L N is 0.644 as NH₄
    ["ph", 0.82, [8.1, 8.2, 8.3], 8.2],
  ] as const)("%s %s after %j is probably %s", (parameter, typed, past, meant) => {
    const [first] = ask(parameter, typed, record(...past))?.choices ?? [];
    expect(first).toHaveProperty("value", expect.anything());
    if (first?.kind === "value") expect(first.value / meant).toBeCloseTo(1, 1);
  });

  it("when the value fits another tank of the member's", () => {
    const others = [{ name: "Cold pool", recent: record(80, 85, 78, 82) }];
    const past = record(10, 12, 11, 10);
    const asked = looksLikeSlip({ parameter: "nitrate", value: 82, at: at(28) }, past, others);
    expect(asked?.choices).toContainEqual({ kind: "tank", label: "It was for Cold pool", tank: "Cold pool" });
  });
});

describe("nothing is asked", () => {
  it("with fewer than three past values", () => {
    expect(ask("calcium", 43, record(430, 420))).toBeUndefined();
  });

  it("inside what the tank has shown", () => {
    expect(ask("nitrate", 12, record(10, 40, 20))).toBeUndefined();
  });

  it("when the fall is a water change that was logged", () => {
    const past = record(80, 80, 85, 80);
    expect(ask("nitrate", 18, past, { replacedSince: 0.8 })).toBeUndefined();
    expect(ask("nitrate", 18, past)).toBeDefined();
  });

  it("when the tank was clean until now: a spike is not a slip", () => {
    expect(ask("ammonia", 1, record(0, 0, 0, 0))).toBeUndefined();
  });

  it("while a filter starts up and ammonia doubles from test to test", () => {
    const start = record(0, 0.25, 0.5, 1, 2, 4, 4, 2, 1, 0.5, 0.25, 0, 0);
    for (let i = 3; i < start.length; i++) {
      const { value, at } = start[i] as PastValue;
      expect(looksLikeSlip({ parameter: "ammonia", value, at }, start.slice(0, i))).toBeUndefined();
    }
  });

  it("when no slip explains an odd value", () => {
    expect(ask("calcium", 300, record(430, 420, 440))).toBeUndefined();
  });

  it("for a rise that the time since explains", () => {
    const past = record(10, 15, 20, 25);
    expect(looksLikeSlip({ parameter: "nitrate", value: 100, at: at(130) }, past)).toBeUndefined();
  });
});

// Simulated tanks: a mass balance with uneven feeding and growth, irregular tests, changes that come
// late, are inexact or go unlogged, readers' scatter, chart steps and misread steps. Seeded.
describe("on simulated records", () => {
  const CHARTS: Partial<Record<ParameterId, readonly number[]>> = {
    nitrate: [0, 5, 10, 20, 40, 80, 160],
    nitrite: [0, 0.25, 0.5, 1, 2, 5],
    phosphate: [0, 0.25, 0.5, 1, 2, 5],
  };

  it("asks falsely in under 1 % of honest readings", () => {
    const random = generator(20_260_301);
    let asked = 0;
    let all = 0;
    for (const tank of tanks(random, 600)) {
      for (let i = 3; i < tank.values.length; i++) {
        const value = tank.values[i];
        if (value === undefined) continue;
        all++;
        const question = looksLikeSlip({ ...value, parameter: tank.parameter }, tank.values.slice(0, i));
        if (question !== undefined) asked++;
      }
    }
    expect(all).toBeGreaterThan(15_000);
    report(`false questions: ${asked} of ${all}`);
    expect(asked / all).toBeLessThan(0.01);
  });

  it.each([
    ["nitrate typed as nitrogen", 1 / 4.4268],
    ["nitrate counted up from nitrogen that was none", 4.4268],
    ["decimal mark too far left", 1 / 10],
    ["decimal mark too far right", 10],
  ])("finds over 80 % of slips: %s", (_, factor) => {
    const random = generator(20_260_417);
    let found = 0;
    let all = 0;
    for (const tank of tanks(random, 400, "nitrate")) {
      const i = 4 + Math.floor(random() * (tank.values.length - 4));
      const value = tank.values[i];
      // A slip of nothing is nothing.
      if (value === undefined || value.value < 5) continue;
      all++;
      const question = looksLikeSlip(
        { parameter: tank.parameter, value: value.value * factor, at: value.at },
        tank.values.slice(0, i),
      );
      const [first] = question?.choices ?? [];
      if (first?.kind === "value" && Math.abs(first.value / value.value - 1) < 0.01) found++;
    }
    expect(all).toBeGreaterThan(200);
    report(`found ×${factor.toFixed(3)}: ${found} of ${all}`);
    expect(found / all).toBeGreaterThan(0.8);
  });

  function tanks(random: () => number, count: number, only?: ParameterId) {
    const kinds: readonly ParameterId[] = [
      "nitrate",
      "nitrate",
      "nitrate",
      "phosphate",
      "alkalinity",
      "calcium",
    ];
    return Array.from({ length: count }, (_, i) => {
      const id = only ?? kinds[i % kinds.length] ?? "nitrate";
      return {
        parameter: id,
        values: id === "alkalinity" || id === "calcium" ? held(random, id) : rising(random, id),
      };
    });
  }

  /** What builds up and is changed away. */
  function rising(random: () => number, id: ParameterId): PastValue[] {
    const unit = id === "phosphate" ? 0.02 : 1;
    const onChart = random() < 0.6;
    const scatter = onChart ? 0.15 : 0.08;
    const everyDays = 5 + 16 * random();
    const share = 0.1 + 0.35 * random();
    let perDay = unit * Math.exp(gauss(random) * 0.7 + 0.2);
    let level = Math.max(0, ((perDay * everyDays) / share) * (0.7 + 0.6 * random()));
    let nextChange = everyDays;
    const values: PastValue[] = [];
    let nextTest = 0;
    for (let day = 0; values.length < 40; day++) {
      perDay *= 1.001; // the fish grow
      level += perDay * Math.max(0, 1 + 0.4 * gauss(random));
      if (day >= nextTest) {
        let shown = level * Math.exp(scatter * gauss(random));
        const steps = CHARTS[id];
        if (onChart && steps !== undefined) shown = onStep(steps, shown, random);
        else shown = Number(shown.toPrecision(2));
        values.push({ value: shown, at: at(day) });
        nextTest = day + (random() < 0.04 ? 30 + 30 * random() : Math.exp(Math.log(5) + 0.6 * gauss(random)));
      }
      if (day >= nextChange) {
        if (random() > 0.15) level *= 1 - Math.min(0.8, share * Math.exp(0.2 * gauss(random)));
        nextChange = day + everyDays * (0.6 + 0.8 * random());
      }
    }
    return values;
  }

  /** What is dosed back up as it is used. */
  function held(random: () => number, id: ParameterId): PastValue[] {
    const aim = id === "calcium" ? 420 : 2.9;
    let level = aim;
    let day = 0;
    return Array.from({ length: 40 }, () => {
      const gap = Math.exp(Math.log(6) + 0.5 * gauss(random));
      day += gap;
      level += 0.03 * aim * gauss(random) * Math.sqrt(gap / 6) + 0.1 * (aim - level);
      return { value: Number((level * Math.exp(0.03 * gauss(random))).toPrecision(3)), at: at(day) };
    });
  }

  function onStep(steps: readonly number[], value: number, random: () => number): number {
    let nearest = steps.reduce(
      (best, step, i) => (Math.abs(step - value) < Math.abs((steps[best] ?? 0) - value) ? i : best),
      0,
    );
    if (random() < 0.02) nearest += random() < 0.5 ? -1 : 1;
    return steps[Math.min(steps.length - 1, Math.max(0, nearest))] ?? 0;
  }
});

/** Shown by `vitest --reporter verbose`, so that the rates can be quoted. */
function report(line: string) {
  if (process.env["SHOW_RATES"] !== undefined) console.info(line);
}

/** Mulberry32. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function gauss(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
