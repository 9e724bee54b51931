import { describe, expect, it } from "vitest";
import { foodNitrogenPerDay } from "../../../../src/core/nitrogen/food-nitrogen-per-day.ts";
import {
  cyclingReadingOf,
  readCyclingReadings,
} from "../../../../src/core/nitrogen/read-cycling-readings.ts";
import { readFood } from "../../../../src/core/nitrogen/read-food.ts";
import { readSeed } from "../../../../src/core/nitrogen/read-seed.ts";
import { repeatableRandom } from "../../../../src/core/nitrogen/repeatable-random.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";

describe("where a filter's bacteria come from", () => {
  it.each([
    ["nothing", "nothing"],
    ["a bottled culture", "culture"],
    ["20 kg live rock", "live rock"],
    ["30 L moving bed from sea water", "mature media"],
  ])("%s", (text, kind) => {
    const read = readSeed(text, {});
    expect(read.kind === "read" && read.value.kind).toBe(kind);
  });

  it("keeps the amounts and the water they come from", () => {
    const rock = readSeed("20 kg of live rock", {});
    expect(rock.kind === "read" && rock.value.kind === "live rock" && rock.value.massKg.best).toBe(20);
    const media = readSeed("30 L ceramic rings from a freshwater tank", {});
    expect(media.kind === "read" && media.value).toEqual({
      kind: "mature media",
      medium: "ceramic rings",
      litres: exactly(30),
      from: "fresh water",
    });
  });

  it("asks for the water when it is not said, and for nothing it could not know", () => {
    const read = readSeed("30 L moving bed", {});
    expect(read.kind === "ask" && read.choices.map(({ text }) => readSeed(text, {}).kind)).toEqual([
      "read",
      "read",
    ]);
    expect(readSeed("hope and patience", {}).kind).toBe("unreadable");
  });
});

describe("readings of a cycle", () => {
  it("carries the day on to the next part", () => {
    const read = readCyclingReadings(
      "day 6 ammonia 2 mg/L as TAN; nitrite 1 mg/L; day 12.5: NH4 0.5 mg/L",
      {},
    );
    const values = read.kind === "read" ? read.value : [];
    expect(values.map(({ day, kind }) => [day, kind])).toEqual([
      [6, "ammonia"],
      [6, "nitrite"],
      [12.5, "ammonia"],
    ]);
    // Standard atomic weights: NO₂ 46.0055, NH₄ 18.0385, N 14.0067.
    expect(values[1]?.value.best).toBeCloseTo(14.0067 / 46.0055, 4);
    expect(values[2]?.value.best).toBeCloseTo((0.5 * 14.0067) / 18.0385, 4);
  });

  it("asks about the kit with the rest of the list kept", () => {
    const read = readCyclingReadings("day 6 ammonia 2 mg/L; day 8 nitrite 1 mg/L", {});
    expect(read.kind).toBe("ask");
    for (const { text } of read.kind === "ask" ? read.choices : []) {
      const again = readCyclingReadings(text, {});
      expect(again.kind === "read" && again.value.length).toBe(2);
    }
  });

  it("counts a logged reading from the first dose, by its nitrogen, and leaves earlier ones out", () => {
    const logged = { parameter: "nitrite", estimate: between(1, 2), at: "2026-02-03T00:00:00.000Z" } as const;
    const reading = cyclingReadingOf(logged, "2026-02-01T12:00:00.000Z");
    expect(reading?.day).toBeCloseTo(1.5, 9);
    expect(reading?.value.high).toBeCloseTo(2 * 0.30446, 4);
    expect(cyclingReadingOf(logged, "2026-02-04T00:00:00.000Z")).toBeUndefined();
  });
});

it("random numbers repeat with their seed and fill the whole range evenly", () => {
  const [a, b] = [repeatableRandom(7), repeatableRandom(7)];
  const draws = Array.from({ length: 10_000 }, () => a());
  expect(draws).toEqual(Array.from({ length: 10_000 }, () => b()));
  // Definition of an even spread: mean ½, a tenth of the draws in each tenth (± 5 standard deviations of 30).
  expect(draws.reduce((sum, u) => sum + u, 0) / draws.length).toBeCloseTo(0.5, 1);
  for (let tenth = 0; tenth < 10; tenth += 1) {
    const share = draws.filter((u) => Math.floor(u * 10) === tenth).length;
    expect(Math.abs(share - 1000)).toBeLessThan(150);
  }
});

describe("nitrogen of the food", () => {
  function perDay(text: string): number | undefined {
    const food = readFood(text, {});
    if (food.kind !== "read") throw new Error(`not read: ${text}`);
    const nitrogen = foodNitrogenPerDay(food.value);
    return "kind" in nitrogen ? undefined : nitrogen.best;
  }

  it("is protein / 6.25, over the days it is given", () => {
    // 120 g × 0.168 / 6.25 = 3.2256 g; 280 g three times a week × 0.168 / 6.25 = 3.2256 g too.
    expect(perDay("120 g prawn daily")).toBeCloseTo(3.2256, 4);
    expect(perDay("280 g prawn 3 times a week")).toBeCloseTo(3.2256, 4);
    expect(perDay("120 g prawn daily; 280 g prawn 3 times a week")).toBeCloseTo(6.4512, 4);
  });

  it("has no answer without food", () => {
    expect(foodNitrogenPerDay([])).toMatchObject({ kind: "no-answer" });
  });
});
