import { describe, expect, it } from "vitest";
import { carbonDioxideReading } from "../../../../src/core/carbonate/carbon-dioxide-reading.ts";
import type { PHScale } from "../../../../src/core/carbonate/ph-scales.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";
import { sayCaution } from "../../../../src/wording/index.ts";

type Question = Parameters<typeof carbonDioxideReading>[0];

const question = (dkh: number, pH: number, scale: PHScale = "total", salinity = 35): Question => ({
  alkalinity: exactly(as<Quantity<"dKH">>(dkh)),
  pH: exactly(as<Quantity<"pH">>(pH)),
  scale,
  salinity: exactly(as<Quantity<"PSS-78">>(salinity)),
  temperature: exactly(as<Quantity<"°C">>(25)),
});

function answered(asked: Question) {
  const answer = carbonDioxideReading(asked);
  if (answer.kind === "no-answer") throw new Error(`refused: ${answer.reason.code}`);
  return answer;
}
const codes = (asked: Question) => answered(asked).cautions.map(({ code }) => code);

describe("carbonDioxideReading", () => {
  it("agrees with a reference library", () => {
    // PyCO2SYS 1.8.3: alkalinity 2300 µmol/kg, pH (total) 8.1, 35, 25 °C → 339.0 µatm fugacity. In dKH:
    // 2300e-6 × 1023.343 kg/m³ (EOS-80, printed) × 2.8039 dKH per meq/L; pressure = fugacity / 0.997.
    const dkh = 2300e-6 * 1023.343 * 2.8039;
    const { value } = answered(question(dkh, 8.1));
    expect(Math.abs(value.carbonDioxide.best / (339 / 0.997) - 1)).toBeLessThan(0.005);
  });

  it("blames the air when the pH is low and the alkalinity is not", () => {
    const answer = answered(question(8.4, 7.7));
    expect(answer.value.verdict).toBe("carbon dioxide");
    const said = answer.cautions.map(sayCaution).join(" ");
    expect(said).toMatch(/fresh air/);
    expect(said).toMatch(/do not add buffer/);
    expect(answer.value.pHWhenAired.best).toBeGreaterThan(8);
  });

  it("blames nitrification when the alkalinity is low", () => {
    expect(answered(question(3, 7.75)).value.verdict).toBe("low alkalinity");
    expect(codes(question(3, 7.75))).toEqual(["alkalinity-low"]);
  });

  it("sees both at once, and then does not say that the alkalinity is fine", () => {
    expect(answered(question(4, 7.5)).value.verdict).toBe("both");
    expect(codes(question(4, 7.5))).toEqual(["carbon-dioxide-of-the-room", "alkalinity-low"]);
  });

  it.each([
    [8.4, 8.1, "in balance"],
    [8.4, 8.5, "short of carbon dioxide"],
  ])("finds %s dKH at pH %s %s", (dkh, pH, verdict) => {
    expect(answered(question(dkh, pH)).value.verdict).toBe(verdict);
  });

  it("widens a meter's reading by the doubt of its electrode", () => {
    const answer = answered(question(8.4, 8.2, "NBS"));
    const { low, best, high } = answer.value.carbonDioxide;
    expect(answer.driver).toEqual({ input: "electrode in sea water", share: 1 });
    // 0.05 pH is at least 12 % of carbon dioxide: 10^0.05 = 1.122.
    expect(high / best).toBeGreaterThan(1.12);
    expect(best / low).toBeGreaterThan(1.12);
  });

  it("names the pH as what makes the answer wide", () => {
    const answer = answered({
      ...question(8.4, 8),
      pH: between(as<Quantity<"pH">>(7.9), as<Quantity<"pH">>(8.1)),
      alkalinity: between(as<Quantity<"dKH">>(8.2), as<Quantity<"dKH">>(8.6)),
    });
    expect(answer.driver?.input).toBe("pH reading");
  });

  it("warns outside the fitted range", () => {
    expect(codes(question(8, 8.1, "total", 15))).toContain("outside-fitted-range");
  });

  it.each([
    ["fresh water", question(8, 8, "total", 0), "carbonate-needs-sea-water"],
    ["a pH of 14", question(8, 14), "carbonate-reading-impossible"],
    ["no alkalinity at all", question(0, 8), "carbonate-reading-impossible"],
    ["a reading that is no number", question(8, Number.NaN), "carbonate-reading-impossible"],
  ])("refuses %s", (_what, asked, code) => {
    const answer = carbonDioxideReading(asked);
    expect(answer.kind === "no-answer" && answer.reason.code).toBe(code);
  });
});
