import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readMineralLevel } from "../../src/core/carbonate/read-mineral-level.ts";
import { readAction } from "../../src/core/dosing/read-action.ts";
import { readCyclingReadings } from "../../src/core/nitrogen/read-cycling-readings.ts";
import { readAmmonia, readNitrate } from "../../src/core/nitrogen/read-nitrogen.ts";
import { readSeed } from "../../src/core/nitrogen/read-seed.ts";
import { readTrain } from "../../src/core/nitrogen/read-train.ts";
import type { Habits, Read } from "../../src/core/quantity/read.ts";
import { readAir } from "../../src/core/water/read-air.ts";
import { readOxygen } from "../../src/core/water/read-oxygen.ts";

const READERS: Readonly<Record<string, (text: string, habits: Habits) => Read<unknown>>> = {
  readAction: (text) => readAction(text),
  readAir,
  readAmmonia,
  readCyclingReadings,
  readMineralLevel,
  readNitrate,
  readOxygen,
  readSeed,
  readTrain,
};

/** Shreds of what members type, in any order, and anything at all. */
const WORDS = [
  "box",
  "drum",
  "110 L",
  "30 gal",
  "with",
  "60 L ceramic rings",
  "side stream",
  "20 L/h",
  "30 %",
  "bypass",
  "dirt",
  "2 g/day",
  "low oxygen",
  "aerated",
  ";",
  ",",
  "->",
  "2 x",
  "day 6",
  "day",
  "ammonia",
  "nitrite",
  "NH4",
  "2",
  "1,5",
  "1.234",
  "mg/L",
  "as TAN",
  "as N",
  "ppm",
  "dKH",
  "meq/L",
  "%",
  "m",
  "ft",
  "kPa",
  "live rock",
  "20 kg",
  "culture",
  "from sea water",
  "moving bed",
  "skimmer",
  "off",
  "dose",
  "alcohol",
  "water change",
  "-",
  "−5",
  "1e999",
  "NaN",
  "½",
];
const shreds = fc.array(fc.constantFrom(...WORDS), { maxLength: 12 }).map((words) => words.join(" "));
const typed = fc.oneof(shreds, fc.string({ maxLength: 60 }), fc.string({ unit: "binary", maxLength: 30 }));

describe("whatever is typed", () => {
  it.each(Object.keys(READERS))(
    "%s reads it, asks about it or says why not, and every choice leads on",
    (name) => {
      const read = READERS[name];
      if (read === undefined) throw new Error(name);
      fc.assert(
        fc.property(typed, (text) => {
          const first = read(text, {});
          if (first.kind === "read") expect(first.readAs).not.toBe("");
          if (first.kind === "unreadable") expect(first.message.length).toBeGreaterThan(10);
          if (first.kind === "ask") {
            expect(first.choices.length).toBeGreaterThan(0);
            // A choice settles what was asked; the list behind it may hold the next question, but never the same.
            for (const choice of first.choices) {
              const again = read(choice.text, {});
              if (again.kind === "ask")
                expect(again.choices.map(({ text }) => text)).not.toContain(choice.text);
            }
          }
        }),
        { numRuns: 400 },
      );
    },
  );

  it("takes no time to speak of over the longest text an option lets through", () => {
    const long = [
      "box 110 L ".repeat(200),
      "with ".repeat(400),
      "1 ".repeat(1000),
      "L,".repeat(1000),
      "a".repeat(2000),
    ];
    const before = performance.now();
    for (const read of Object.values(READERS)) for (const text of long) read(text, {});
    expect(performance.now() - before).toBeLessThan(3000);
  });
});
