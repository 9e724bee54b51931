import { describe, expect, it } from "vitest";
import { phWithDoubt } from "../../../../src/core/nitrogen/ph-doubt.ts";
import { readAmmonia, readNitrate, readNitrite } from "../../../../src/core/nitrogen/read-nitrogen.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type PH } from "../../../../src/core/quantity/units.ts";

/** The best value in mg/L of nitrogen, where the text reads. */
function nitrogen(read: ReturnType<typeof readNitrate>): number | undefined {
  return read.kind === "read" ? read.value.best : undefined;
}

describe("nitrogen as a kit prints it", () => {
  // Standard atomic weights: N 14.0067, O 15.9994, H 1.00794.
  it.each([
    ["44.27 mg/L", 10.0],
    ["10 mg/L as N", 10],
    ["NO3-N 10 ppm", 10],
    ["0 mg/L", 0],
  ])("nitrate %s is %d mg/L of nitrogen", (text, expected) => {
    expect(nitrogen(readNitrate(text, {}))).toBeCloseTo(expected, 2);
  });

  it("nitrite of 1 mg/L is 0.30446 mg/L of nitrogen", () => {
    expect(nitrogen(readNitrite("1 mg/L", {}))).toBeCloseTo(0.30446, 5);
  });

  it.each([
    ["1 mg/L as TAN", "TAN", 1],
    ["1 mg/L as NH4", "NH4", 0.77649],
    ["1 mg/L as NH3", "NH3", 0.82245],
  ] as const)("ammonia %s is counted as %s: %d mg/L of nitrogen", (text, form, expected) => {
    const read = readAmmonia(text, {});
    expect(read.kind === "read" && read.value.form).toBe(form);
    expect(read.kind === "read" && read.value.asNitrogen.best).toBeCloseTo(expected, 4);
  });

  it("asks what an ammonia kit counts, and offers answers that read", () => {
    const read = readAmmonia("0.5 mg/L", {});
    expect(read.kind).toBe("ask");
    const again = read.kind === "ask" ? read.choices.map(({ text }) => readAmmonia(text, {}).kind) : [];
    expect(again).toEqual(["read", "read", "read"]);
  });

  it("does not take another substance, nor less than nothing", () => {
    expect(readNitrate("5 mg/L as phosphate", {}).kind).toBe("unreadable");
    expect(readAmmonia("-0.5 mg/L as TAN", {}).kind).toBe("unreadable");
  });
});

describe("the doubt of a pH", () => {
  const pH = exactly(as<PH>(8.2));

  it("is 0.2 for a colour kit, nothing more for a meter (common practice, no source)", () => {
    const kit = phWithDoubt(pH, "colour kit");
    expect(kit.low).toBeCloseTo(8.0, 9);
    expect(kit.high).toBeCloseTo(8.4, 9);
    expect(phWithDoubt(pH, "meter, ordinary buffers")).toBe(pH);
  });

  it("leaves a range alone that the member gave", () => {
    const range = between(as<PH>(8.1), as<PH>(8.2));
    expect(phWithDoubt(range, "colour kit")).toBe(range);
  });
});
