import { describe, expect, it } from "vitest";
import type { EventKind } from "../../../../src/core/log/entry.ts";
import type { ParameterId } from "../../../../src/core/log/parameters.ts";
import {
  judgeAmmoniumDose,
  judgeRegimen,
  rampWeek,
  type TankLog,
} from "../../../../src/core/plans/regimens.ts";

const DAY = 86_400_000;

/** A log by days since the start, oldest first. */
function logOf(parts: {
  readings?: Partial<Record<ParameterId, readonly (readonly [day: number, value: number])[]>>;
  events?: Partial<Record<EventKind, readonly number[]>>;
  off?: readonly string[];
}): TankLog {
  return {
    readings: (id) =>
      (parts.readings?.[id] ?? [])
        .map(([day, value]) => ({ best: value, low: value, high: value, at: day * DAY }))
        .toReversed(),
    events: (kind) => (parts.events?.[kind] ?? []).map((day) => ({ at: day * DAY, text: "" })),
    off: parts.off ?? [],
  };
}

describe("the ethanol ramp (its rules: common practice, no source)", () => {
  const judge = (log: TankLog, day = 8) => judgeRegimen("ethanol ramp", { nitrate: 10 }, log, 0, day * DAY);
  const tested = { nitrate: [[7, 40]] } as const;

  it("runs while everything runs and nitrate is tested", () => {
    expect(judge(logOf({ readings: tested })).kind).toBe("go");
  });

  it.each(["protein skimmer", "return pump", "air stone", "aeration"])(
    "holds while the %s is off",
    (device) => {
      const verdict = judge(logOf({ readings: tested, off: [device] }));
      expect(verdict).toMatchObject({ kind: "hold", why: expect.stringContaining(device) });
    },
  );

  it("holds on low oxygen measured lately, not long ago", () => {
    expect(judge(logOf({ readings: { ...tested, oxygen: [[7, 4.2]] } })).kind).toBe("hold");
    expect(judge(logOf({ readings: { ...tested, oxygen: [[1, 4.2]] } })).kind).toBe("go");
  });

  it("holds without a nitrate test, ends at the wanted nitrate read twice, stops after a death", () => {
    expect(judge(logOf({}), 9).kind).toBe("go");
    expect(judge(logOf({}), 11).kind).toBe("hold");
    expect(
      judge(
        logOf({
          readings: {
            nitrate: [
              [5, 9],
              [7, 8],
            ],
          },
        }),
      ).kind,
    ).toBe("end");
    expect(
      judge(
        logOf({
          readings: {
            nitrate: [
              [5, 12],
              [7, 8],
            ],
          },
        }),
      ).kind,
    ).toBe("go");
    expect(judge(logOf({ readings: tested, events: { death: [6] } })).kind).toBe("stop");
  });

  it("takes a step for every seven days dosed, and none once nitrate falls", () => {
    const days = (count: number): readonly number[] => Array.from({ length: count }, (_, day) => day * DAY);
    const nitrate = (...pairs: readonly (readonly [number, number])[]) =>
      logOf({ readings: { nitrate: pairs } }).readings("nitrate");
    expect(rampWeek([], nitrate())).toBe(1);
    expect(rampWeek(days(6), nitrate([0, 40]))).toBe(1);
    expect(rampWeek(days(7), nitrate([0, 40], [6, 39]))).toBe(2);
    expect(rampWeek(days(21), nitrate([0, 40], [6, 41], [20, 40]))).toBe(4);
    expect(rampWeek(days(21), nitrate([0, 40], [8, 20], [20, 10]))).toBe(2);
  });
});

describe("cycling with ammonium salt (common practice, no source)", () => {
  const judge = (log: TankLog, day = 20) => judgeRegimen("cycling", { ammonia: 2 }, log, 0, day * DAY);

  it("ends when both are gone in two tests in a row after a dose", () => {
    const gone = {
      ammonia: [
        [18, 0.1],
        [19, 0.1],
      ],
      nitrite: [
        [18, 0.1],
        [19, 0.2],
      ],
    } as const;
    expect(judge(logOf({ readings: gone, events: { dose: [2, 17] } })).kind).toBe("end");
    expect(judge(logOf({ readings: gone })).kind).toBe("go");
    const standing = {
      ...gone,
      nitrite: [
        [18, 5],
        [19, 0.2],
      ],
    } as const;
    expect(judge(logOf({ readings: standing, events: { dose: [2] } })).kind).toBe("go");
  });

  it("holds above 5 mg/L as N, and without a test", () => {
    expect(judge(logOf({ readings: { ammonia: [[19, 6]] } })).kind).toBe("hold");
    expect(judge(logOf({ readings: { ammonia: [[10, 1]] } })).kind).toBe("hold");
  });

  it("feeds again only when the last dose was tested and is eaten", () => {
    expect(judgeAmmoniumDose(logOf({})).kind).toBe("go");
    expect(judgeAmmoniumDose(logOf({ events: { dose: [1] } })).kind).toBe("hold");
    expect(judgeAmmoniumDose(logOf({ readings: { ammonia: [[2, 1]] }, events: { dose: [1] } })).kind).toBe(
      "hold",
    );
    expect(judgeAmmoniumDose(logOf({ readings: { ammonia: [[2, 0]] }, events: { dose: [1] } })).kind).toBe(
      "go",
    );
  });
});

describe("quarantine", () => {
  const judge = (log: TankLog, day: number) => judgeRegimen("quarantine", { days: 30 }, log, 0, day * DAY);

  it("counts down, starts again on a new arrival, and ends", () => {
    expect(judge(logOf({}), 12)).toMatchObject({ kind: "go", why: "18 days to go, counted from the start" });
    const arrival = logOf({ events: { "livestock in": [10] } });
    expect(judge(arrival, 12)).toMatchObject({
      kind: "go",
      why: "28 days to go, counted from the last new arrival",
    });
    expect(judge(arrival, 39).kind).toBe("go");
    expect(judge(arrival, 40).kind).toBe("end");
    expect(judge(logOf({}), 30).kind).toBe("end");
  });
});
