import { describe, expect, it } from "vitest";
import { nearest } from "../../../src/kit/nearest.ts";
import { capitalised, cleaned, counted, listed, quoted } from "../../../src/kit/text.ts";

describe("a member's text", () => {
  it.each([
    ["  Lagoon  ", "Lagoon"],
    ["La\u200bgo\u0000on", "Lagoon"],
    ["\u202eLagoon\u202c", "Lagoon"],
    ["Cafe\u0301", "Café"],
    ["two\nlines", "two\nlines"],
    ["\ufeff", ""],
  ])("%j is cleaned to %j", (typed, expected) => {
    expect(cleaned(typed)).toBe(expected);
  });

  it("is quoted short, whole letters at a time", () => {
    expect(quoted("Lagoon")).toBe("“Lagoon”");
    expect(quoted("🐠".repeat(50))).toBe(`“${"🐠".repeat(40)}…”`);
    expect(quoted("a\n b")).toBe("“a b”");
  });
});

it("lists are read aloud", () => {
  expect([listed([]), listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"], "or")]).toEqual([
    "",
    "a",
    "a and b",
    "a, b or c",
  ]);
  expect([counted(0, "tank"), counted(1, "tank"), counted(2, "entry", "entries")]).toEqual([
    "0 tanks",
    "1 tank",
    "2 entries",
  ]);
});

it.each([
  ["the value", "The value"],
  ["pH is low", "pH is low"],
  ["mL of stock", "mL of stock"],
  ["ñandú", "Ñandú"],
  ["80 s", "80 s"],
  ["“x” is", "“x” is"],
  ["", ""],
])("%j begins a sentence as %j", (text, expected) => {
  expect(capitalised(text)).toBe(expected);
});

describe("the nearest word", () => {
  it.each([
    ["volum", "volume"],
    ["slat", "salt"],
    ["Lagon", "Lagoon"],
    ["xyzzy", undefined],
    ["", undefined],
  ])("to %j is %j", (typed, expected) => {
    expect(nearest(typed, ["volume", "salt", "Lagoon"])).toBe(expected);
  });
});
