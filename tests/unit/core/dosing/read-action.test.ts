import { describe, expect, it } from "vitest";
import { checkPlan } from "../../../../src/core/dosing/check-plan.ts";
import { doseClassOf, loggedAction, readAction } from "../../../../src/core/dosing/read-action.ts";
import { as, type Hours } from "../../../../src/core/quantity/units.ts";

describe("something planned, in words", () => {
  it.each([
    ["dose alcohol", { kind: "dose", of: "carbon" }],
    ["20 mL of vodka", { kind: "dose", of: "carbon" }],
    ["dose the ammonia binder", { kind: "dose", of: "ammonia binder" }],
    ["dose baking soda", { kind: "dose", of: "carbonate" }],
    ["dose calcium chloride", { kind: "dose", of: "calcium" }],
    ["add epsom salt", { kind: "dose", of: "magnesium" }],
    ["dose trace elements", { kind: "dose", of: "other" }],
    ["I forgot the alcohol", { kind: "missed dose", of: "carbon" }],
    ["skimmer off", { kind: "equipment", item: "skimmer", state: "off" }],
    ["clean the skimmer", { kind: "equipment", item: "skimmer", state: "off" }],
    ["stop the return pump", { kind: "equipment", item: "main pump", state: "off" }],
    ["air pump back on", { kind: "equipment", item: "main aerator", state: "on" }],
    ["test ammonia", { kind: "ammonia test planned", test: "total ammonia" }],
    ["test free ammonia", { kind: "ammonia test planned", test: "free ammonia" }],
    ["water change", { kind: "water change", liftsPH: false }],
    ["water change with higher ph", { kind: "water change", liftsPH: true }],
    ["new food", { kind: "change", what: "new food" }],
    ["new activated carbon", { kind: "change", what: "new activated carbon" }],
  ])("%s", (text, expected) => {
    const read = readAction(text);
    expect(read.kind === "read" && read.value).toEqual(expected);
  });

  it("asks what it cannot tell, with answers that read", () => {
    const read = readAction("zzz");
    expect(read.kind).toBe("ask");
    for (const { text } of read.kind === "ask" ? read.choices : [])
      expect(readAction(text).kind).toBe("read");
  });
});

describe("what was logged", () => {
  const now = Date.UTC(2026, 2, 4, 12);
  const at = "2026-03-04T06:00:00.000Z";

  it("counts hours back from now", () => {
    expect(loggedAction({ kind: "event", event: "dose", text: "calcium", at }, now)).toEqual({
      at: -6,
      kind: "dose",
      of: "calcium",
    });
  });

  it("takes no notice of what no rule bears on", () => {
    expect(loggedAction({ kind: "event", event: "feeding", text: "prawn", at }, now)).toBeUndefined();
    expect(
      loggedAction({ kind: "event", event: "equipment off", text: "dosing pump", at }, now),
    ).toBeUndefined();
    expect(loggedAction({ kind: "reading", parameter: "nitrate", best: 9, at }, now)).toBeUndefined();
  });

  it("tells a trace of ammonia from some (common practice, no source)", () => {
    const read = (best: number) => loggedAction({ kind: "reading", parameter: "ammonia", best, at }, now);
    expect(read(0.05)).toMatchObject({ isPresent: false });
    expect(read(0.2)).toMatchObject({ isPresent: true });
  });

  it("does not mistake filter carbon for a dose of carbon", () => {
    expect(doseClassOf("activated carbon")).toBe("other");
    expect(doseClassOf("carbon source")).toBe("carbon");
  });
});

it("tells of clashes with the plan only, not of old ones among themselves", () => {
  const hours = (value: number) => as<Hours>(value);
  const old = [
    { at: hours(-60), kind: "equipment", item: "skimmer", state: "off" },
    { at: hours(-58), kind: "dose", of: "carbon" },
    { at: hours(-50), kind: "equipment", item: "skimmer", state: "on" },
  ] as const;
  expect(checkPlan({ kind: "water change", liftsPH: false }, hours(0), old).value.found).toEqual([]);
  const again = checkPlan({ kind: "equipment", item: "skimmer", state: "off" }, hours(-40), old).value;
  expect(again.found.map(({ caution }) => caution.code)).toEqual(["off-soon-after-carbon"]);
  expect(again.found[0]?.with).toEqual([1]);
});
