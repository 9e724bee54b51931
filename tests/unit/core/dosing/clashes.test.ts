import { describe, expect, it } from "vitest";
import { clashes, type DatedAction } from "../../../../src/core/dosing/clashes.ts";
import { as, type Hours } from "../../../../src/core/quantity/units.ts";
import { sayCaution } from "../../../../src/wording/index.ts";

const at = (hours: number) => ({ at: as<Hours>(hours) });
const carbon = (hours: number): DatedAction => ({ ...at(hours), kind: "dose", of: "carbon" });
const skimmer = (hours: number, state: "on" | "off"): DatedAction => ({
  ...at(hours),
  kind: "equipment",
  item: "skimmer",
  state,
});
const found = (...actions: DatedAction[]) =>
  clashes(actions).map(({ caution, actions: places }) => [caution.code, ...places]);

describe("clashes", () => {
  it("finds carbon while the skimmer is off", () => {
    expect(found(skimmer(0, "off"), carbon(5), skimmer(10, "on"))).toEqual([["carbon-while-off", 0, 1]]);
    expect(found(skimmer(0, "off"), skimmer(4, "on"), carbon(5))).toEqual([]);
  });

  it("takes equipment that was never switched on again as off", () => {
    expect(found(skimmer(0, "off"), carbon(200))).toEqual([["carbon-while-off", 0, 1]]);
    expect(found(skimmer(0, "off"), skimmer(3, "off"), carbon(200))).toEqual([["carbon-while-off", 0, 2]]);
  });

  it("finds equipment going off soon after carbon, but lets a feeding pause pass", () => {
    expect(found(carbon(0), skimmer(6, "off"), skimmer(30, "on"))).toEqual([["off-soon-after-carbon", 0, 1]]);
    expect(found(carbon(0), skimmer(6, "off"), skimmer(6.5, "on"))).toEqual([]);
    expect(found(carbon(0), skimmer(30, "off"))).toEqual([]);
  });

  it("finds a binder before a total-ammonia test, but not after it or long before", () => {
    const binder: DatedAction = { ...at(10), kind: "dose", of: "ammonia binder" };
    const test = (hours: number, of: "total ammonia" | "free ammonia"): DatedAction => ({
      ...at(hours),
      kind: "ammonia test planned",
      test: of,
    });
    expect(found(binder, test(40, "total ammonia"))).toEqual([["binder-before-test", 0, 1]]);
    expect(found(binder, test(40, "free ammonia"))).toEqual([]);
    expect(found(binder, test(60, "total ammonia"))).toEqual([]);
    expect(found(test(5, "total ammonia"), binder)).toEqual([]);
  });

  it("finds what lifts the pH while there is ammonia", () => {
    const reading = (hours: number, isPresent: boolean): DatedAction => ({
      ...at(hours),
      kind: "ammonia reading",
      isPresent,
    });
    const change = (liftsPH: boolean): DatedAction => ({ ...at(20), kind: "water change", liftsPH });
    expect(found(reading(0, true), change(true))).toEqual([["ph-lift-with-ammonia", 0, 1]]);
    expect(found(reading(0, true), change(false))).toEqual([]);
    expect(found(reading(0, true), reading(10, false), change(true))).toEqual([]);
    expect(found(reading(0, true), { ...at(3), kind: "dose", of: "carbonate" })).toEqual([
      ["ph-lift-with-ammonia", 0, 1],
    ]);
  });

  it("finds calcium and carbonate together, in order of time", () => {
    const calcium: DatedAction = { ...at(8), kind: "dose", of: "calcium" };
    const carbonate = (hours: number): DatedAction => ({ ...at(hours), kind: "dose", of: "carbonate" });
    expect(found(calcium, carbonate(8))).toEqual([["calcium-meets-carbonate", 0, 1]]);
    expect(found(calcium, carbonate(7))).toEqual([["calcium-meets-carbonate", 1, 0]]);
    expect(found(calcium, carbonate(20))).toEqual([]);
  });

  it("never lets a missed dose be caught up", () => {
    expect(found({ ...at(0), kind: "missed dose", of: "carbon" }, carbon(24))).toEqual([
      ["missed-dose-stays-missed", 0, 1],
    ]);
    expect(found({ ...at(0), kind: "missed dose", of: "carbon" })).toEqual([["missed-dose-stays-missed", 0]]);
  });

  it("finds two changes in one week", () => {
    const change = (hours: number, what: string): DatedAction => ({ ...at(hours), kind: "change", what });
    const close = clashes([change(72, "new food"), change(0, "second skimmer")]);
    expect(close.map((clash) => clash.actions)).toEqual([[1, 0]]);
    expect(close.map((clash) => sayCaution(clash.caution)).join()).toMatch(
      /3 days apart \(second skimmer, new food\)/,
    );
    expect(found(change(0, "second skimmer"), change(168, "new food"))).toEqual([]);
  });
});
