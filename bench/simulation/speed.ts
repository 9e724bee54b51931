import type { Instrument } from "../../src/core/trends/readings.ts";
import { trendAnswer } from "../../src/core/trends/trend-answer.ts";
import { simulate } from "./world.ts";

/** Median processor milliseconds of one answer, warm: five years of weekly tests, and 100,000 readings of a probe. */
export function speeds(seed: number): { readonly fiveYears: number; readonly hundredThousand: number } {
  const tanks = Array.from({ length: 15 }, (_, i) => simulate(seed, "five years", i));
  const fiveYears = middleOfTimes(
    tanks.map((tank) => () => {
      trendAnswer({ readings: tank.readings, events: tank.events, now: tank.now, limit: 60 });
    }),
  );
  const probe: Instrument = { id: "probe", kind: "meter", fixedSd: 0.5, levelSd: 0.05 };
  const days = 1826;
  const readings = Array.from({ length: 100_000 }, (_, i) => ({
    at: (i * days) / 100_000,
    value: Math.round(2 * (20 + 8 * Math.sin(i / 5000) + ((i * 7919) % 100) / 50)) / 2,
    instrument: probe,
  }));
  const events = tanks[0]?.events ?? [];
  const hundredThousand = middleOfTimes(
    Array.from({ length: 7 }, () => () => {
      trendAnswer({ readings, events, now: days, limit: 60 });
    }),
  );
  return { fiveYears, hundredThousand };
}

function middleOfTimes(tasks: readonly (() => void)[]): number {
  for (const task of tasks.slice(0, 3)) task();
  const times = tasks.map((task) => {
    const started = process.cpuUsage();
    task();
    const used = process.cpuUsage(started);
    return (used.user + used.system) / 1000;
  });
  return times.sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
}
