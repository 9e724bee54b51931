import { describe, expect, it } from "vitest";
import {
  fullSiphonFlow,
  openStandpipeFlow,
  openStandpipeHead,
  slopedFlow,
  wallFilmFlow,
} from "../../../../src/core/plant/drain-flow.ts";
import { type DrainElement, drainPath } from "../../../../src/core/plant/drain-path.ts";
import { SCHEDULE_40_BORE_MM } from "../../../../src/core/plant/pipe-data.ts";
import { type SiphonDrainInputs, siphonDrain, standbySize } from "../../../../src/core/plant/siphon-drain.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const bore = SCHEDULE_40_BORE_MM;

describe("a full siphon", () => {
  // The energy equation solved apart from this project: drop 0.75 m, 2 m of pipe, three elbows (0.9),
  // entry 0.5 and the exit; viscosity of seawater at 25 °C (sharqawy-2010). L/h to three figures.
  it.each([
    ["1", 3180],
    ["1 1/4", 5780],
    ["1 1/2", 8000],
    ["2", 13_500],
  ] as const)("of %s inch carries %d L/h", (size, flow) => {
    expect(fullSiphonFlow(as(0.75), as(2), bore[size], 3.2, as(9.37e-7)) / flow).toBeCloseTo(1, 2);
  });

  it("without pipe or fittings runs as fast as it would fall", () => {
    // Torricelli: √(2 × 9.80665 × 1) = 4.4287 m/s through π/4 × 0.05² m² is 31 305 L/h.
    expect(fullSiphonFlow(as(1), as(0), as(50), 0, as(1e-6))).toBeCloseTo(31_305, -1);
    expect(fullSiphonFlow(as(0), as(1), as(50), 0, as(1e-6))).toBeCloseTo(0, 6);
    expect(() => fullSiphonFlow(as(-1), as(0), as(50), 0, as(1e-6))).toThrow(RangeError);
  });
});

describe("a pipe running open", () => {
  // wyly-eaton-1961 in its own units: 27.8 × r^(5/3) × d^(8/3) US gallons a minute, d in inches.
  it.each([1, 1.5, 2, 3, 4])("of %f inch inside carries what the formula says in gallons", (inches) => {
    const litresPerHour = 27.8 * 0.25 ** (5 / 3) * inches ** (8 / 3) * 3.785411784 * 60;
    expect(wallFilmFlow(as(inches * 25.4)) / litresPerHour).toBeCloseTo(1, 2);
  });
  it("is never filled above a third", () => {
    expect(() => wallFilmFlow(as(50), 0.5)).toThrow(RangeError);
    expect(wallFilmFlow(as(50), 1 / 3)).toBeGreaterThan(wallFilmFlow(as(50)));
  });
  it("is a weir while shallow and an orifice once flooded", () => {
    // Both by hand for a 50 mm rim: weir 1.84·π·0.05·0.005^1.5; orifice 0.6·π/4·0.05²·√(2g·0.2), m³/s.
    expect(openStandpipeFlow(as(50), as(5)) / 3.6e6).toBeCloseTo(1.0219e-4, 7);
    expect(openStandpipeFlow(as(50), as(200)) / 3.6e6).toBeCloseTo(2.3334e-3, 6);
    expect(openStandpipeHead(as(50), openStandpipeFlow(as(50), as(5)))).toBeCloseTo(5, 9);
    expect(openStandpipeHead(as(50), openStandpipeFlow(as(50), as(200)))).toBeCloseTo(200, 6);
  });
  it("carries half full half of what it carries full, sloped", () => {
    // Manning: full and half-full have the same hydraulic radius, D/4.
    expect(slopedFlow(as(50), 0.5, 0.02) * 2).toBeCloseTo(slopedFlow(as(50), 1, 0.02), 6);
    expect(() => slopedFlow(as(50), 1.2, 0.02)).toThrow(RangeError);
  });
});

const siphon: Extract<DrainElement, { kind: "full siphon" }> = {
  kind: "full siphon",
  name: "the main drain",
  dropM: exactly(as(0.75)),
  lengthM: exactly(as(2)),
  boreMm: exactly(bore["1 1/2"]),
  fittings: [
    { fitting: "90° elbow", count: 3 },
    { fitting: "flush entry", count: 1 },
    { fitting: "exit", count: 1 },
  ],
};

