import { describe, expect, it } from "vitest";
import { alkalinityCostOfFeeding } from "../../../../src/core/carbonate/feeding-alkalinity.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

type Question = Parameters<typeof alkalinityCostOfFeeding>[0];

// 3.456 g of nitrogen a day fed into 2700 L, 85 % of it to nitrate: 2.9376 g.
const base = {
  nitrogenPerDay: exactly(as<Quantity<"g N/d">>(3.456)),
  from: "food",
  systemVolume: exactly(as<Quantity<"L">>(2700)),
  shareToNitrate: exactly(as<Quantity<"fraction">>(0.85)),
} as const satisfies Question;

function answered(question: Question) {
  const answer = alkalinityCostOfFeeding(question);
  if (answer.kind === "no-answer") throw new Error(`refused: ${answer.reason.code}`);
  return answer;
}

describe("alkalinityCostOfFeeding", () => {
  it("takes one equivalent per mole of food nitrogen", () => {
    // By hand: 2.9376 g / 14.0067 = 209.7 meq a day, / 2700 L = 0.0777 meq/L = 0.2178 dKH.
    // 209.7 meq × 84.007 = 17.6 g of bicarbonate.
    const { value } = answered(base);
    expect(value.lossPerDay.best).toBeCloseTo(0.2178, 4);
    expect(value.lossPerWeek.best).toBeCloseTo(1.5246, 3);
    expect(value.bicarbonatePerDay.best).toBeCloseTo(17.62, 1);
  });

  it("takes twice as much for ammonium salt", () => {
    const loss = (from: "food" | "ammonium salt") => answered({ ...base, from }).value.lossPerDay.best;
    expect(loss("ammonium salt")).toBeCloseTo(2 * loss("food"), 12);
  });

  it("comes near what textbooks spend on bicarbonate", () => {
    // About 0.25 kg of bicarbonate per kg of 42 % protein feed (recirculation textbooks, from memory):
    // 1000 g × 0.42 / 6.25 = 67.2 g of nitrogen, of which growing fish excrete 57.5 % as ammonia
    // (Timmons & Ebeling: 0.092 g per g of protein, from memory). Counting two equivalents would give 0.46 kg.
    const { value } = answered({
      ...base,
      nitrogenPerDay: exactly(as<Quantity<"g N/d">>(67.2)),
      shareToNitrate: exactly(as<Quantity<"fraction">>(0.575)),
    });
    expect(value.bicarbonatePerDay.best).toBeGreaterThan(200);
    expect(value.bicarbonatePerDay.best).toBeLessThan(300);
  });

  it("says when water changes alone cannot hold it", () => {
    const answer = answered({
      ...base,
      changes: {
        everyDays: exactly(as<Quantity<"d">>(10)),
        changed: exactly(as<Quantity<"fraction">>(0.3)),
        newWater: exactly(as<Quantity<"dKH">>(9)),
      },
    });
    // 9 − 2.178 / 0.3 = 1.74, by hand.
    expect(answer.value.settlesBeforeChange?.best).toBeCloseTo(1.74, 2);
    expect(answer.cautions.map(({ code }) => code)).toEqual(["water-changes-cannot-hold"]);
  });

  it("names the default share as the driver", () => {
    const { shareToNitrate: _share, ...rest } = base;
    expect(answered(rest).driver?.input).toBe("share turned into nitrate");
  });

  it("refuses a share above one", () => {
    const answer = alkalinityCostOfFeeding({
      ...base,
      shareToNitrate: exactly(as<Quantity<"fraction">>(1.2)),
    });
    expect(answer.kind === "no-answer" && answer.reason.code).toBe("dose-figure-too-large");
  });
});
