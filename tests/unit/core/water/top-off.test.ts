import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type Days,
  type DegreesC,
  type Litres,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { topOff } from "../../../../src/core/water/top-off.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const ppt = (s: number, error = 0) =>
  between(as<PracticalSalinity>(s - error), as<PracticalSalinity>(s + error));
const litres = (v: number) => exactly(as<Litres>(v));
const system = (v: number, t = 25) => ({ volume: litres(v), temperature: exactly(as<DegreesC>(t)) });
const lost = (v: number, s: number) => ({
  kind: "litres" as const,
  evaporated: litres(v),
  salinityFull: ppt(s),
});
const read = (before: number, now: number, error = 0) => ({
  kind: "salinity" as const,
  before: ppt(before, error),
  now: ppt(now, error),
});

describe("salinity after evaporation", () => {
  // gsw 3.6.16 densities and conservation of salt.
  it.each([
    { v: 100, s: 35, t: 25, gone: 5, now: 36.7923 },
    { v: 300, s: 34, t: 26, gone: 12, now: 35.3799 },
  ])("$gone L out of $v L", ({ v, s, t, gone, now }) => {
    const { value } = answered(topOff({ ...system(v, t), lost: lost(gone, s) }));
    expect(value.salinityNow.best).toBeCloseTo(now, 3);
    expect(value.freshWaterL.best).toBeCloseTo(gone, 9);
  });

  it("the same read backwards gives the litres", () => {
    const { value } = answered(topOff({ ...system(100), lost: read(35, 36.7923) }));
    expect(value.freshWaterL.best).toBeCloseTo(5, 2);
  });

  it("shared over the days it took", () => {
    const { value } = answered(topOff({ ...system(100), lost: lost(5, 35), days: exactly(as<Days>(4)) }));
    expect(value.freshWaterPerDay?.best).toBeCloseTo(1.25, 9);
    expect(value.driftPerDay?.best).toBeCloseTo(1.7923 / 4, 3);
  });

  it("says nothing per day when the days are not known", () => {
    const { value } = answered(topOff({ ...system(100), lost: lost(5, 35) }));
    expect(value).not.toHaveProperty("driftPerDay");
    expect(value).not.toHaveProperty("salinityIfDumped");
  });
});

it("shows what a reservoir could do if it ran in", () => {
  // 70 L into 2300 L takes 35 to about 34.0, by volume; a common worked example of the trade.
  const answer = answered(topOff({ ...system(2300), lost: lost(14, 35), reservoir: litres(70) }));
  expect(answer.value.salinityIfDumped?.best).toBeCloseTo(34, 1);
  const cautions = (reservoirL: number) =>
    raised(topOff({ ...system(2300), lost: lost(14, 35), reservoir: litres(reservoirL) }));
  expect(cautions(100)).toContain("reservoir-can-dump");
  expect(cautions(50)).not.toContain("reservoir-can-dump");
});

it("doubts two readings closer than their error, and never asks for less than nothing", () => {
  const answer = answered(topOff({ ...system(300), lost: read(35, 35.4, 0.5) }));
  expect(raised(answer)).toContain("change-within-error");
  expect(answer.value.freshWaterL.low).toBe(0);
  // Two errors of 0.5 add as squares to 0.707 (JCGM 100:2008).
  expect(raised(topOff({ ...system(300), lost: read(35, 35.65, 0.5) }))).toContain("change-within-error");
  expect(raised(topOff({ ...system(300), lost: read(35, 35.75, 0.5) }))).not.toContain("change-within-error");
});

it.each([
  ["salinity that fell", topOff({ ...system(300), lost: read(35, 34) }), "salinity-fell"],
  ["more than there is", topOff({ ...system(300), lost: lost(320, 35) }), "more-than-there-is"],
  ["less than nothing", topOff({ ...system(300), lost: lost(-1, 35) }), "not-credible"],
  ["no water", topOff({ ...system(0), lost: lost(1, 35) }), "not-credible"],
] as const)("refuses %s", (_, result, code) => expect(refused(result)).toBe(code));
