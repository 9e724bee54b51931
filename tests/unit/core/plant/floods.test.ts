import { describe, expect, it } from "vitest";
import { blockedDrain } from "../../../../src/core/plant/blocked-drain.ts";
import { type FailingContainer, largestSpill } from "../../../../src/core/plant/largest-spill.ts";
import { type PumpOffInputs, pumpOffFlood } from "../../../../src/core/plant/pump-off-flood.ts";
import { restart } from "../../../../src/core/plant/restart.ts";
import { type RowContainer, receiversOf } from "../../../../src/core/plant/row.ts";
import { skimmate } from "../../../../src/core/plant/skimmate.ts";
import { type TopOffFailureInputs, topOffFailure } from "../../../../src/core/plant/top-off-failure.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const exact = <Q extends number>(value: number) => exactly(value as Q);

function box(
  name: string,
  areaM2: number,
  freeboardMm: number,
  onward: RowContainer["onward"],
): RowContainer {
  return { name, areaM2: exact(areaM2), freeboardMm: exact(freeboardMm), onward };
}

const drum = (name: string): RowContainer => ({
  ...box(name, 0.17, 60, "overflows"),
  aboveOutletMm: exact(14),
});
const drums = ["drum 1", "drum 2", "drum 3", "drum 4"].map(drum);

/** By hand: display 2.60 m² × 25 mm = 65 L, pipes 16 L, box 10 L, four drums 0.17 m² × 14 mm = 9.52 L: 100.5 L.
 *  Room: (0.32 + 0.60) m² × 115 mm = 105.8 L. All mass-balance. */
const worked: PumpOffInputs = {
  display: { name: "display", areaM2: exact(2.6), aboveCrestMm: exact(25), returns: [] },
  overflowBoxL: exact(26),
  pipes: [],
  row: [
    ...drums,
    box("settling box", 0.32, 115, "shares level"),
    box("algae tank", 0.6, 115, "holds the pump"),
  ],
};

