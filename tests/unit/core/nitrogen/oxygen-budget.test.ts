import { describe, expect, it } from "vitest";
import { type OxygenSituation, oxygenBudget } from "../../../../src/core/nitrogen/oxygen-budget.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);

/** 2700 L at salinity 35 and 25 °C: saturation 6.77 mg/L (garcia-gordon-1992, benson-krause-1984). */
const lagoon: OxygenSituation = {
  volumeL: exactly(q(2700)),
  salinity: exactly(q(35)),
  temperatureC: exactly(q(25)),
  restGPerDay: exactly(q(24)),
  afterMealGPerDay: exactly(q(48)),
};

function answered(situation: OxygenSituation) {
  const result = oxygenBudget(situation);
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}

describe("the oxygen budget", () => {
  it("lasts (6.77 − 4) · 2.7 hours at 1 g an hour, and half as long after a meal", () => {
    const { value } = answered(lagoon);
    expect(value.hoursAtRest.best).toBeCloseTo(2.77 * 2.7, 1);
    expect(value.hoursAfterMeal.best).toBeCloseTo(value.hoursAtRest.best / 2, 9);
  });

  it("reads the exchange off a measurement 1 mg/L under saturation: 0.370 mg/L per hour / 1 mg/L", () => {
    const { value } = answered({ ...lagoon, measuredMgPerL: exactly(q(5.771)) });
    expect(value.exchangeNowPerH?.best).toBeCloseTo(1000 / 2700, 2);
    expect(value.afterMealMgPerL?.best).toBeCloseTo(4.771, 2);
  });

  it("infers nothing from a measurement at saturation", () => {
    expect(answered({ ...lagoon, measuredMgPerL: exactly(q(6.77)) }).value.exchangeNowPerH).toBeUndefined();
  });

  it("raises the alarm at 3 mg/L and doubts 9 mg/L", () => {
    const low = answered({ ...lagoon, measuredMgPerL: exactly(q(3)) });
    expect(low.cautions.find((c) => c.code === "oxygen-low-now")?.level).toBe("danger");
    expect(low.value.hoursAtRest.best).toBe(0);
    const high = answered({ ...lagoon, measuredMgPerL: exactly(q(9)) });
    expect(high.cautions.map((c) => c.code)).toContain("oxygen-above-saturation");
  });

  it("refuses a tank that uses nothing", () => {
    const result = oxygenBudget({ ...lagoon, restGPerDay: exactly(q(0)) });
    expect(result.kind).toBe("no-answer");
  });
});
