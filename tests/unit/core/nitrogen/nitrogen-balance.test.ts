import { describe, expect, it } from "vitest";
import { type NitrogenFlows, nitrogenBalance } from "../../../../src/core/nitrogen/nitrogen-balance.ts";
import { asNitrogen } from "../../../../src/core/nitrogen/nitrogen-units.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);

/** 120 g of moist food a day at 18 % protein in 2700 L, 15 % of the nitrogen taken out, 30 % changed every ten days. */
const lagoon: NitrogenFlows = {
  volumeL: exactly(q(2700)),
  feedN: exactly(q(3.456)),
  retainedShare: exactly(q(0.05)),
  solidsShare: exactly(q(0.1)),
  nitrate: exactly(asNitrogen(160.55, "NO3")),
  waterChange: { changed: exactly(q(0.3)), everyDays: q(10), sourceNitrate: exactly(q(0)) },
};

function answered(given: NitrogenFlows) {
  const result = nitrogenBalance(given);
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}

describe("the nitrogen balance", () => {
  it("stands still at the steady level: 160.55 before, 112.38 after", () => {
    // Source: geometric series, as in the check rows for nitrate.
    const { value } = answered(lagoon);
    expect(value.steadyBeforeMgPerL?.best).toBeCloseTo(160.55, 1);
    expect(value.steadyAfterMgPerL?.best).toBeCloseTo(112.38, 1);
    expect(value.nitratePerWeekMgPerL.best).toBeCloseTo(0, 1);
  });

  it("climbs 33.7 mg/L a week without changes, and says so", () => {
    const { waterChange: _none, ...closed } = lagoon;
    const { value, cautions } = answered(closed);
    expect(value.nitratePerWeekMgPerL.best).toBeCloseTo(33.73, 1);
    expect(value.steadyBeforeMgPerL).toBeUndefined();
    expect(cautions.map((each) => each.code)).toContain("nitrate-never-settles");
  });

  it("takes 2.5 g N a day off for a 110 L box at 23 g per m³", () => {
    // Source: he-2018, 23.4 g N per m³ and day with methanol in sea water.
    const stated = answered({
      ...lagoon,
      denitrification: { kind: "stated", gPerDay: exactly(q(2.5)) },
    });
    expect(stated.value.lines.find((line) => line.name === "nitrogen gas")?.gNPerDay.best).toBe(-2.5);
    const box = answered({ ...lagoon, denitrification: { kind: "dosed box", litres: exactly(q(110)) } });
    const gas = box.value.lines.find((line) => line.name === "nitrogen gas")?.gNPerDay;
    expect(gas?.low).toBeLessThan(-2.5);
    expect(gas?.high).toBeGreaterThan(-2.5);
  });

  it("doubts ways out that exceed the food", () => {
    const { cautions } = answered({ ...lagoon, algaeHarvest: exactly(q(5)) });
    expect(cautions.map((each) => each.code)).toContain("nitrogen-sinks-exceed-food");
  });
});