describe("what falls back when the pump stops", () => {
  it("is added up part by part", () => {
    const { fallback, freeL, riseMm, receivers } = answered(pumpOffFlood(worked)).value;
    expect(fallback.displayL.best).toBeCloseTo(65, 9);
    expect(fallback.cascadeL.best).toBeCloseTo(9.52, 9);
    expect(fallback.totalL.best).toBeCloseTo(100.52, 9);
    expect(freeL.best).toBeCloseTo(105.8, 9);
    expect(riseMm.best).toBeCloseTo(109.26, 2);
    expect(receivers).toEqual(["settling box", "algae tank"]);
  });
  it("holds 10 m of 52.5 mm pipe as 21.6 L", () => {
    const pipes = [{ name: "the drain", boreMm: as<never>(52.5), lengthM: as<never>(10) }];
    const { fallback } = answered(pumpOffFlood({ ...worked, pipes })).value;
    expect(fallback.pipesL.best).toBeCloseTo(21.65, 2);
  });
  it("fits at a factor of 1 and is tight at 1.25", () => {
    const bare = answered(pumpOffFlood({ ...worked, margin: 1 })).value.verdict;
    expect(bare).toMatchObject({ outcome: "fits" });
    expect(bare.leftMm.best).toBeCloseTo(5.74, 2); // (105.8 − 100.52) ÷ 0.92
    const answer = answered(pumpOffFlood(worked));
    expect(answer.value.verdict.outcome).toBe("tight");
    // (105.8 ÷ 1.25 − 35.52) ÷ 2.6 = 18.89 mm.
    expect(answer.value.allowedDropMm.best).toBeCloseTo(18.89, 2);
    expect(raised(answer)).toContain("pump-off-tight");
    expect(raised(answer)).toContain("do-pump-off-test");
    expect(raised(answer)).toContain("check-valve-not-counted");
  });
  it("floods one container with 72 L of room, and says which and by how much", () => {
    const answer = answered(
      pumpOffFlood({ ...worked, row: [...drums, box("pump box", 0.6, 120, "holds the pump")] }),
    );
    expect(answer.value.verdict).toMatchObject({ outcome: "floods", container: "pump box" });
    expect(answer.value.verdict.leftMm.best).toBeCloseTo((72 - 100.52) / 0.6, 6);
    expect(answer.cautions[0]).toMatchObject({
      code: "pump-off-floods",
      level: "danger",
      figures: { container: "pump box" },
    });
  });
  it("may flood when only the far end of the range does", () => {
    const answer = answered(
      pumpOffFlood({
        ...worked,
        display: { ...worked.display, aboveCrestMm: between(as(20), as(32), as(25)) },
      }),
    );
    expect(answer.value.verdict.outcome).toBe("may flood");
    expect(answer.driver?.input).toBe("depth of the overflow's crest");
  });
  it("gives no room to containers that pass their water on", () => {
    const roomy = drums.map((one) => ({ ...one, freeboardMm: exact<never>(900) }));
    const tight = answered(pumpOffFlood(worked)).value.freeL;
    const answer = answered(pumpOffFlood({ ...worked, row: [...roomy, ...worked.row.slice(4)] }));
    expect(answer.value.freeL).toEqual(tight);
    expect(raised(answer)).toContain("cascade-holds-nothing-more");
  });
  it("goes by the lowest opening of containers that share a level, whatever their heights", () => {
    const row = [
      box("settling box", 0.32, 115, "shares level"),
      box("algae tank", 0.6, 60, "holds the pump"),
    ];
    const { verdict, freeL } = answered(pumpOffFlood({ ...worked, row })).value;
    expect(verdict.container).toBe("algae tank");
    expect(freeL.best).toBeCloseTo(0.92 * 60, 9);
  });
  it("lets levels that stand apart in running meet at their mean", () => {
    // The second stands 20 mm lower; both rims are level, 100 mm over the first. Surfaces equal: mean 10 mm lower.
    const row = [
      box("first", 0.5, 100, "shares level"),
      { ...box("second", 0.5, 120, "holds the pump"), belowFirstMm: as<never>(20) },
    ];
    expect(answered(pumpOffFlood({ ...worked, row })).value.freeL.best).toBeCloseTo(110, 9);
  });
  it("lets a joined pair that overflows together fall to that outlet together", () => {
    const pair: RowContainer[] = [
      box("left", 0.2, 50, "shares level"),
      { ...box("right", 0.3, 50, "overflows"), aboveOutletMm: exact(10) },
      box("pump box", 1, 200, "holds the pump"),
    ];
    const { receivers, cascading } = receiversOf(pair);
    expect(receivers.map(({ name }) => name)).toEqual(["pump box"]);
    expect(cascading.map(({ name }) => name)).toEqual(["left", "right"]);
    expect(answered(pumpOffFlood({ ...worked, row: pair })).value.fallback.cascadeL.best).toBeCloseTo(5, 9);
  });
  it("takes the last container as the end, whatever was said of it", () => {
    expect(receiversOf([box("only", 1, 100, "overflows")]).receivers).toHaveLength(1);
  });
});

describe("a return outlet under water", () => {
  const nozzle = { name: "the return nozzle", belowLevelMm: exact<never>(150) };
  const withReturns = (returns: PumpOffInputs["display"]["returns"]): PumpOffInputs => ({
    ...worked,
    display: { ...worked.display, returns },
  });

  it("draws the display down to itself, 325 L more", () => {
    const answer = answered(pumpOffFlood(withReturns([nozzle])));
    expect(answer.value.lowestOpening).toBe("the return nozzle");
    expect(answer.value.dropMm.best).toBe(150);
    // 2.60 m² × (150 − 25) mm = 325 L.
    expect(answer.value.fallback.displayL.best - 65).toBeCloseTo(325, 9);
    expect(raised(answer)).toContain("return-empties-display");
  });
  it("stops at an inspected siphon break, and tells what a clogged one would cost", () => {
    const siphonBreak = { belowLevelMm: exact<never>(10), isInspected: true };
    const answer = answered(pumpOffFlood(withReturns([{ ...nozzle, siphonBreak }])));
    expect(answer.value.lowestOpening).toBe("the overflow's crest");
    expect(answer.value.fallback.displayL.best).toBeCloseTo(65, 9);
    expect(answer.value.ifSiphonBreaksClogL.best).toBeCloseTo(325, 9);
    expect(raised(answer)).toContain("siphon-break-needs-cleaning");
    expect(raised(answer)).not.toContain("return-empties-display");
  });
  it("does not trust a siphon break that nobody inspects", () => {
    const siphonBreak = { belowLevelMm: exact<never>(10), isInspected: false };
    expect(answered(pumpOffFlood(withReturns([{ ...nozzle, siphonBreak }]))).value.dropMm.best).toBe(150);
  });
});

