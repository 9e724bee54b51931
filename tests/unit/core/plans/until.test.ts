import { describe, expect, it } from "vitest";
import { reachedBy, readUntil, type Seen } from "../../../../src/core/plans/until.ts";

function seen(...values: readonly (number | readonly [number, number])[]): readonly Seen[] {
  return values.map((value, index) => {
    const [low, high] = typeof value === "number" ? [value, value] : value;
    return { best: (low + high) / 2, low, high, at: 1000 - index };
  });
}

describe("an end in words", () => {
  it.each([
    ["nitrate under 10 twice", { parameter: "nitrate", side: "under", limit: 10, times: 2 }],
    [
      "until no3 is below 10 mg/L 3 times in a row",
      { parameter: "nitrate", side: "under", limit: 10, times: 3 },
    ],
    ["ph above 8", { parameter: "ph", side: "above", limit: 8, times: 1 }],
  ])("%s", (text, expected) => {
    expect(readUntil(text, {})).toMatchObject({ kind: "read", value: expected });
  });

  it("asks where a figure could be two things, and reads what it offers", () => {
    const asked = readUntil("ammonia < 0.25 twice", {});
    expect(asked.kind).toBe("ask");
    for (const { text } of asked.kind === "ask" ? asked.choices : [])
      expect(readUntil(text, {})).toMatchObject({ kind: "read", value: { parameter: "ammonia", times: 2 } });
  });

  it.each(["", "soon", "nitrate", "nitrate under", "under 10", "nitrate under 10 0 times"])(
    "%s is refused",
    (text) => {
      expect(readUntil(text, {}).kind).toBe("unreadable");
    },
  );
});

describe("the end has come", () => {
  const until = { parameter: "nitrate", side: "under", limit: 10, times: 2 } as const;

  it("only when so many of the newest readings in a row lie beyond the limit", () => {
    expect(reachedBy(until, seen(8, 9, 40))).toHaveLength(2);
    expect(reachedBy(until, seen(8, 12, 5, 5))).toBeUndefined();
    expect(reachedBy(until, seen(8))).toBeUndefined();
  });

  it("not by a reading that may lie on either side, nor by one at the limit", () => {
    expect(reachedBy(until, seen([5, 15], 8))).toBeUndefined();
    expect(reachedBy(until, seen(10, 8))).toBeUndefined();
  });
});
