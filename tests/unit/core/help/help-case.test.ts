import { describe, expect, it } from "vitest";
import { contradictions, isMedicine } from "../../../../src/core/help/advice.ts";
import { changeNow, doNow } from "../../../../src/core/help/do-now.ts";
import type { FactField, HelpFacts } from "../../../../src/core/help/facts.ts";
import { carbonDioxide, findingsOf } from "../../../../src/core/help/findings.ts";
import { helpCase } from "../../../../src/core/help/help-case.ts";
import { ALL_QUESTIONS, openQuestions } from "../../../../src/core/help/next-question.ts";
import { readFacts } from "../../../../src/core/help/read-facts.ts";
import { urgencyOf } from "../../../../src/core/help/urgency.ts";

function facts(form: Partial<Record<FactField, string>>): HelpFacts {
  return readFacts(
    Object.entries(form).map(([field, text]) => ({ field: field as FactField, text })),
    {},
  );
}

const nextIds = (form: Partial<Record<FactField, string>>): readonly string[] => {
  const known = facts(form);
  return openQuestions(known, urgencyOf(known)).map(({ id }) => id);
};

const says = (form: Partial<Record<FactField, string>>): string => {
  const known = facts(form);
  return findingsOf(known, urgencyOf(known))
    .map(({ kind, says: text }) => `${kind}: ${text}`)
    .join("\n");
};

describe("facts read from any field", () => {
  it("takes a tank's size, kind and age out of one half sentence", () => {
    const { volumeL, ageDays, water } = facts({ worry: "my 60 litre betta tank is 3 weeks old and cloudy" });
    expect(volumeL?.best).toBe(60);
    // Three weeks, meant to the half week.
    expect(ageDays).toEqual({ best: 21, low: 17.5, high: 24.5 });
    expect(water).toBe("fresh");
  });

  it("covers both gallons where none is named", () => {
    // 20 × 3.785411784 L and 20 × 4.54609 L. Source: NIST SP 811, appendix B.
    const { volumeL } = facts({ tank: "20 gallons" });
    expect(volumeL?.low).toBeCloseTo(75.708, 2);
    expect(volumeL?.high).toBeCloseTo(90.922, 2);
  });

  it("reads a box, and leaves litres that were changed alone", () => {
    expect(facts({ tank: "60x30x30 cm" }).volumeL?.best).toBeCloseTo(54, 6);
    expect(facts({ worry: "changed 20 L yesterday" }).volumeL).toBeUndefined();
  });

  it("counts heads, and takes sizes and times for neither", () => {
    expect(facts({ animals: "6 neon tetras since 2 weeks, a betta and 2 snails" }).animals).toBe(9);
    expect(facts({ animals: "none yet" }).animals).toBe(0);
  });

  it("keeps the newest reading of each kind, and a bare fraction", () => {
    const { readings } = facts({ worry: "ammonia 2", readings: "nitrite .5, ammonia 0.5 mg/L as TAN" });
    expect(readings.get("ammonia")?.estimate.best).toBe(0.5);
    expect(readings.get("nitrite")?.estimate.best).toBe(0.5);
  });

  it.each([
    ["0 ammonia 0 nitrite 5 nitrate ph 7.6", { ammonia: 0, nitrite: 0, nitrate: 5, ph: 7.6 }],
    ["ammonia 0 nitrite 0.5 nitrate 20 ph 7", { ammonia: 0, nitrite: 0.5, nitrate: 20, ph: 7 }],
    ["0 ammonia, 1 nitrite, 40 nitrate", { ammonia: 0, nitrite: 1, nitrate: 40 }],
    ["ph8.2, nitrate is at 10 and no3 was not tested", { ph: 8.2, nitrate: 10 }],
    ["DO 3.2 mg/L at 26C", { oxygen: 3.2, temperature: 26 }],
    ["oxygen 2.5 mg/L", { oxygen: 2.5 }],
    // Densities 1023.343 (S 35) and 997.047 kg/m³ at 25 °C: gravity 1.02637. Source: Millero & Poisson 1981.
    ["nitrate 20 sg 1.02637 25/25 ph 8", { nitrate: 20, ph: 8, salinity: 35 }],
    ["no2 between 0.5 and 1, no3 25", { nitrite: 0.75, nitrate: 25 }],
    ["nitrate-N 10", { nitrate: 44.27 }],
  ])("reads “%s”", (text, expected) => {
    const { readings } = facts({ readings: text });
    const read = Object.fromEntries(
      [...readings].map(([id, { estimate }]) => [id, Number(estimate.best.toFixed(2))]),
    );
    expect(read).toEqual(expected);
  });

  it("covers every meaning of an ammonia figure without its form", () => {
    // As N, as NH₃ (14.007/17.031) and as NH₄ (14.007/18.039). Source: IUPAC atomic weights.
    const reading = facts({ readings: "ammonia 1" }).readings.get("ammonia");
    expect(reading?.isUnclear).toBe(true);
    expect(reading?.estimate.high).toBe(1);
    expect(reading?.estimate.low).toBeCloseTo(0.7765, 3);
  });

  it("sets a value aside that no water can have", () => {
    expect(facts({ readings: "pH 14" }).doubtful[0]?.parameter).toBe("ph");
    expect(facts({ readings: "pH 14" }).readings.has("ph")).toBe(false);
  });
});

