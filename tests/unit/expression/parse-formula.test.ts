import { describe, expect, it } from "vitest";
import { parseFormula } from "../../../src/expression/parse-formula.ts";

describe("taking a formula apart", () => {
  it("keeps the usual precedence", async () => {
    expect(await parseFormula("q0 + q1 * q2")).toEqual({
      kind: "pair",
      operator: "+",
      left: { kind: "operand", index: 0 },
      right: {
        kind: "pair",
        operator: "*",
        left: { kind: "operand", index: 1 },
        right: { kind: "operand", index: 2 },
      },
    });
  });

  it.each([
    "q0 q1",
    "q0 ; q1",
    "q0 = q1",
    "q0 . q1",
    "q0 ! ",
    "f ( q0 )",
    "import ( q0 )",
    "constructor",
    "q0 ( q1 )",
    "sqrt ( q0 , q1 )",
    "sqrt ( )",
    "( q0 , q1 )",
    "q0 +",
    "",
    "1 + 1",
    "[ q0 ]",
    "+ q0",
  ])("lets nothing else pass: %j", async (formula) => expect(await parseFormula(formula)).toBeUndefined());
});
