import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readSum } from "../../src/core/expression/read-sum.ts";
import { workOut } from "../../src/core/expression/work-out.ts";
import { parseFormula } from "../../src/expression/parse-formula.ts";

async function best(text: string): Promise<number | undefined> {
  const read = readSum(text, { decimal: "point" });
  if (read.kind !== "read") return undefined;
  const parsed = await parseFormula(read.value.formula);
  const answer = parsed === undefined ? undefined : workOut(read.value, parsed);
  return answer?.kind === "answer" ? answer.value.result.estimate.best : undefined;
}

/** A sum with the worth the language itself gives it, both grown from one tree. */
interface Grown {
  readonly text: string;
  readonly worth: number;
}

const { sum } = fc.letrec<{ sum: Grown; pair: Grown; leaf: Grown }>((tie) => ({
  leaf: fc.integer({ min: 1, max: 999 }).map((n) => ({ text: String(n / 10), worth: n / 10 })),
  pair: fc.tuple(tie("sum"), fc.constantFrom("+", "-", "*"), tie("sum")).map(([a, sign, b]) => ({
    text: `(${a.text}) ${sign} (${b.text})`,
    worth: sign === "+" ? a.worth + b.worth : sign === "-" ? a.worth - b.worth : a.worth * b.worth,
  })),
  sum: fc.oneof({ maxDepth: 4, depthSize: "small" }, tie("leaf"), tie("pair")),
}));

describe("a sum", () => {
  it("comes to what arithmetic says", () =>
    fc.assert(
      fc.asyncProperty(sum, async ({ text, worth }) => {
        fc.pre(text.length <= 500);
        const result = (await best(text)) ?? Number.NaN;
        expect(Math.abs(result - worth)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(worth)));
      }),
    ));

  /** NIST SP 811, B.8: 1 US gal is 3.785411784 L exactly. */
  it("does not depend on the unit a part is given in", () =>
    fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 9999 }),
        fc.integer({ min: 1, max: 9999 }),
        async (litres, gallons) => {
          const result = (await best(`${litres} L + ${gallons} US gal`)) ?? Number.NaN;
          expect(result).toBeCloseTo(litres + gallons * 3.785411784, 6);
        },
      ),
    ));

  it("never throws, whatever is typed", () =>
    fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string({ unit: "binary", maxLength: 60 }),
          fc
            .array(
              fc.constantFrom(
                "1",
                "2.5",
                "1,200",
                "L",
                "gal",
                "°C",
                "kg",
                "%",
                "+",
                "-",
                "*",
                "/",
                "^",
                "(",
                ")",
                ",",
                ";",
                "x",
                "sqrt(",
                "max(",
                "about",
                "±",
                "pi",
                "of",
                "per",
                " ",
              ),
              { maxLength: 25 },
            )
            .map((parts) => parts.join(" ")),
        ),
        async (text) => {
          const read = readSum(text, {});
          expect(["read", "ask", "unreadable"]).toContain(read.kind);
          if (read.kind === "unreadable") expect(read.message.length).toBeGreaterThan(10);
          if (read.kind !== "read") return;
          const parsed = await parseFormula(read.value.formula);
          // What reads can be taken apart: our own grammar is no wider than the parser's.
          expect(parsed).toBeDefined();
          if (parsed !== undefined)
            expect(["answer", "no-answer"]).toContain(workOut(read.value, parsed).kind);
        },
      ),
      { numRuns: 500 },
    ));
});