describe("the way down", () => {
  const fall: DrainElement = { kind: "vertical pipe", name: "the fall", boreMm: exactly(bore["2"]) };
  const rim: DrainElement = {
    kind: "open rim",
    name: "the rim",
    diameterMm: exactly(bore["2"]),
    headMm: exactly(as(12)),
  };
  const slope: DrainElement = {
    kind: "sloped pipe",
    name: "the run to the box",
    boreMm: exactly(bore["2"]),
    slope: exactly(0.02),
  };

  it("carries what its narrowest piece carries", () => {
    const { value } = answered(drainPath([fall, rim, slope], exactly(as(1000))));
    expect(value.narrowest).toBe("the rim");
    // 1436 L/h at 12 mm on a 52.5 mm rim: riser-stage-discharge, worked by hand.
    expect(value.capacityLPerH.best).toBeCloseTo(1436, -1);
    expect(value.isEnough).toBe(true);
    expect(value.elements).toHaveLength(3);
  });
  it("is not enough when its low end is below the flow's high end", () => {
    const answer = answered(drainPath([fall, rim], between(as(900), as(1200))));
    expect(answer.value.isEnough).toBe(false);
    expect(raised(answer)).toContain("drain-too-small");
  });
  it("counts the exit of a siphon once", () => {
    // 8000 L/h with three elbows, an entry and one exit, as above.
    expect(answered(drainPath([siphon], exactly(as(5000)))).value.capacityLPerH.best / 8000).toBeCloseTo(
      1,
      2,
    );
  });
  it("refuses an empty way and impossible pieces", () => {
    expect(refused(drainPath([], exactly(as(1000))))).toBe("nothing-named");
    expect(refused(drainPath([{ ...rim, headMm: exactly(as(0)) }], exactly(as(1000))))).toBe(
      "unusable-figure",
    );
    expect(refused(drainPath([{ ...slope, slope: exactly(-0.1) }], exactly(as(1000))))).toBe(
      "unusable-figure",
    );
    expect(refused(drainPath([{ ...siphon, dropM: exactly(as(0)) }], exactly(as(1))))).toBe(
      "unusable-figure",
    );
    expect(refused(drainPath([{ ...fall, boreMm: exactly(as(0)) }], exactly(as(1))))).toBe("unusable-figure");
  });
});

describe("a siphon drain losing its prime", () => {
  const inputs: SiphonDrainInputs = {
    flow: exactly(as(6000)),
    siphon,
    headAllowedMm: exactly(as(40)),
    surfaceM2: exactly(as(2)),
  };

  it("falls to about a third, and the display rises by what is left over", () => {
    const { value } = answered(siphonDrain(inputs));
    // 8000 and 2230 L/h: energy equation and wyly-eaton-1961, worked apart from this project.
    expect(value.primedLPerH.best / 8000).toBeCloseTo(1, 2);
    expect(value.unprimedLPerH.best / 2230).toBeCloseTo(1, 2);
    expect(value.leftOverLPerH.best).toBeCloseTo(6000 - value.unprimedLPerH.best, 6);
    // Litres an hour over 2 m², in mm a minute.
    expect(value.riseMmPerMin?.best).toBeCloseTo((6000 - value.unprimedLPerH.best) / 2 / 60, 6);
  });
  it("wants a standby for the whole flow", () => {
    const half = { name: "the standby", boreMm: exactly(bore["1 1/2"]), headMm: exactly(as<never>(30)) };
    const answer = answered(siphonDrain({ ...inputs, standby: half }));
    expect(answer.value.isStandbyEnough).toBe(false);
    expect(raised(answer)).toContain("standby-too-small");
    const whole = { ...half, boreMm: exactly(bore["4"]) };
    expect(answered(siphonDrain({ ...inputs, standby: whole })).value.isStandbyEnough).toBe(true);
  });
  it("names the smallest pipe that takes the whole flow open", () => {
    // By wyly-eaton-1961 at a quarter: 2 in 4340, 3 in 12 440 L/h; 6000 L/h needs 3 in.
    expect(answered(siphonDrain(inputs)).value.standbySize).toBe("3");
    expect(standbySize(as(90_000), as(40))).toBeUndefined();
    // 6000 L/h over a 77.9 mm rim needs 24 mm, a weir; with the formula a quarter off, 8000 L/h need 31 mm,
    // an orifice: (q ÷ (1.84 π D))^⅔ and (q ÷ 0.6 A)² ÷ 2g by hand.
    expect(standbySize(as(6000), as(32))).toBe("3");
    expect(standbySize(as(6000), as(26))).toBe("4");
    // A rim too shallow for the flow rules a pipe out even when its fall would do.
    expect(standbySize(as(6000), as(12))).not.toBe("3");
  });
  it("warns when the siphon itself is too small, and refuses no flow", () => {
    expect(raised(siphonDrain({ ...inputs, flow: exactly(as(9000)) }))).toContain("drain-too-small");
    expect(refused(siphonDrain({ ...inputs, flow: exactly(as(-5)) }))).toBe("unusable-figure");
    const { surfaceM2: _, ...unknown } = inputs;
    expect(answered(siphonDrain(unknown)).value.riseMmPerMin).toBeUndefined();
  });
});
