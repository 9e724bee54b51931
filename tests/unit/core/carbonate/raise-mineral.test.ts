import { describe, expect, it } from "vitest";
import { raiseMineral } from "../../../../src/core/carbonate/raise-mineral.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";
import { sayCaution } from "../../../../src/wording/index.ts";

type Question = Parameters<typeof raiseMineral>[0];

const base = {
  salt: "NaHCO3",
  now: exactly(6),
  target: exactly(8),
  systemVolume: exactly(as<Quantity<"L">>(500)),
  purity: exactly(as<Quantity<"fraction">>(1)),
  isAmmoniaPresent: false,
} as const satisfies Question;

function answered(question: Question) {
  const answer = raiseMineral(question);
  if (answer.kind === "no-answer") throw new Error(`refused: ${answer.reason.code}`);
  return answer;
}
function refused(question: Question) {
  const answer = raiseMineral(question);
  return answer.kind === "no-answer" ? answer.reason.code : "answered";
}
const codes = (question: Question) => answered(question).cautions.map(({ code }) => code);

describe("raiseMineral", () => {
  // Per litre, by hand from molar masses: 1 dKH is 0.35665 meq, so 29.96 mg NaHCO₃ or 18.90 mg Na₂CO₃;
  // 10 mg calcium is 36.68 mg of the dihydrate; 10 mg magnesium is 83.65 mg MgCl₂·6H₂O, 101.41 mg MgSO₄·7H₂O.
  it.each([
    ["NaHCO3", 6, 8, 29.96, 2],
    ["Na2CO3", 6, 8, 18.9, 2],
    ["CaCl2.2H2O", 400, 450, 91.7, 3],
    ["MgCl2.6H2O", 1250, 1350, 418.25, 2],
    ["MgSO4.7H2O", 1250, 1350, 507.05, 2],
  ] as const)("weighs out %s from %s to %s", (salt, now, target, massG, days) => {
    const { value } = answered({ ...base, salt, now: exactly(now), target: exactly(target) });
    expect(Math.abs((value.mass?.best ?? 0) / massG - 1)).toBeLessThan(0.001);
    expect(value.days).toBe(days);
    expect(value.changePerDay.best).toBeCloseTo((target - now) / days, 9);
  });

  it("weighs more of an impure product", () => {
    const mass = (purity: number) =>
      answered({ ...base, purity: exactly(as<Quantity<"fraction">>(purity)) }).value.mass?.best ?? 0;
    expect(mass(0.8)).toBeCloseTo(mass(1) / 0.8, 9);
  });

  it("doses from a stock", () => {
    const { value } = answered({ ...base, stock: { gramsPerL: exactly(60) }, dosesPerDay: 4 });
    // 29.96 g at 60 g/L is 499.3 mL over two days, eight doses of 62.4 mL.
    expect((value.stockPerDose?.best ?? 0) * 1000).toBeCloseTo(62.4, 1);
  });

  it.each([
    [90, ["stock-near-saturation"]],
    [60, []],
  ])("judges a bicarbonate stock of %s g/L", (gramsPerL, expected) => {
    const found = codes({ ...base, stock: { gramsPerL: exactly(gramsPerL) } });
    expect(found.filter((code) => code === "stock-near-saturation")).toEqual(expected);
  });

  it("says the daily limit in the member's unit", () => {
    const said = answered(base).cautions.map(sayCaution).join(" ");
    expect(said).toMatch(/2 days/);
    expect(said).toMatch(/1 dKH/);
  });

  it("takes a slower pace but no faster one", () => {
    expect(answered({ ...base, slowerCap: 0.5 }).value.days).toBe(4);
    expect(answered({ ...base, slowerCap: 5 }).value.days).toBe(2);
  });

  it("warns against lifting alkalinity while there is ammonia", () => {
    const first = answered({ ...base, isAmmoniaPresent: true }).cautions[0];
    expect(first).toMatchObject({ code: "alkalinity-with-ammonia", level: "danger" });
    expect(codes(base)).not.toContain("alkalinity-with-ammonia");
  });

  it.each([
    ["NaHCO3", 6, 8, ["dissolve-apart", "raise-in-order", "bicarbonate-dips-ph"]],
    // Sodium carbonate irritates the eyes badly: as on its safety sheets, from memory.
    ["Na2CO3", 6, 8, ["dissolve-apart", "raise-in-order", "carbonate-jumps-ph", "carbonate-irritates"]],
    ["CaCl2", 400, 420, ["dissolve-apart", "raise-in-order", "calcium-chloride-heats", "chloride-builds-up"]],
    ["MgSO4.7H2O", 1250, 1300, ["raise-in-order", "sulphate-builds-up"]],
  ] as const)("tells what %s does besides", (salt, now, target, expected) => {
    expect(codes({ ...base, salt, now: exactly(now), target: exactly(target) })).toEqual(
      expect.arrayContaining([...expected]),
    );
  });

  it("doubts an unusual target", () => {
    expect(codes({ ...base, target: exactly(20) })).toContain("target-unusual");
  });

  it("names the reading when it is what makes the dose uncertain", () => {
    expect(answered({ ...base, now: between(5.5, 6.5) }).driver).toEqual({ input: "reading now", share: 1 });
  });

  it.each([
    ["a target below the reading", { ...base, target: exactly(5) }, "mineral-already-there"],
    ["a gap lost in the doubt of the kit", { ...base, now: between(5.5, 8.5) }, "mineral-already-there"],
    ["a stock that cannot be made", { ...base, stock: { gramsPerL: exactly(200) } }, "will-not-dissolve"],
    ["a limit of nothing", { ...base, slowerCap: 0 }, "dose-figure-not-positive"],
    ["no volume", { ...base, systemVolume: exactly(as<Quantity<"L">>(0)) }, "dose-figure-not-positive"],
  ])("refuses %s", (_what, question, code) => {
    expect(refused(question)).toBe(code);
  });
});
