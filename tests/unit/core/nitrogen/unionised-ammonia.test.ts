import { describe, expect, it } from "vitest";
import { type AmmoniaSituation, unionisedAmmonia } from "../../../../src/core/nitrogen/unionised-ammonia.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);

const reef: AmmoniaSituation = {
  reading: exactly(1),
  form: "TAN",
  pH: exactly(q(8.2)),
  scale: "buffers",
  temperatureC: exactly(q(26)),
  salinity: exactly(q(34)),
};

function answered(situation: AmmoniaSituation) {
  const result = unionisedAmmonia(situation);
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}

describe("un-ionised ammonia", () => {
  // Source: table of total ammonia nitrogen at 0.035 mg/L as NH₃, salinity 34, worked by script from
  // khoo-1977 over emerson-1975, two digits.
  it.each([
    [8.0, 24, 0.72],
    [8.0, 26, 0.63],
    [8.0, 28, 0.55],
    [8.2, 24, 0.47],
    [8.2, 26, 0.41],
    [8.2, 28, 0.36],
    [8.4, 24, 0.3],
    [8.4, 26, 0.27],
    [8.4, 28, 0.24],
  ])("reaches the criterion at pH %d and %d °C with %d mg/L ammonia nitrogen", (pH, t, tan) => {
    const { value } = answered({ ...reef, pH: exactly(q(pH)), temperatureC: exactly(q(t)) });
    const level = value.levels.find((each) => each.nh3MgPerL === 0.035);
    expect(Math.abs((level?.tan.best ?? Number.NaN) - tan)).toBeLessThan(0.006);
  });

  // Source: masses of the forms, 1.2878 and 1.2159 per nitrogen (standard atomic weights).
  it.each([
    ["TAN", 1],
    ["NH4", 1 / 1.2878],
    ["NH3", 1 / 1.2159],
  ] as const)("reads a kit that prints %s", (form, tan) => {
    expect(answered({ ...reef, form }).value.tan.best).toBeCloseTo(tan, 4);
  });

  it("asks for the form when it was not said", () => {
    const result = unionisedAmmonia({ ...reef, form: "not said" });
    expect(result.kind === "no-answer" && result.reason.code).toBe("ammonia-form-not-said");
  });

  it("finds a third more harmful ammonia when the same pH is on the total scale", () => {
    // Source: 8.90 % on the total scale against 7.07 %, salinity 34, 26 °C, pH 8.2.
    expect(answered({ ...reef, scale: "total" }).value.nh3Share.best).toBeCloseTo(0.089, 3);
    expect(answered(reef).value.nh3Share.best).toBeCloseTo(0.0707, 3);
  });

  it("works out the change of clean water of the same pH: 1 − 0.035 / (1.216 · 0.0707)", () => {
    const { value } = answered(reef);
    expect(value.remedy?.waterChange?.best).toBeCloseTo(1 - 0.035 / (1.2159 * 0.0707), 2);
    expect(value.remedy?.foodShare.best).toBeCloseTo(0.035 / (1.2159 * 0.0707), 2);
  });

  it("needs more of a water with ammonia in it, and still more at a higher pH", () => {
    const change = (tan: number, pH: number) =>
      answered({ ...reef, limitNh3: q(0.05), source: { tan: exactly(q(tan)), pH: exactly(q(pH)) } }).value
        .remedy?.waterChange?.best ?? 2;
    expect(change(0.1, 8.2)).toBeGreaterThan(change(0, 8.2));
    expect(change(0, 8.35)).toBeGreaterThan(change(0, 8.2));
    expect(change(0, 8.0)).toBeLessThan(change(0, 8.2));
  });

  it("says so when no change of that water gets there", () => {
    const answer = answered({ ...reef, source: { tan: exactly(q(2)) } });
    expect(answer.value.remedy?.waterChange).toBeUndefined();
    expect(answer.cautions.map((c) => c.code)).toContain("change-cannot-reach-limit");
  });

  it("puts a pH doubt of 0.2 at a factor of about 1.6 either way", () => {
    const { value, driver } = answered({ ...reef, pH: between(q(8.0), q(8.4)) });
    expect(value.nh3MgPerL.high / value.nh3MgPerL.best).toBeGreaterThan(1.45);
    expect(value.nh3MgPerL.best / value.nh3MgPerL.low).toBeGreaterThan(1.45);
    expect(driver?.input).toBe("pH");
  });

  it.each([
    [0.1, "normal"],
    [0.4, "raised"],
    [1, "act today"],
    [4, "emergency"],
  ] as const)("calls %d mg/L ammonia nitrogen at pH 8.2 and 26 °C %s", (tan, state) => {
    expect(answered({ ...reef, reading: exactly(tan) }).value.state).toBe(state);
  });

  it("warns against raising pH while ammonia is up, and never when it is not", () => {
    expect(answered(reef).cautions.map((c) => c.code)).toContain("raising-ph-raises-ammonia");
    const calm = answered({ ...reef, reading: exactly(0.05) });
    expect(calm.cautions.map((c) => c.code)).not.toContain("raising-ph-raises-ammonia");
  });

  it("does not trust a reading taken over a binder", () => {
    expect(answered({ ...reef, binderUsed: true }).cautions.map((c) => c.code)).toContain(
      "binder-hides-ammonia",
    );
  });

  it("refuses a pH of 82", () => {
    const result = unionisedAmmonia({ ...reef, pH: exactly(q(82)) });
    expect(result.kind === "no-answer" && result.reason.code).toBe("figure-out-of-range");
  });
});
