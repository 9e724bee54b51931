import { describe, expect, it } from "vitest";
import { algaeExport } from "../../../../src/core/dosing/algae-export.ts";
import { ammoniaAfterBinder, binderDose } from "../../../../src/core/dosing/ammonia-binder.ts";
import { ammoniumDose } from "../../../../src/core/dosing/ammonium-dose.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../../../src/core/result.ts";

const litres = (value: number) => exactly(as<Quantity<"L">>(value));
const share = (value: number) => exactly(as<Quantity<"fraction">>(value));

function answered<T>(result: Answer<T> | NoAnswer): Answer<T> {
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}

describe("algaeExport", () => {
  it("weighs the harvest that takes the nitrogen along", () => {
    // 10 % dry and 3 % nitrogen: 3 g of nitrogen per kg, 4.92 mg/L of nitrate in 2700 L; by hand.
    const { value } = answered(
      algaeExport({
        nitrogenPerWeek: exactly(as<Quantity<"g">>(6)),
        systemVolume: litres(2700),
        dryShare: share(0.1),
        nitrogenOfDry: share(0.03),
      }),
    );
    expect(value.wetPerWeek.best).toBeCloseTo(2000, 9);
    expect(value.nitratePerWeek.best).toBeCloseTo(9.84, 2);
  });

  it("is wide when nothing is known of the algae", () => {
    const { value, driver } = answered(
      algaeExport({ nitrogenPerWeek: exactly(as<Quantity<"g">>(6)), systemVolume: litres(2700) }),
    );
    expect(value.wetPerWeek.high / value.wetPerWeek.low).toBeGreaterThan(2);
    expect(driver?.input).toBe("dry share of wet algae");
  });
});

describe("ammoniumDose", () => {
  const dose = {
    systemVolume: litres(100),
    target: exactly(2),
    form: "TAN",
    purity: share(1),
    hasAnimals: false,
  } as const;

  it.each([
    // Per mg: 3.819 mg of salt as nitrogen, 2.965 as NH₄, 3.141 as NH₃; from molar masses, by hand.
    ["TAN", 0.7638],
    ["NH4", 0.593],
    ["NH3", 0.6282],
  ] as const)("weighs for 2 mg/L %s", (form, massG) => {
    const { value } = answered(ammoniumDose({ ...dose, form }));
    expect(Math.abs(value.mass.best / massG - 1)).toBeLessThan(0.001);
  });

  it("says the alkalinity it will cost", () => {
    // 2 mg/L of nitrogen is 0.1428 mmol/L, two equivalents each: 0.2856 meq/L, 0.80 dKH; by hand.
    expect(answered(ammoniumDose(dose)).value.alkalinityUsed.best).toBeCloseTo(0.8, 2);
  });

  it("warns above 3 mg/L, and always says the unit", () => {
    const codes = answered(ammoniumDose({ ...dose, target: exactly(5) })).cautions.map(({ code }) => code);
    expect(codes).toContain("ammonia-slows-the-cycle");
    expect(codes).toContain("ammonia-unit-said");
    expect(answered(ammoniumDose(dose)).cautions.map(({ code }) => code)).not.toContain(
      "ammonia-slows-the-cycle",
    );
  });

  it("refuses with animals in the water", () => {
    const answer = ammoniumDose({ ...dose, hasAnimals: true });
    expect(answer.kind === "no-answer" && answer.reason.code).toBe("ammonia-with-animals");
  });
});

describe("ammonia binder", () => {
  it.each([
    [0, "salicylate", "not interpretable", 48],
    [30, "Nessler", "doubtful", 18],
    [48, "salicylate", "interpretable", 0],
    [1, "gas membrane", "interpretable", 0],
  ] as const)("after %s h a %s test is %s", (hours, test, verdict, wait) => {
    const { value, cautions } = answered(ammoniaAfterBinder({ hoursSince: as<Quantity<"h">>(hours), test }));
    expect(value).toEqual({ verdict, waitHours: wait });
    expect(cautions.length).toBe(wait > 0 ? 1 : 0);
  });

  it("takes oxygen when the reagent is a sulfinate", () => {
    const ask = (reagent: Parameters<typeof binderDose>[0]["reagent"]) =>
      answered(
        binderDose({
          reagent,
          purity: share(1),
          ammonia: exactly(as<Quantity<"mg N/L">>(1)),
          systemVolume: litres(100),
        }),
      );
    // 11.0 mg of the dihydrate and 16/14.0067 = 1.14 mg of oxygen per mg of nitrogen, by hand.
    const sulfinate = ask("sodium hydroxymethanesulfinate dihydrate");
    expect(sulfinate.value.mass.best).toBeCloseTo(1.1, 2);
    expect(sulfinate.value.oxygenTaken.best).toBeCloseTo(1.142, 3);
    expect(sulfinate.cautions.map(({ code }) => code)).toContain("binder-takes-oxygen");
    expect(ask("sodium hydroxymethanesulfonate").cautions.map(({ code }) => code)).not.toContain(
      "binder-takes-oxygen",
    );
  });
});