describe("a row that cannot be", () => {
  it.each<[string, Partial<PumpOffInputs>, string]>([
    ["is empty", { row: [] }, "nothing-named"],
    ["has two of one name", { row: [drum("a"), drum("a")] }, "named-twice"],
    ["has no surface", { row: [box("a", 0, 10, "holds the pump")] }, "unusable-figure"],
    ["has less than no room", { row: [box("a", 1, -10, "holds the pump")] }, "unusable-figure"],
    ["has no margin", { margin: 0 }, "unusable-figure"],
    ["has a box below empty", { overflowBoxL: exact(-1) }, "unusable-figure"],
  ])("is refused when it %s", (_, change, code) => {
    expect(refused(pumpOffFlood({ ...worked, ...change }))).toBe(code);
  });
});

describe("a blocked drain with the pump running", () => {
  const inputs = { pumpableL: exact<never>(90), areaM2: exact<never>(2.6), freeboardMm: exact<never>(40) };
  it("raises the display by what the pump can reach", () => {
    const { value } = answered(blockedDrain({ ...inputs, flow: exact(5400) }));
    expect(value.riseMm.best).toBeCloseTo(34.62, 2); // 90 L ÷ 2.60 m²
    expect(value.outcome).toBe("fits");
    expect(value.minutes?.best).toBeCloseTo(1, 9); // 90 L at 5400 L/h
    expect(value.spilledL.best).toBe(0);
  });
  it("floods when the rim is lower, and may flood within the range", () => {
    const low = answered(blockedDrain({ ...inputs, freeboardMm: exact(30) }));
    expect(low.value.outcome).toBe("floods");
    expect(low.value.spilledL.best).toBeCloseTo(90 - 30 * 2.6, 9);
    expect(raised(low)).toContain("blocked-drain-floods");
    const near = answered(blockedDrain({ ...inputs, pumpableL: between(as(80), as(110), as(90)) }));
    expect(near.value.outcome).toBe("may flood");
    expect(raised(near)).toContain("blocked-drain-tight");
    expect(near.value.minutes).toBeUndefined();
  });
  it("refuses a display without a surface", () => {
    expect(refused(blockedDrain({ ...inputs, areaM2: exact(0) }))).toBe("unusable-figure");
  });
});

describe("one failed container", () => {
  const part = (
    name: string,
    areaM2: number,
    mm: number,
    isDisplay: boolean,
    group?: string,
  ): FailingContainer => ({
    name,
    areaM2: exact(areaM2),
    levelOverHoleMm: exact(mm),
    isDisplay,
    ...(group === undefined ? {} : { joinedGroup: group }),
  });
  const containers = [
    part("display", 2.6, 700, true),
    part("settling box", 0.32, 450, false, "row"),
    part("algae tank", 0.6, 450, false, "row"),
  ];
  it("empties with all joined to it, and with what still arrives", () => {
    const { value, cautions } = answered(
      largestSpill({ containers, fallbackL: exact(100), pumpableL: exact(90) }),
    );
    // Display 2.6 × 700 + 90 = 1910 L; the row (0.32 + 0.60) × 450 + 100 = 514 L.
    expect(value.container).toBe("display");
    expect(value.litres.best).toBeCloseTo(1910, 9);
    expect(value.each.map(({ litres }) => Math.round(litres.best))).toEqual([1910, 514, 514]);
    expect(cautions.map(({ code }) => code)).toContain("ask-an-electrician");
  });
  it("empties alone behind a closed valve", () => {
    const alone = [part("settling box", 0.32, 450, false), part("algae tank", 0.6, 450, false)];
    const { each } = answered(
      largestSpill({ containers: alone, fallbackL: exact(100), pumpableL: exact(0) }),
    ).value;
    expect(each.map(({ litres }) => Math.round(litres.best))).toEqual([244, 370]);
  });
  it("refuses none, and two of one name", () => {
    expect(refused(largestSpill({ containers: [], fallbackL: exact(0), pumpableL: exact(0) }))).toBe(
      "nothing-named",
    );
    const twice = [part("a", 1, 1, false), part("a", 1, 1, false)];
    expect(refused(largestSpill({ containers: twice, fallbackL: exact(0), pumpableL: exact(0) }))).toBe(
      "named-twice",
    );
  });
});

describe("starting again", () => {
  it("draws air when more goes up than the chamber holds", () => {
    const answer = answered(restart({ refillL: exact(91), chamberL: exact(80), flow: exact(5460) }));
    expect(answer.value.leftL.best).toBe(-11);
    expect(answer.value.refillMinutes.best).toBeCloseTo(1, 9);
    expect(raised(answer)).toContain("restart-runs-dry");
    expect(raised(restart({ refillL: exact(91), chamberL: exact(120), flow: exact(5460) }))).not.toContain(
      "restart-runs-dry",
    );
    expect(refused(restart({ refillL: exact(91), chamberL: exact(120), flow: exact(0) }))).toBe(
      "unusable-figure",
    );
  });
});

