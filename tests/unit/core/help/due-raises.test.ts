import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dueRaises, isQuiet, UNANSWERED_MS } from "../../../../src/core/help/due-raises.ts";

const HOUR = 3_600_000;
const NEVER = { from: 0, until: 0 };
const waiting = { id: 7, openedAt: 0, isOpen: true };

describe("a case nobody has answered", () => {
  it("is due after twelve hours and not before", () => {
    expect(UNANSWERED_MS).toBe(12 * HOUR);
    expect(dueRaises([waiting], 12 * HOUR - 1, 600, NEVER)).toEqual([]);
    expect(dueRaises([waiting], 12 * HOUR, 600, NEVER)).toEqual([7]);
  });

  it("is not due once answered, raised or closed", () => {
    for (const change of [{ answeredAt: 1 }, { raisedAt: 1 }, { isOpen: false }])
      expect(dueRaises([{ ...waiting, ...change }], 20 * HOUR, 600, NEVER)).toEqual([]);
  });

  it("waits while the helper is in quiet hours, also over midnight", () => {
    const night = { from: 22 * 60, until: 7 * 60 };
    for (const minute of [22 * 60, 23 * 60 + 59, 0, 6 * 60 + 59]) expect(isQuiet(minute, night)).toBe(true);
    for (const minute of [7 * 60, 12 * 60, 21 * 60 + 59]) expect(isQuiet(minute, night)).toBe(false);
    expect(dueRaises([waiting], 20 * HOUR, 60, night)).toEqual([]);
  });

  it("is never told in quiet hours, whatever they are", () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(minute, minute, minute, fc.integer({ min: 0, max: 100 * HOUR }), (at, from, until, now) => {
        const due = dueRaises([waiting], now, at, { from, until });
        if (isQuiet(at, { from, until })) expect(due).toEqual([]);
        else expect(due.length === 1).toBe(now >= UNANSWERED_MS);
      }),
    );
  });
});
