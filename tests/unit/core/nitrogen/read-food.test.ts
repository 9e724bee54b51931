import { describe, expect, it } from "vitest";
import { readFood } from "../../../../src/core/nitrogen/read-food.ts";
import type { Food } from "../../../../src/core/nitrogen/stocking-input.ts";

function foods(text: string): readonly Food[] {
  const read = readFood(text, {});
  if (read.kind !== "read") throw new Error(`${text}: ${JSON.stringify(read)}`);
  return read.value;
}

/** Grams a week, whichever way the ration is kept. */
function perWeek({ ration }: Food): number {
  return ration.kind === "meals"
    ? ration.gramsPerMeal.best * ration.mealsPerWeek
    : ration.gramsPerDay.best * 7;
}

describe("food in words", () => {
  // Grams as typed, times the meals of a week; ounce 28.349523125 g (NIST SP 811).
  it.each<[string, number]>([
    ["280 g prawn 3 times a week", 840],
    ["280 g prawn 3x/week", 840],
    ["5 g pellet daily", 35],
    ["5 g pellet twice a day", 70],
    ["5 g pellet 4 times a day", 140],
    ["5 g/day pellet", 35],
    ["35 g a week pellet", 35],
    ["50 g mussel every other day", 175],
    ["70 g squid every 2 days", 245],
    ["0.28 kg of prawn once a week", 280],
    ["1 oz prawn weekly", 28.349523125],
    ["about 100 g prawn daily", 700],
  ])("%s", (text, grams) => {
    const [food] = foods(text);
    expect(food === undefined ? undefined : perWeek(food)).toBeCloseTo(grams, 6);
  });

  it("may be a list", () => {
    expect(foods("280 g prawn 3 times a week; 5 g pellet daily").map(perWeek)).toEqual([840, 35]);
  });

  it("may bring the protein of its label", () => {
    const [fed] = foods("5 g flake 46 % protein as fed daily");
    expect(fed?.protein).toMatchObject({ kind: "own", basis: "as fed", protein: { best: 0.46 } });
    const [dry] = foods("5 g my mix 60 % protein of dry matter 75 % water daily");
    expect(dry?.protein).toMatchObject({ kind: "own", basis: "dry matter", water: { best: 0.75 } });
  });
});

describe("food in doubtful words", () => {
  it.each<[string, readonly string[]]>([
    ["280 g prawn", ["280 g prawn daily", "280 g prawn every other day"]],
    ["5 g flake 46 % protein daily", ["5 g flake 46 % protein as fed daily"]],
    ["1,280 g prawn daily", ["1280 g prawn daily", "1.28 g prawn daily"]],
    ["1,280 g a day prawn", ["1280 g a day prawn", "1.28 g a day prawn"]],
  ])("%s is asked about, and the choices read", (text, some) => {
    const asked = readFood(text, {});
    const texts = asked.kind === "ask" ? asked.choices.map((choice) => choice.text) : [];
    for (const each of some) {
      expect(texts).toContain(each);
      expect(readFood(each, {}).kind, each).toBe("read");
    }
  });

  it.each([
    "",
    "prawn daily",
    "280 g daily",
    "280 g moon dust daily",
    "280 L prawn daily",
    "-5 g prawn daily",
    "5 g flake 46 % protein of dry matter daily",
    "280 g prawn 0 times a week",
    "; ; ;",
  ])("%j is refused or asked about, never guessed", (text) => {
    const read = readFood(text, {});
    expect(read.kind).not.toBe("read");
    if (read.kind === "unreadable") expect(read.message).not.toContain("“”");
  });
});
