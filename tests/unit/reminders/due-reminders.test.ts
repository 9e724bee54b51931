import { describe, expect, it } from "vitest";
import type { TankLog } from "../../../src/core/plans/regimens.ts";
import { calendarOf } from "../../../src/kit/calendar.ts";
import type { MemberId } from "../../../src/records/ids.ts";
import type { DutyWords, RunningPlan } from "../../../src/records/plan.ts";
import { dueReminders, type Look } from "../../../src/reminders/due-reminders.ts";

const EMPTY: TankLog = { readings: () => [], events: () => [], off: [] };
const at = (text: string): number => Date.parse(`2026-03-${text}:00Z`);
const DAY0 = Date.UTC(2026, 2, 4) / 86_400_000;

const plan: RunningPlan = {
  id: 1,
  owner: "test:ines" as MemberId,
  tankId: 1,
  task: { kind: "words", words: "clean the glass" },
  rule: { kind: "every", days: 1, from: DAY0, minute: 19 * 60 },
  typed: "clean the glass",
  state: "running",
  notBefore: "2026-03-04T12:00:00.000Z",
  createdAt: "2026-03-04T12:00:00.000Z",
  nextAt: "2026-03-04T19:00:00.000Z",
  zone: "UTC",
};

function look(now: number, words: Partial<DutyWords> = {}): Look {
  return {
    now,
    calendar: calendarOf("UTC"),
    log: EMPTY,
    followed: [],
    seen: [],
    settle: () => ({ kind: "do", words: { title: "t", lines: [], cautions: [], ...words } }),
  };
}

describe("what falls due of a plan", () => {
  it("is nothing before its time, and one at it", () => {
    expect(dueReminders(plan, look(at("04T18:59"))).duties).toEqual([]);
    const step = dueReminders(plan, look(at("04T19:00")));
    expect(step.duties.map(({ dueAt }) => dueAt)).toEqual(["2026-03-04T19:00:00.000Z"]);
    expect(step.nextAt).toBe("2026-03-05T19:00:00.000Z");
  });

  it("is each missed time after a silence, and the next one is still to come", () => {
    const step = dueReminders(plan, look(at("06T20:00")));
    expect(step.duties.map(({ dueAt }) => dueAt.slice(8, 10))).toEqual(["04", "05", "06"]);
    expect(step.nextAt).toBe("2026-03-07T19:00:00.000Z");
  });

  it("is made once, though the clock was set back in between", () => {
    const step = dueReminders(plan, look(at("06T20:00")));
    const after: RunningPlan = { ...plan, nextAt: step.nextAt ?? "", lastDay: step.lastDay ?? 0 };
    expect(dueReminders(after, look(at("04T20:00"))).duties).toEqual([]);
    expect(dueReminders(after, look(at("06T21:00"))).duties).toEqual([]);
  });

  it("of something switched off, is both halves at once", () => {
    const off: RunningPlan = { ...plan, task: { kind: "switch off", device: "skimmer", hours: 48 } };
    const { duties } = dueReminders(off, look(at("04T19:00"), { device: "skimmer", hours: 48 }));
    expect(duties.map(({ half, dueAt }) => [half, dueAt])).toEqual([
      ["off", "2026-03-04T19:00:00.000Z"],
      ["back", "2026-03-06T19:00:00.000Z"],
    ]);
  });

  it("of windows that passed in a silence, is only told: nothing is switched off for them now", () => {
    const off: RunningPlan = { ...plan, task: { kind: "switch off", device: "pump", hours: 1 } };
    const { duties } = dueReminders(off, look(at("06T19:00"), { device: "pump", hours: 1 }));
    expect(duties.map(({ half }) => half)).toEqual(["notice", "notice", "off", "back"]);
  });

  it("is nothing more once it is paused or over", () => {
    for (const state of ["paused", "over"] as const)
      expect(dueReminders({ ...plan, state }, look(at("06T20:00"))).duties).toEqual([]);
  });

  it("ends with one date that has been made", () => {
    const once: RunningPlan = { ...plan, rule: { kind: "once", day: DAY0, minute: 19 * 60 } };
    expect(dueReminders(once, look(at("04T18:00"))).state).toBe("running");
    expect(dueReminders(once, look(at("05T18:00")))).toMatchObject({ state: "over" });
    expect(dueReminders(once, look(at("05T18:00"))).duties).toHaveLength(1);
  });

  it("that cannot be settled is told with its reason, once", () => {
    const held: Look = { ...look(at("04T19:00")), settle: () => ({ kind: "hold", why: "no volume" }) };
    const step = dueReminders(plan, held);
    expect(step.duties.map(({ half }) => half)).toEqual(["notice"]);
    expect(step.why).toBe("no volume");
    const again = dueReminders(
      { ...plan, why: "no volume", lastDay: DAY0 },
      { ...held, now: at("05T19:00") },
    );
    expect(again.duties).toEqual([]);
  });
});