describe("urgency", () => {
  const level = (form: Partial<Record<FactField, string>>): string => urgencyOf(facts(form)).level;

  it("judges the same ammonia by pH and warmth", () => {
    // By hand with pKa = 0.09018 + 2729.92/T (Emerson et al. 1975) and the 0.035 mg/L NH₃ of US EPA 1989:
    // 0.5 mg/L N at pH 6.2, 25 °C: 0.0005 mg/L; at pH 8.6, 27 °C: 0.122 mg/L.
    expect(level({ tank: "fresh", readings: "ammonia 0.5 mg/L as TAN, pH 6.2, 25 °C" })).toBe("calm");
    expect(level({ tank: "fresh", readings: "ammonia 0.5 mg/L as TAN, pH 8.6, 27 °C" })).toBe("now");
  });

  it("keeps fish of cool water apart from others", () => {
    expect(level({ animals: "2 goldfish", readings: "temp 14 °C", trouble: "fine" })).toBe("calm");
    expect(level({ animals: "6 neon tetras", readings: "temp 14 °C", trouble: "fine" })).toBe("now");
  });

  it("takes nitrite as pressing in fresh water and not in the sea", () => {
    expect(level({ tank: "fresh water", readings: "nitrite 3" })).toBe("now");
    expect(level({ tank: "marine", readings: "nitrite 3" })).toBe("soon");
  });

  it("takes one lost animal as a reason to look closely", () => {
    expect(level({ worry: "one of my guppies died" })).toBe("soon");
    expect(level({ worry: "lost power for 10 seconds yesterday, all fine" })).toBe("calm");
  });
});

describe("what to do now", () => {
  it("sizes the change by the ammonia: as much as brings it under the limit, upward in fives", () => {
    const known = facts({ tank: "100 L fresh water", readings: "ammonia 1 mg/L as TAN, pH 8, 25 °C" });
    // By hand: pKa 9.246, share 0.0537, NH₃ 0.0653 mg/L; 1 − 0.035/0.0653 = 46 %: 50 %, 50 L.
    expect(changeNow(known, urgencyOf(known))).toMatchObject({ share: 0.5, times: 1, litres: 50 });
  });

  it("says nothing where nothing presses", () => {
    const known = facts({ worry: "green water" });
    expect(doNow(known, urgencyOf(known))).toBeUndefined();
  });

  it("cuts the power before anything wet, and gives air without it", () => {
    const known = facts({ worry: "plug melted and the fish are gasping" });
    const [first, second] = doNow(known, urgencyOf(known))?.steps ?? [];
    expect(first).toContain("breaker");
    expect(second).toContain("without power");
  });

  it("holds six steps at most, and warns of raising a low pH with much ammonia", () => {
    const known = facts({
      worry: "all gasping, lying on the side, 4 dead, heater stuck",
      readings: "ammonia 8, pH 6.5",
    });
    const now = doNow(known, urgencyOf(known));
    expect(now?.steps.length).toBeLessThanOrEqual(6);
    expect(now?.cautions.map(({ code }) => code)).toContain("help-pH-rises-with-the-change");
  });
});

describe("findings", () => {
  it("compares pH, alkalinity and carbon dioxide", () => {
    // The chart of the trade: CO₂ = 3 × KH × 10^(7 − pH): 12 mg/L at 4 °dKH (1.427 meq/L) and pH 7.
    // Common practice, no source; its 3 stands for a pK₁ near 6.28, so the two may differ by a fifth.
    expect(carbonDioxide(7, 1.427) / 12).toBeGreaterThan(0.8);
    expect(carbonDioxide(7, 1.427) / 12).toBeLessThan(1.2);
    expect(says({ tank: "fresh", readings: "pH 6, KH 12" })).toContain("doubtful: A pH of 6");
    expect(says({ tank: "fresh", readings: "pH 7.4, KH 5" })).toContain("fits: pH and alkalinity agree");
  });

  it("knows a start by its two halves, and doubts the same in an old tank", () => {
    const readings = "ammonia 0, nitrite 1";
    expect(says({ tank: "fresh, 4 weeks", readings })).toContain("fits: Nitrite with no ammonia");
    expect(says({ tank: "fresh, 2 years", readings })).toContain("doubtful: Nitrite with no ammonia");
  });

  it("doubts scales of salinity", () => {
    expect(says({ tank: "marine", readings: "salinity 26 ppt" })).toContain("gravity such as 1.026");
    expect(says({ tank: "fresh, guppies", readings: "salinity 10 ppt" })).toContain("a lot of salt");
  });

  it("asks for a new test of what cannot be", () => {
    expect(says({ readings: "pH 14" })).toContain("Please test it again");
  });
});

