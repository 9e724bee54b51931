import { describe, expect, it } from "vitest";
import { alcoholContent, alcoholFlashPointC, alcoholReservoir } from "../../../../src/core/dosing/alcohol.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Litres } from "../../../../src/core/quantity/units.ts";

const litre = exactly(as<Litres>(1));
const reservoir = (stock: number, target: number, isDenatured = false) =>
  alcoholReservoir({
    stockPercent: exactly(stock),
    targetPercent: exactly(target),
    finalVolume: litre,
    isDenatured,
  });

describe("alcoholReservoir", () => {
  it("lets 40 % down to 10 % by volume and warns of fire", () => {
    const answer = reservoir(40, 10);
    if (answer.kind === "no-answer") throw new Error(answer.reason.code);
    expect(answer.value.stockVolume.best).toBeCloseTo(0.25, 12);
    // 100 mL of ethanol at 0.7893 g/mL (handbooks, from memory).
    expect(answer.value.ethanol.best).toBeCloseTo(78.93, 6);
    expect(answer.value.flashPointC).toBe(49);
    expect(answer.cautions.map(({ code }) => code)).toEqual([
      "make-up-to-volume",
      "alcohol-shrinks-on-mixing",
      "alcohol-flammable",
      "no-denatured-alcohol",
    ]);
  });

  it("refuses denatured alcohol", () => {
    const answer = reservoir(96, 10, true);
    expect(answer.kind === "no-answer" && answer.reason.code).toBe("alcohol-is-denatured");
  });
});

// Flash points as printed in handbooks, from memory; a strength between two rows takes the lower one.
it.each([
  [5, 49],
  [10, 49],
  [15, 36],
  [40, 26],
  [90, 17],
  [100, 17],
])("%s %% has a flash point no lower than %s °C", (percent, celsius) => {
  expect(alcoholFlashPointC(percent)).toBe(celsius);
});

it("refuses a strength above 100 %", () => {
  const answer = alcoholContent({ volume: litre, percent: exactly(120) });
  expect(answer.kind === "no-answer" && answer.reason.code).toBe("dose-figure-too-large");
});
