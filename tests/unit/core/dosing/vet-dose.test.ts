import { describe, expect, it } from "vitest";
import { vetDose } from "../../../../src/core/dosing/vet-dose.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Litres, type MgPerL } from "../../../../src/core/quantity/units.ts";

const note = {
  vetWrote: true,
  medicine: "what the note names",
  netVolume: exactly(as<Litres>(200)),
  dose: exactly(as<MgPerL>(2)),
  strength: { value: exactly(50), kind: "mg/mL" },
} as const;

const without = (...missing: (keyof typeof note)[]) =>
  Object.fromEntries(
    Object.entries(note).filter(([name]) => !missing.includes(name as keyof typeof note)),
  ) as unknown as typeof note;

describe("vetDose", () => {
  it("multiplies the vet's figures and asks for them to be read back", () => {
    const answer = vetDose(note);
    if (answer.kind === "no-answer") throw new Error(answer.reason.code);
    // 2 mg/L in 200 L is 400 mg, 8 mL of 50 mg/mL, by hand.
    expect(answer.value.active.best).toBeCloseTo(0.4, 12);
    expect(answer.value.product.best * 1000).toBeCloseTo(8, 9);
    expect(answer.value.readBack).toBe("not yet confirmed");
    expect(answer.value).toMatchObject({
      netVolume: note.netVolume,
      dose: note.dose,
      strength: note.strength,
    });
    expect(answer.cautions.map(({ code }) => code)).toEqual([
      "vet-figures-read-back",
      "medicine-needs-a-vet",
    ]);
  });

  it.each([
    ["nobody says a vet wrote it", { ...note, vetWrote: false }, "medicine-not-dosed"],
    ["the volume is missing", without("netVolume"), "vet-figures-missing"],
    ["the dose is missing", without("dose"), "vet-figures-missing"],
    ["the strength is missing", without("strength"), "vet-figures-missing"],
    ["the name is missing", { ...note, medicine: " " }, "vet-figures-missing"],
    ["the dose is nothing", { ...note, dose: exactly(as<MgPerL>(0)) }, "dose-figure-not-positive"],
    [
      "the strength is by volume",
      { ...note, strength: { value: exactly(5), kind: "% v/v" } as const },
      "strengths-do-not-compare",
    ],
  ])("refuses when %s, and sends the member to a vet", (_what, question, code) => {
    const answer = vetDose(question);
    expect(answer.kind === "no-answer" && answer.reason.code).toBe(code);
    expect(answer.cautions.map((item) => item.code)).toContain("medicine-needs-a-vet");
  });
});