describe("the next question", () => {
  it("asks after the animals before anything else", () => {
    expect(nextIds({})[0]).toBe("trouble");
  });

  it("asks for the pH where it decides whether the ammonia harms, and hardly where it cannot", () => {
    const base = { trouble: "fine", tank: "60 L fresh, 5 weeks" };
    expect(nextIds({ ...base, readings: "ammonia 1, temp 25 °C" })[0]).toBe("pH");
    expect(nextIds({ ...base, readings: "ammonia 0, temp 25 °C" })[0]).not.toBe("pH");
  });

  it("never asks again for what was told, and ends", () => {
    const all = {
      trouble: "fine",
      tank: "60 L fresh, 5 weeks",
      animals: "2 guppies",
      change: "20 % yesterday",
      readings: "ammonia 0, nitrite 0, nitrate 5, pH 7, temp 25 °C, KH 5",
    };
    expect(nextIds(all)).toEqual([]);
  });
});

describe("advice", () => {
  const clash = (first: string, second: string): string | undefined =>
    contradictions([
      { number: 1, text: first },
      { number: 2, text: second },
    ])[0]?.about;

  it.each([
    ["change half the water now", "dont change any water this week", "changing water"],
    ["change 50 % of the water", "do a 10 % water change", "changing water"],
    ["feed nothing for two days", "keep feeding as usual", "feeding"],
    ["raise the temperature to 28", "turn the heater down", "the temperature"],
    ["clean the filter well", "leave the filter alone", "the filter"],
    ["add a spoon of salt", "no salt please", "salt"],
    ["lights off for three days", "leave the light on longer", "the light"],
  ])("“%s” and “%s” differ", (first, second, about) => {
    expect(clash(first, second)).toBe(about);
  });

  it.each([
    ["change 30 % of the water", "test the water tomorrow"],
    ["feed half", "change a third of the water"],
    ["change 30 % today", "change 25 % of the water tomorrow"],
    ["no new fish for now", "feed little"],
  ])("“%s” and “%s” go together", (first, second) => {
    expect(clash(first, second)).toBeUndefined();
  });

  it("knows medicine when it is named", () => {
    expect(isMedicine("dose 5 ml of antibiotic")).toBe(true);
    expect(isMedicine("change a third of the water")).toBe(false);
  });
});

describe("its manners", () => {
  /** Grade by Kincaid et al. 1975: 0.39 words a sentence + 11.8 syllables a word − 15.59. */
  function grade(text: string): number {
    const sentences = text.split(/[.!?:;]+(?:\s|$)/).filter((each) => /\p{L}/u.test(each)).length;
    const words = text.match(/\p{L}+/gu) ?? [];
    const syllables = words.reduce(
      (sum, word) =>
        sum +
        Math.max(
          1,
          (
            word
              .toLowerCase()
              .replace(/e$/, "")
              .match(/[aeiouy]+/g) ?? []
          ).length,
        ),
      0,
    );
    return (0.39 * words.length) / sentences + (11.8 * syllables) / words.length - 15.59;
  }

  const everything = [
    ...ALL_QUESTIONS.flatMap(({ text, why }) => [text, why]),
    ...[
      {
        worry: "all gasping, 4 dead, heater stuck on, soap in the tank",
        tank: "60 L fresh, 3 weeks",
        readings: "ammonia 4, pH 8.4, nitrite 3",
      },
      { worry: "plug melted, tank leaking" },
      { tank: "marine, 2 years", readings: "salinity 26 ppt, pH 7.4, KH 9, nitrite 1, nitrate 0, ammonia 0" },
      {
        tank: "fresh, 2 weeks",
        animals: "20 guppies",
        readings: "ammonia 0, nitrite 0, nitrate 0, pH 6, KH 15",
      },
    ].flatMap((form) => {
      const { value } = helpCase(facts(form), []);
      return [...(value.doNow?.steps ?? []), ...value.findings.map((finding) => finding.says)];
    }),
  ];

  it("reads at the level of a 13-year-old", () => {
    expect(everything.length).toBeGreaterThan(40);
    // School year 8 is ages 13 and 14.
    expect(grade(everything.join(" "))).toBeLessThan(8);
    expect(everything.filter((text) => grade(text) > 13)).toEqual([]);
  });

  it("asks nothing of the person", () => {
    for (const { text } of ALL_QUESTIONS)
      expect(text).not.toMatch(
        /\b(your (?:age|name|school|address|phone|parents)|how old are you|where do you live)\b/i,
      );
  });

  it("blames nobody", () => {
    for (const text of everything)
      expect(text).not.toMatch(/your fault|should have|mistake|wrong of you|careless/i);
  });
});
