import { describe, expect, it } from "vitest";
import { COLOURED, PLAIN, renderOutcome, renderWorking } from "../../../src/console/render.ts";
import type { Question, Reply } from "../../../src/kit/reply.ts";

const REPLY: Reply = {
  kind: "reply",
  ok: true,
  title: "Title",
  headline: "80 s",
  body: ["A line.", `${"word ".repeat(40)}end`],
  table: {
    columns: ["tank", "water"],
    rows: [
      ["Lagoon", "1500 L"],
      ["Ñandú", ""],
    ],
  },
  cautions: [
    { level: "danger", text: `Careful: ${"slowly ".repeat(30)}` },
    { level: "note", text: "By the way." },
  ],
  basis: "A method",
  audience: "asker",
};

describe("a reply in the terminal", () => {
  it("has its number before what it rests on, and its cautions in full", () => {
    const text = renderOutcome(REPLY, PLAIN);
    expect(text.indexOf("80 s")).toBeLessThan(text.indexOf("A line."));
    expect(text).toContain("◆ Careful:");
    expect(text.match(/slowly/g)).toHaveLength(30);
    expect(text).toContain("Basis: A method.");
    for (const line of text.split("\n")) expect([...line].length).toBeLessThanOrEqual(96);
  });

  it("sets a table in columns", () => {
    const rows = renderOutcome(REPLY, PLAIN)
      .split("\n")
      .filter((line) => /Lagoon|Ñandú|tank/.test(line));
    expect(rows.map((row) => row.trimEnd())).toEqual(["  tank    water", "  Lagoon  1500 L", "  Ñandú"]);
  });

  it("lets nobody steer the terminal", () => {
    const text = renderOutcome({ ...REPLY, title: "a\u001b[2Jb\u0007\u202ec", body: ["x\r\ny"] }, COLOURED);
    expect(text.split("\n")[0]).toBe("\u001b[1ma [2Jb  c\u001b[22m");
    expect(text).not.toMatch(/[\r\u0007\u202e]/);
  });
});

describe("a question in the terminal", () => {
  it("numbers its choices, and says how to answer", () => {
    const question: Question = {
      kind: "question",
      isMistake: false,
      title: "Title",
      text: "Which?",
      body: [],
      cautions: [],
      choices: [
        { label: "one", settle: {} },
        { label: "two", settle: {} },
      ],
      audience: "asker",
    };
    expect(renderOutcome(question, PLAIN)).toBe("Title\n  Which?\n  1) one\n  2) two\n  (type the number)");
    const typed = { option: "volume", label: "volume", example: "200 L" };
    expect(renderOutcome({ ...question, typed, choices: [] }, PLAIN)).toContain("(type it, e.g. 200 L)");
    expect(renderOutcome({ ...question, typed }, PLAIN)).toContain("or say it in other words");
  });
});

describe("the working", () => {
  it("shows inputs, steps, constants and sources, and leaves out what is empty", () => {
    const text = renderWorking(
      "Title",
      {
        inputs: [{ name: "volume", typed: "53 gal", readAs: "200.6 L" }],
        steps: ["a = b"],
        constants: [],
        assumptions: [],
        sources: [{ citation: "Somebody 1999", standing: "published", link: "https://doi.org/10.1000/1" }],
      },
      PLAIN,
    );
    expect(text).toContain("volume: 53 gal → 200.6 L");
    expect(text).toContain("Somebody 1999 (published) https://doi.org/10.1000/1");
    expect(text).not.toContain("Constants");
  });
});
