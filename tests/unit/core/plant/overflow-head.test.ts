import { describe, expect, it } from "vitest";
import { overflowHead } from "../../../../src/core/plant/overflow-head.ts";
import { francisFlow, francisHead, toothedFlow, toothedHead } from "../../../../src/core/plant/weir.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

describe("a plain crest", () => {
  // Francis' formula worked independently for 0.60 m with two end contractions (francis-1883), L/h to three figures.
  it.each([
    [10, 3960],
    [15, 7260],
    [20, 11_170],
    [25, 15_580],
  ])("carries at %d mm of head %d L/h", (headMm, flow) => {
    expect(francisFlow(as(0.6), as(headMm), 2) / flow).toBeCloseTo(1, 2);
  });

  // In feet: 3.33 × (L − 0.2 H) × H^1.5; 3 ft crest, 0.2 ft head, two contractions: 0.8817 ft³/s.
  it("agrees with the formula in feet", () => {
    const cubicFeetPerSecond = 3.33 * (3 - 0.04) * 0.2 ** 1.5;
    const litresPerHour = cubicFeetPerSecond * 28.316846592 * 3600;
    expect(francisFlow(as(3 * 0.3048), as(0.2 * 304.8), 2) / litresPerHour).toBeCloseTo(1, 2);
  });

  it("gives the head back from its flow", () => {
    expect(francisHead(as(0.8), francisFlow(as(0.8), as(31), 1), 1)).toBeCloseTo(31, 6);
  });

  it("throws for a head beyond a third of the length's flow, or no crest", () => {
    expect(() => francisHead(as(0.05), as(50_000), 2)).toThrow(RangeError);
    expect(() => francisFlow(as(0), as(10), 2)).toThrow(RangeError);
    expect(() => francisFlow(as(0.01), as(60), 2)).toThrow(RangeError);
  });

  it("stands higher with part of it closed, and says that such heads were not tested", () => {
    const answer = answered(
      overflowHead(exactly(as(8000)), { kind: "plain", lengthM: exactly(as(0.6)), endContractions: 2 }),
    );
    const { headMm, thirdBlockedMm, halfBlockedMm } = answer.value;
    expect(thirdBlockedMm.best).toBeGreaterThan(headMm.best);
    // Half the length needs 2^⅔ = 1.587 times the head, end contractions aside.
    expect(halfBlockedMm.best / headMm.best).toBeCloseTo(1.59, 1);
    expect(raised(answer)).toContain("weir-below-tested-heads");
  });

  it("refuses a crest too short for the flow", () => {
    const crest = { kind: "plain", lengthM: exactly(as<never>(0.05)), endContractions: 2 } as const;
    expect(refused(overflowHead(exactly(as(20_000)), crest))).toBe("weir-drowned");
    expect(refused(overflowHead(exactly(as(0)), crest))).toBe("unusable-figure");
  });
});

describe("a toothed crest", () => {
  const crest = {
    kind: "toothed",
    slots: 60,
    slotWidthMm: exactly(as<never>(6)),
    toothHeightMm: exactly(as<never>(25)),
  } as const;

  it("gives the head back from its flow", () => {
    expect(toothedHead(60, as(6), toothedFlow(60, as(6), as(20)))).toBeCloseTo(20, 9);
    expect(() => toothedHead(0, as(6), as(100))).toThrow(RangeError);
    expect(() => toothedFlow(10, as(0), as(10))).toThrow(RangeError);
  });

  // Head goes with flow^⅔ (kindsvater-carter-1957): with half the slots closed 2^⅔ = 1.587 times as much.
  it("warns when the water would run over the teeth", () => {
    const half = answered(overflowHead(exactly(as(7000)), crest));
    expect(half.value.halfBlockedMm.best / half.value.headMm.best).toBeCloseTo(2 ** (2 / 3), 6);
    expect(half.value.overTeeth).toBe("when half blocked");
    expect(answered(overflowHead(exactly(as(9000)), crest)).value.overTeeth).toBe("even clean");
    const gentle = answered(overflowHead(exactly(as(2500)), crest));
    expect(gentle.value.overTeeth).toBe("no");
    expect(raised(half)).toContain("water-over-the-teeth");
    expect(raised(gentle)).not.toContain("water-over-the-teeth");
  });

  it("says nothing of teeth whose height is not known, and refuses no slots", () => {
    const { toothHeightMm: _, ...bare } = crest;
    expect(answered(overflowHead(exactly(as(7000)), bare)).value.overTeeth).toBeUndefined();
    expect(refused(overflowHead(exactly(as(7000)), { ...crest, slots: 0 }))).toBe("unusable-figure");
  });
});
