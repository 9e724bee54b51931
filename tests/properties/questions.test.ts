import fc from "fast-check";
import { expect, it } from "vitest";
import { peopleFirst } from "../../src/core/questions/people-first.ts";
import { understand } from "../../src/core/questions/understand.ts";
import { findDates } from "../../src/kit/find-dates.ts";

const around = {
  tanks: [
    { name: "Lagoon", aliases: ["big one"] },
    { name: "C++ (old)", aliases: [] },
  ],
  findDates: findDates(Date.UTC(2026, 2, 4, 12), "UTC"),
};
const WORDS =
  "is nitrate no3 going up down since i added the trigger when did last change water how much salt for 60 gal at 1.025 30 % lagoon log fed my hand stung cut tank fish 20 ppm ph 8.2 ammonia until hits 40 in june ? , . -".split(
    " ",
  );
const sentences = fc.array(fc.constantFrom(...WORDS), { maxLength: 30 }).map((words) => words.join(" "));

it("anything typed has a meaning, a question back or none, and never more than asked", () => {
  fc.assert(
    fc.property(
      fc.oneof(sentences, fc.string({ maxLength: 700 }), fc.string({ unit: "grapheme" })),
      (text) => {
        const understood = understand(text, around);
        if (understood.kind === "meaning") expect(understood.meaning.confidence).toBeGreaterThanOrEqual(0.8);
        if (understood.kind === "unsure") expect(understood.candidates.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 400 },
  );
});

it("capitals, marks at the end and spaces do not change what is meant", () => {
  fc.assert(
    fc.property(sentences, (text) => {
      // A question mark says that nothing is told to be logged, so it is left out here.
      const plain = text.replaceAll("?", " ");
      expect(understand(`  ${plain.toUpperCase().replaceAll(" ", "  ")} `, around)).toEqual(
        understand(plain, around),
      );
    }),
    { numRuns: 300 },
  );
});

it("somebody hurt is recognised whatever stands before and behind", () => {
  const polite = fc.constantFrom("", "hi all, ", "quick question ", "OMG ", "so ", "nitrate is 20 and ");
  const after = fc.constantFrom("", " what do i do", "!!!", " please help", " and how much salt for 60 gal");
  const hurt = fc.constantFrom(
    "my lionfish stung me",
    "i got shocked by the heater",
    "my son swallowed bleach",
    "i cut my hand on the glass",
    "the eel bit my finger",
  );
  fc.assert(
    fc.property(polite, hurt, after, (before, words, behind) => {
      expect(peopleFirst(`${before}${words}${behind}`)?.certainty).toBe("certain");
      const understood = understand(`${before}${words}${behind}`, around);
      expect(understood).toMatchObject({ kind: "meaning", meaning: { intent: "decline", who: "people" } });
    }),
  );
});

it("takes no longer for texts made to be slow", () => {
  const slow = [
    "my hand ",
    "the i got ",
    "1.0 ",
    "water change ",
    "fish bleeding ",
    "since ",
    "a",
    " ",
    "in my ",
  ];
  understand("warm up", around);
  for (const piece of slow) {
    const start = performance.now();
    understand(piece.repeat(600 / piece.length), around);
    // Far above what it takes, far below what backtracking without end would.
    expect(performance.now() - start).toBeLessThan(500);
  }
});
