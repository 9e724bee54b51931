import { describe, expect, it } from "vitest";
import { centsOf } from "../../../../src/core/breeding/cents.ts";
import { rotifersTonight } from "../../../../src/core/breeding/feed-tonight.ts";
import { hatchWindow } from "../../../../src/core/breeding/hatch-window.ts";
import { readCountEntry } from "../../../../src/core/breeding/read-count.ts";
import { tubCount } from "../../../../src/core/breeding/tub-count.ts";
import { as, type Litres } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

describe("a count as typed", () => {
  it.each([
    ["131", "131, counted"],
    ["1,200", "1,200, counted"],
    ["1.200", "1,200, counted"],
    ["about 500", "about 500 (250–750), guessed"],
    ["~40", "about 40 (20–60), guessed"],
    ["400-600", "about 500 (400–600), guessed"],
    ["600 to 400", "about 500 (400–600), guessed"],
    ["4 7 5 in 10 mL", "3 scoops of 10 mL: 4, 7, 5"],
    ["4, 7 and 5 x 10ml each", "3 scoops of 10 mL: 4, 7, 5"],
    ["23 19 in 0,1 mL", "2 scoops of 0.1 mL: 23, 19"],
    ["9 in 0.5 L", "1 scoop of 500 mL: 9"],
  ])("%s", (typed, said) => {
    const read = readCountEntry(typed);
    expect(read.kind === "read" ? read.readAs : read).toBe(said);
  });

  it.each(["", "many", "-5", "4.5", "4 7 5", "4 7 in 0 mL", "1e9", "99999999999", "4 x in 10 mL", "5 in 10"])(
    "“%s” is no count",
    (typed) => {
      expect(readCountEntry(typed).kind).toBe("unreadable");
    },
  );
});

describe("when eggs hatch", () => {
  const clutch = { species: "Green clownfish", laidDay: "2026-03-04" };

  it("goes by print for want of anything better, in a word within the name", () => {
    const { value, sources } = answered(hatchWindow(clutch, []));
    expect([value.from, value.until]).toEqual(["2026-03-09", "2026-03-15"]);
    expect(sources).toContain("ocellaris-2007");
  });

  it("by warmth where the group's own spawns lie at several temperatures", () => {
    // Two points in print: 12.3 d at 25 °C and 9.0 d at 28 °C give base 16.82 °C and 100.6 °C·d
    // (Green & Fisher 2004); at 26.5 °C that is 10.39 days.
    const past = [
      { species: "blenny", days: 12.3, temperatureC: 25 },
      { species: "blenny", days: 9, temperatureC: 28 },
      { species: "blenny", days: 9, temperatureC: 28 },
    ];
    const { value, working } = answered(
      hatchWindow({ species: "blenny", laidDay: "2026-03-04", temperatureC: 26.5 }, past),
    );
    expect(value.basis).toContain("warmth");
    expect(working.join(" ")).toContain("base 16.8 °C and 101 °C·d");
    // 10.39 ± half a day, to whole days: 9 to 11.
    expect([value.from, value.until]).toEqual(["2026-03-13", "2026-03-15"]);
  });

  it("never beyond the temperatures that were seen", () => {
    const past = [25, 28, 28].map((temperatureC) => ({ species: "blenny", days: 10, temperatureC }));
    const answer = hatchWindow({ species: "blenny", laidDay: "2026-03-04", temperatureC: 31 }, past);
    expect(raised(answer)).toContain("breeding-temperature-beyond");
    expect(answered(answer).value.basis).not.toContain("warmth");
  });

  it("knows two looks for eggs whose young swim only later, and none for a stranger", () => {
    const angels = answered(hatchWindow({ species: "angelfish", laidDay: "2026-03-04" }, []));
    expect(angels.value.next?.what).toBe("swimming free");
    expect(refused(hatchWindow({ species: "moon snail", laidDay: "2026-03-04" }, []))).toBe(
      "breeding-no-hatch-figures",
    );
    expect(raised(hatchWindow({ species: "nothobranchius", laidDay: "2026-03-04" }, []))).toEqual([
      "breeding-diapause",
    ]);
  });
});

describe("scoops and feeds", () => {
  it("a single empty scoop still has an upper end: 3.689 in its volume (exact, two-sided)", () => {
    const { value } = answered(tubCount([0], 10, as<Litres>(40)));
    expect(value.perML.low).toBe(0);
    expect(value.perML.high).toBeCloseTo(0.3689, 4);
    expect(refused(tubCount([], 10, undefined))).toBe("breeding-no-scoops");
  });

  it("takes no more than a quarter of any culture, and says what is missing", () => {
    const answer = rotifersTonight(
      { tankL: as<Litres>(400), targetPerML: 10, leftPerML: 0, feedsPerDay: 1 },
      [{ name: "A", litres: as<Litres>(20), perML: 200 }],
    );
    // A quarter of 20 L at 200 per mL is 1,000,000 of the 4,000,000 needed.
    expect(answered(answer).value.harvests).toEqual([{ culture: "A", litres: 5, share: 0.25 }]);
    expect(answered(answer).value.missing).toBe(3_000_000);
    expect(raised(answer)).toEqual(["breeding-culture-short"]);
  });
});

it("money is whole cents or it is refused", () => {
  const exact = (value: number) => centsOf({ best: value, low: value, high: value });
  expect(exact(47.35)).toBe(4735);
  expect(exact(0.1 + 0.2)).toBe(30);
  expect(exact(0.001)).toBeUndefined();
  expect(exact(0)).toBeUndefined();
  expect(centsOf({ best: 5, low: 4, high: 6 })).toBeUndefined();
});