describe("a top-off that fails", () => {
  const inputs: TopOffFailureInputs = {
    evaporationKgPerDay: exact(14),
    systemL: exact(2300),
    salinity: exact(35),
    container: "the pump box",
    usableChamberL: exact(20),
    freeL: exact(110),
    fallbackL: exact(60),
    source: { kind: "reservoir", litres: exact(70), fillLPerH: exact(120) },
  };
  it("leaves the pump 34 hours, and salts the water up meanwhile", () => {
    const { ifItStops, reservoirDays } = answered(topOffFailure(inputs)).value;
    expect(ifItStops.hoursToDry.best).toBeCloseTo(34.29, 2); // 20 L ÷ 14 kg/d
    // Salt stays: 35 × 2300 ÷ 2280 = 35.31 by volume.
    expect(ifItStops.salinityThen.best).toBeCloseTo(35.31, 1);
    expect(ifItStops.salinityRisePerDay.best).toBeCloseTo((35 * 14) / 2300, 6);
    expect(reservoirDays?.best).toBe(5);
  });
  it("dumps its reservoir: salinity falls by one, and the pump-off state runs over", () => {
    const answer = answered(topOffFailure(inputs));
    const { ifItSticksOn } = answer.value;
    // 35 × 2300 ÷ 2370 = 33.97 by volume.
    expect(ifItSticksOn.salinityThen.best).toBeCloseTo(33.97, 1);
    expect(ifItSticksOn.overWhileRunningL.best).toBe(0);
    expect(ifItSticksOn.overAfterPumpOffL.best).toBe(20); // 70 + 60 − 110
    expect(ifItSticksOn.minutesToRunOver.best).toBe(55); // 110 L at 120 L/h
    expect(raised(answer)).toContain("top-off-floods");
    expect(raised(answer)).toContain("top-off-shifts-salinity");
  });
  it("is quiet about a reservoir that fits", () => {
    const source = { kind: "reservoir", litres: exact<never>(20), fillLPerH: exact<never>(60) } as const;
    const codes = raised(topOffFailure({ ...inputs, source }));
    expect(codes).not.toContain("top-off-floods");
    expect(codes).not.toContain("top-off-shifts-salinity");
  });
  it("never ends when fed from the mains", () => {
    const answer = answered(topOffFailure({ ...inputs, source: { kind: "mains", fillLPerH: exact(200) } }));
    expect(answer.value.ifItSticksOn.litres.best).toBe(4800);
    expect(answer.value.reservoirDays).toBeUndefined();
    expect(raised(answer)).toContain("mains-fill-never-stops");
  });
  it("refuses a chamber larger than the system, and no evaporation", () => {
    expect(refused(topOffFailure({ ...inputs, usableChamberL: exact(2300) }))).toBe("unusable-figure");
    expect(refused(topOffFailure({ ...inputs, evaporationKgPerDay: exact(0) }))).toBe("unusable-figure");
  });
});

describe("a collecting cup", () => {
  const inputs = {
    rate: exact<never>(0.8),
    cupL: exact<never>(2),
    inCupL: exact<never>(0.4),
    systemL: exact<never>(2300),
    salinity: exact<never>(35),
  };
  it("is full in two days, and takes 5.6 L of salt water a week", () => {
    const answer = answered(skimmate(inputs));
    expect(answer.value.hoursToFull.best).toBeCloseTo(48, 9); // 1.6 L at 0.8 L a day
    expect(answer.value.litresPerWeek.best).toBeCloseTo(5.6, 9);
    expect(answer.value.salinityFallPerWeek.best).toBeCloseTo((35 * 5.6) / 2300, 3);
    expect(answer.cautions[0]).toMatchObject({ code: "skimmate-overflows", level: "note" });
  });
  it("warns when it is full within a day, and is full now when it holds more than it can", () => {
    expect(answered(skimmate({ ...inputs, rate: exact(5) })).cautions[0]?.level).toBe("warning");
    expect(answered(skimmate({ ...inputs, inCupL: exact(3) })).value.hoursToFull.best).toBe(0);
    expect(refused(skimmate({ ...inputs, rate: exact(0) }))).toBe("unusable-figure");
  });
});
