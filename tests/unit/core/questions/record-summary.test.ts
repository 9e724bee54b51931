import { describe, expect, it } from "vitest";
import { findRecorded } from "../../../../src/core/questions/find-event.ts";
import { summaryBetween } from "../../../../src/core/questions/record-summary.ts";

const readings = [
  { at: 10, best: 5 },
  { at: 30, best: 9 },
  { at: 20, best: 7 },
  { at: 40, best: 1 },
];

describe("a summary of the record", () => {
  it("takes what lies from the first moment up to the second", () => {
    const { inside, lowest, highest, median, before, after } = summaryBetween(readings, 20, 40);
    expect(inside.map(({ at }) => at)).toEqual([20, 30]);
    expect([lowest?.best, highest?.best, median]).toEqual([7, 9, 8]);
    expect([before?.at, after?.at]).toEqual([10, 40]);
  });

  it("has neighbours but no values where nothing lies inside", () => {
    const { inside, lowest, median, before, after } = summaryBetween(readings, 21, 29);
    expect(inside).toEqual([]);
    expect([lowest, median]).toEqual([undefined, undefined]);
    expect([before?.at, after?.at]).toEqual([20, 30]);
  });

  it("is empty for an empty record", () => {
    expect(summaryBetween([], 0, 1)).toEqual({ inside: [] });
  });
});

describe("the event meant", () => {
  const events = [
    { event: "water change", text: "" },
    { event: "livestock in", text: "queen triggerfish" },
    { event: "note", text: "added the tang" },
    { event: "livestock in", text: "damsel" },
    { event: "media change", text: "carbon" },
  ];

  it("is the newest of its kind with the word in it", () => {
    expect(findRecorded(events, "livestock in", undefined)?.text).toBe("queen triggerfish");
    expect(findRecorded(events, "livestock in", "trigger")?.text).toBe("queen triggerfish");
    expect(findRecorded(events, "livestock in", "damsels")?.text).toBe("damsel");
    expect(findRecorded(events, "media change", "filter media")?.text).toBe("carbon");
  });

  it("may stand in a note, and is no other event when the word is not there", () => {
    expect(findRecorded(events, "livestock in", "tang")?.event).toBe("note");
    expect(findRecorded(events, "livestock in", "eel")).toBeUndefined();
  });
});
