import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readArea } from "../../src/core/plant/read-area.ts";
import { readFeet, readPressure, readSideTanks } from "../../src/core/plant/read-load.ts";
import { readBranches } from "../../src/core/plant/read-pipe.ts";
import type { Habits, Read } from "../../src/core/quantity/read.ts";
import { PLANT_READERS } from "../../src/kit/plant-notes.ts";

const READERS: readonly (readonly [string, (text: string, habits: Habits) => Read<unknown>])[] = [
  ...Object.entries(PLANT_READERS).map(([key, { read }]) => [key, read] as const),
  ["area", readArea],
  ["feet", readFeet],
  ["pressure", readPressure],
  ["side tanks", readSideTanks],
  ["branches", readBranches],
];

/** Pieces that members' texts are made of, put together in ways nobody would. */
const pieces = fc.constantFrom(
  ..."2 in|12 m|siphon: |drum 1 |overflows 14 mm|shares level|holds the pump|, |; |: |= |-5|1e999|0|60 slots of 6 mm|teeth|L/h at |4000 L/h|W|circuit A|20 A|gal|10 gal|%|2 x 300 W|×|1,200|.|∞|🐟|\u202e|bore |45 mm|3 elbows|x|at |most |m2|none|clear".split(
    "|",
  ),
);
const texts = fc.oneof(
  fc.string({ maxLength: 120 }),
  fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join("")),
);

describe.each(READERS)("the reader of %s", (_, read) => {
  it("never throws, and every choice it offers settles what was asked", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const result = read(text, {});
        if (result.kind !== "ask") return;
        expect(result.choices.length).toBeGreaterThan(0);
        for (const choice of result.choices) {
          const again = read(choice.text, {});
          // Another piece of the same text may be unclear too; the same question may not come twice.
          if (again.kind === "ask") expect(again.question).not.toBe(result.question);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("reads no figure that is not finite", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const result = read(text, {});
        if (result.kind === "read") expect(JSON.stringify(result.value)).not.toMatch(/null/);
      }),
      { numRuns: 200 },
    );
  });
});

describe.each(Object.entries(PLANT_READERS))("the example of %s", (_, { read, example }) => {
  it("reads", () => {
    expect(read(example, {}).kind).toBe("read");
  });
});
