import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PARAMETERS } from "../../src/core/log/parameters.ts";
import { readLogLine } from "../../src/core/log/read-log-line.ts";
import { looksLikeSlip } from "../../src/core/log/slips.ts";
import { splitWhen } from "../../src/core/log/split-when.ts";
import type { Habits } from "../../src/core/quantity/read.ts";

const HABITS: Habits = { gravity: { sampleC: 20, referenceC: 20 }, gallon: "imperial" };
const decimals = (min: number, max: number, places: number) =>
  fc.integer({ min: min * 10 ** places, max: max * 10 ** places }).map((n) => String(n / 10 ** places));
const named = (names: readonly string[], figure: fc.Arbitrary<string>) =>
  fc.tuple(fc.constantFrom(...names), figure).map((pair) => pair.join(" "));

/** Pieces that read on their own, as members would type them. */
const piece = fc.oneof(
  named(["no3", "nitrate", "no2", "tan", "nitrate-n"], decimals(0, 99, 1)),
  named(["no3", "po4"], fc.constantFrom("<5", "not detected", "10-20 ppm", "0.3 mg/L")),
  named(["ph"], decimals(6, 9, 1)),
  named(["temp"], decimals(18, 32, 1)),
  named(["kh", "dkh"], decimals(4, 14, 1)),
  named(["sal", "ppt"], decimals(31, 40, 1)),
  named(["sg"], fc.constantFrom("1.0255", "1.023", "1.0261 SG 25/25")),
  named(["ca"], decimals(300, 500, 0)),
  named(["mg"], decimals(1100, 1500, 0)),
  named(["wc"], fc.constantFrom("30%", "200 L", "12.5 %", "10 gal")),
  named(["fed"], fc.constantFrom("280 g prawn", "twice", "12 g flake")),
  named(["dosed"], fc.constantFrom("30 ml bicarbonate", "5 g")),
  fc.constantFrom(
    "skimmer off",
    "heater on",
    "media changed",
    "dead 1 damsel",
    "added 2 snails",
    "harvest 800 g",
  ),
);

describe("a line of several pieces", () => {
  it.each([", ", "; ", ",  ", "\n"])("parted by %j reads as its pieces do", (mark) => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 6 }), (pieces) => {
        const alone = pieces.map((text) => readLogLine(text, HABITS));
        const together = readLogLine(pieces.join(mark), HABITS);
        expect(together.kind).toBe("read");
        if (together.kind !== "read") return;
        expect(together.value).toEqual(alone.flatMap((read) => (read.kind === "read" ? read.value : [])));
      }),
    );
  });

  it("keeps low, best and high in order, and readings possible", () => {
    fc.assert(
      fc.property(piece, (text) => {
        const read = readLogLine(text, HABITS);
        if (read.kind !== "read") throw new Error(text);
        for (const entry of read.value) {
          const estimate = entry.kind === "reading" ? entry.estimate : entry.amount?.estimate;
          if (estimate === undefined) continue;
          expect(estimate.low).toBeLessThanOrEqual(estimate.best);
          expect(estimate.best).toBeLessThanOrEqual(estimate.high);
          expect(Number.isFinite(estimate.high)).toBe(true);
        }
      }),
    );
  });

  it("is not changed by a time phrase that is cut off first", () => {
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 4 }),
        fc.constantFrom("yesterday 9pm", "today 08:30", "on 3 May", "2 days ago", "2026-05-03 21:00"),
        (pieces, when) => {
          const line = pieces.join(", ");
          expect(splitWhen(`${line} ${when}`)).toEqual({ line, when });
          expect(splitWhen(line)).toEqual({ line });
        },
      ),
    );
  });
});

describe("any text at all", () => {
  const noise = fc.oneof(
    fc.string({ unit: "binary", maxLength: 300 }),
    fc
      .array(
        fc.constantFrom(
          ...[
            "no3",
            "20",
            "<5",
            "ph",
            "wc",
            "30%",
            "fed",
            "note",
            "off",
            "added",
            "gal",
            "10",
            "as N",
            "-",
            ",",
            ";",
          ],
          ...[
            "sg",
            "1.026",
            "temp",
            "78F",
            "1,200",
            "died",
            "changed",
            "water",
            "💧",
            "\n",
            "not detected",
            "alk",
            "@all",
          ],
        ),
        { maxLength: 30 },
      )
      .map((words) => words.join(" ")),
  );

  it("is read, asked about or refused, never thrown on", () => {
    fc.assert(
      fc.property(noise, (text) => {
        const { line } = splitWhen(text);
        const read = readLogLine(line, {});
        if (read.kind === "read") expect(read.value.length).toBeGreaterThan(0);
        if (read.kind === "ask") expect(read.choices.length).toBeGreaterThan(0);
        if (read.kind === "unreadable") expect(read.message).not.toMatch(/undefined|NaN/);
      }),
      { numRuns: 500 },
    );
  });

  it("loses no figure that was typed, and never asks without end", () => {
    fc.assert(
      fc.property(noise, (text) => {
        const { line } = splitWhen(text);
        let read = readLogLine(line, {});
        for (let asked = 0; read.kind === "ask"; asked++) {
          expect(asked).toBeLessThan(20);
          read = readLogLine(read.choices[0]?.text ?? "", {});
        }
        const first = readLogLine(line, {});
        if (first.kind !== "read") return;
        const kept = first.value.map(({ typed }) => typed).join(" ");
        for (const figure of line.normalize("NFKC").match(/\d+/g) ?? []) expect(kept).toContain(figure);
      }),
      { numRuns: 500 },
    );
  });

  it.each(["1 ", "no3 ", "no3 5 ", "a ", "wc ", ",", "1,", "off ", "fed 1 ", "sg 1.02 ", "("])(
    "of %j over and over is quick",
    (text) => {
      const before = performance.now();
      readLogLine(text.repeat(Math.floor(600 / text.length)), HABITS);
      expect(performance.now() - before).toBeLessThan(2000);
    },
  );
});

describe("slips", () => {
  it("are never seen inside what a tank has shown, and always leave the typed value as a choice", () => {
    const values = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 0, maxLength: 15 });
    const parameters = fc.constantFrom(...PARAMETERS.map(({ id }) => id));
    fc.assert(
      fc.property(
        parameters,
        values,
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (parameter, past, value) => {
          const record = past.map((each, i) => ({
            value: each,
            at: new Date(Date.UTC(2026, 0, 1 + 4 * i)).toISOString(),
          }));
          const at = new Date(Date.UTC(2026, 0, 1 + 4 * past.length)).toISOString();
          const question = looksLikeSlip({ parameter, value, at }, record);
          if (question === undefined) return;
          const last = record.slice(-10).map((each) => each.value);
          expect(value < Math.min(...last) || value > Math.max(...last)).toBe(true);
          expect(question.choices.at(-1)?.kind).toBe("keep");
          expect(question.choices.length).toBeGreaterThan(1);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
