import { describe, expect, it } from "vitest";
import type { MillilitresPerMinute } from "../../../../src/core/dosing/dosing-pump.ts";
import { daysWithinCap, targetDose } from "../../../../src/core/dosing/target-dose.ts";
import { between, type Estimate, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Fraction, type Litres, type MgPerL } from "../../../../src/core/quantity/units.ts";

const mgPerL = (value: number) => exactly(as<MgPerL>(value));
const litres = (value: number) => exactly(as<Litres>(value));
const solid = (purity: number) => ({ kind: "solid", purity: exactly(as<Fraction>(purity)) }) as const;
const stock = (gramsPerL: number) =>
  ({ kind: "stock", strength: { value: exactly(gramsPerL), kind: "g/L" } }) as const;

function answered(question: Parameters<typeof targetDose>[0]) {
  const answer = targetDose(question);
  if (answer.kind === "no-answer") throw new Error(`refused: ${answer.reason.code}`);
  return answer;
}
function refused(question: Parameters<typeof targetDose>[0]) {
  const answer = targetDose(question);
  return answer.kind === "no-answer" ? answer.reason.code : "answered";
}
const best = (estimate: Estimate | undefined) => estimate?.best ?? Number.NaN;

describe("targetDose", () => {
  it("weighs a solid of the purity given", () => {
    // 20 mg/L in 500 L is 10 g; at 80 % pure 12.5 g, by hand.
    const { value } = answered({ change: mgPerL(20), systemVolume: litres(500), source: solid(0.8) });
    expect(best(value.mass)).toBeCloseTo(12.5, 12);
    expect(value.days).toBe(1);
  });

  it("spreads over as many days as the cap asks for", () => {
    const { value, cautions } = answered({
      change: mgPerL(50),
      systemVolume: litres(1000),
      source: stock(100),
      dailyCap: as<MgPerL>(20),
      dosesPerDay: 4,
      substance: "calcium chloride",
    });
    // 50 g in all is 500 mL of a 100 g/L stock; three days, twelve doses of 41.67 mL, by hand.
    expect(value.days).toBe(3);
    expect(best(value.stockVolume)).toBeCloseTo(0.5, 12);
    expect(best(value.stockPerDose)).toBeCloseTo(0.5 / 12, 12);
    expect(best(value.changePerDay)).toBeLessThanOrEqual(20);
    expect(cautions.map(({ code }) => code)).toEqual(["split-over-days", "missed-dose-stays-missed"]);
  });

  it("says that nothing was checked when nobody says what it is", () => {
    const question = { change: mgPerL(0.2), systemVolume: litres(100), source: stock(50) };
    const codes = (substance?: string) =>
      answered({ ...question, ...(substance === undefined ? {} : { substance }) }).cautions.map(
        ({ code }) => code,
      );
    expect(codes()).toContain("substance-not-named");
    expect(codes("potassium chloride")).not.toContain("substance-not-named");
  });

  it("counts days for the smallest volume the system may hold", () => {
    const question = { change: mgPerL(20), source: solid(1), dailyCap: as<MgPerL>(20) };
    expect(answered({ ...question, systemVolume: litres(1000) }).value.days).toBe(1);
    const unsure = between(as<Litres>(900), as<Litres>(1100));
    expect(answered({ ...question, systemVolume: unsure }).value.days).toBe(2);
  });

  it("gives the pump's run and how long the reservoir lasts", () => {
    const { value } = answered({
      change: mgPerL(4.8),
      systemVolume: litres(1000),
      source: {
        ...stock(100),
        reservoir: litres(0.96),
        pump: exactly(as<MillilitresPerMinute>(1.5)),
      },
      dailyCap: as<MgPerL>(10),
      dosesPerDay: 24,
    });
    // 4.8 g is 48 mL a day; 2 mL each at 1.5 mL/min is 80 s; 960 mL lasts 20 days, by hand.
    expect(best(value.pumpSecondsPerDose)).toBeCloseTo(80, 9);
    expect(best(value.reservoirLasts)).toBeCloseTo(20, 9);
  });

  it.each([
    [
      "no volume",
      { change: mgPerL(1), systemVolume: litres(0), source: solid(1) },
      "dose-figure-not-positive",
    ],
    [
      "purer than pure",
      { change: mgPerL(1), systemVolume: litres(1), source: solid(1.2) },
      "dose-figure-too-large",
    ],
    [
      "a stock that cannot be made",
      { change: mgPerL(1), systemVolume: litres(1), source: stock(120), solute: "sodium bicarbonate" },
      "will-not-dissolve",
    ],
    [
      "copper",
      { change: mgPerL(0.2), systemVolume: litres(100), source: stock(10), substance: "copper sulphate" },
      "medicine-not-dosed",
    ],
    [
      "bleach",
      { change: mgPerL(1), systemVolume: litres(100), source: stock(10), substance: "bleach" },
      "not-into-a-tank",
    ],
    [
      "more pumping than a day holds",
      {
        change: mgPerL(100),
        systemVolume: litres(10_000),
        source: { ...stock(10), pump: exactly(as<MillilitresPerMinute>(1)) },
      },
      "doses-do-not-fit-the-day",
    ],
  ] as const)("refuses %s", (_what, question, code) => {
    expect(refused(question)).toBe(code);
  });

  it.each([
    [70, []],
    [80, ["stock-near-saturation"]],
  ])("judges a bicarbonate stock of %s g/L", (gramsPerL, codes) => {
    // About 93 g/L of stock at 20 °C: 96 g in a litre of water (handbooks, from memory); 80 % of that is 74.
    const { cautions } = answered({
      change: mgPerL(1),
      systemVolume: litres(100),
      source: stock(gramsPerL),
      solute: "sodium bicarbonate",
      dailyCap: as<MgPerL>(10),
    });
    expect(cautions.map(({ code }) => code)).toEqual(codes);
  });
});

it.each([
  [1.1, 0.1, 11],
  [0.3, 0.1, 3],
  [20.1, 20, 2],
  [1, 20, 1],
])("a change of %s at %s a day takes %s days", (change, cap, days) => {
  expect(daysWithinCap(as<MgPerL>(change), as<MgPerL>(cap))).toBe(days);
});
