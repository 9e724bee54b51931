import { describe, expect, it } from "vitest";
import { GLOSSARY, GLOSSARY_WORDS, termNamed } from "../../src/core/help/glossary.ts";
import { openClub, textOf } from "../support/club.ts";

describe("/glossary", () => {
  it("explains a word, by any of its names", async () => {
    const club = openClub();
    expect(textOf(await club.ask("/glossary word:new tank syndrome"))).toContain(
      "Letting the right bacteria grow",
    );
    expect(textOf(await club.ask("/glossary word:water changes"))).toContain("Taking some water out");
  });

  it("offers the nearest word for one it does not know", async () => {
    const club = openClub();
    const outcome = await club.say("/glossary word:nitrit");
    expect(textOf(outcome)).toContain("Did you mean “nitrite”?");
  });

  it("lists at least eighty terms, each once, each in a line or two", async () => {
    expect(GLOSSARY.length).toBeGreaterThanOrEqual(80);
    const words = GLOSSARY_WORDS.map((word) => word.toLowerCase());
    expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([]);
    for (const { term, means } of GLOSSARY) {
      expect(means.length, term).toBeLessThanOrEqual(140);
      expect(termNamed(term)?.term).toBe(term);
    }
    expect(textOf(await openClub().ask("/glossary"))).toContain("cycling");
  });
});
