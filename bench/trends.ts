import { spawnSync } from "node:child_process";
import { looks } from "../src/core/trends/readings.ts";
import { trendAnswer } from "../src/core/trends/trend-answer.ts";
import { atMost, given, type Row } from "./report.ts";
import { speeds } from "./simulation/speed.ts";
import { simulate } from "./simulation/world.ts";

const SEED = 20_260_301;

/** The trend engine's speed, and a general-purpose fit of the same five years where python3 has scipy. */
export function trendRows(): readonly Row[] {
  const { fiveYears, hundredThousand } = speeds(SEED);
  const { readings, events, perDay } = answeredRecord();
  const open = (bound: number): number | null => (Number.isFinite(bound) ? bound : null);
  const reference = spawnSync("python3", ["bench/reference_fit.py"], {
    encoding: "utf8",
    input: JSON.stringify({
      looks: looks(readings).map(({ at, low, high }) => [at, open(low), open(high)]),
      changes: events.flatMap((event) =>
        event.kind === "water change" ? [[event.at, event.fraction, event.newWater]] : [],
      ),
    }),
  });
  const found: { ms: number; perDay: number } | undefined =
    reference.status === 0 ? JSON.parse(reference.stdout) : undefined;
  return [
    atMost("five years of weekly tests, processor time, median", fiveYears, 10, "ms"),
    atMost("100,000 readings, processor time, median", hundredThousand, 150, "ms"),
    given(
      "the same five years by scipy, one production throughout",
      found === undefined
        ? "scipy is not installed here"
        : `${found.ms.toFixed(1)} ms, ${found.perDay.toFixed(2)} mg/L a day`,
    ),
    given("ours, production now", `${perDay.toFixed(2)} mg/L a day`),
  ];
}

/** The first of the simulated five years that the engine has an answer for. */
function answeredRecord() {
  for (let index = 0; index < 15; index++) {
    const { readings, events, now } = simulate(SEED, "five years", index);
    const ours = trendAnswer({ readings, events, now });
    if (ours.kind === "answer") return { readings, events, perDay: ours.value.productionPerDay.best };
  }
  throw new Error("no simulated record was answered");
}
