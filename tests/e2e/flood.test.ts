import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

/** The worked example: 2.60 m² × 25 mm, overflow box 10 L, four drums of 0.17 m² × 14 mm. Pipes hold 16 L:
 *  7.391 m of 52.5 mm bore at 2.1648 L per metre (a circle's area). */
const BEFORE = "level:25 mm returns:none overflow-box:10 L surface:2.6 m2 pipe:bore 52.5 mm, 7.391 m";
const DRUMS = [1, 2, 3, 4].map((n) => `drum ${n} overflows 14 mm, surface 0.17 m2, room 80 mm`).join("; ");
const LINKED =
  "settling box shares level, surface 0.32 m2, room 115 mm; algae tank holds the pump, surface 0.6 m2, room 115 mm";

describe("/flood check", () => {
  it("names the container and the millimetres: passes at once, fails with the reserve", async () => {
    const club = openClub();
    const reply = await club.ask(`/flood check ${BEFORE} row:${DRUMS}; ${LINKED}`);
    // 65 + 10 + 16 + 9.5 = 100.5 L; room 0.92 m² × 115 mm = 106 L; rise 109.2 mm, so 5.8 mm left.
    expect(textOf(reply)).toMatch(/100\.5 L fall back|101 L fall back|100 L fall back/);
    expect(textOf(reply)).toContain("106 L");
    expect(reply.headline).toMatch(/^Tight: 5\.[78] mm left in (settling box|algae tank)$/);
    // Allowed fall with the reserve of 1.25: 19 mm.
    expect(textOf(reply)).toContain("it may fall 19 mm");
    expect(reply.cautions.some(({ text }) => text.includes("stop the pump, watch to the end"))).toBe(true);
  });

  it("finds the flood of a single pump box, and the return that drains the display", async () => {
    const club = openClub();
    // The same fallback into 0.60 m² with 120 mm of room (72 L): 100.5 ÷ 0.60 − 120 = 47.5 mm over.
    const single = await club.ask(
      `/flood check ${BEFORE} row:${DRUMS}; pump box holds the pump, surface 0.6 m2, room 120 mm`,
    );
    expect(single.headline).toMatch(/^Floods: pump box runs over by 4[78](\.\d)? mm$/);
    // A nozzle 150 mm deep without a break: 2.60 m² × 125 mm = 325 L more.
    const nozzle = await club.ask(
      `/flood check ${BEFORE.replace("returns:none", "returns:nozzle: 150 mm below")} row:${LINKED}`,
    );
    expect(textOf(nozzle)).toContain("325 L more");
  });

  it("adds blocked drain, stuck top-off and the largest spill from the tank's notes", async () => {
    const club = openClub();
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm; pump box 100x60x60 cm inside, level 45 cm",
    );
    await club.ask(
      "/plant water level:25 mm returns:none inlet:90 L reservoir:70 L row:pump box holds the pump, room 150 mm",
    );
    const reply = await club.ask("/flood check");
    expect(reply.title).toBe("Lagoon: pump-off flood check");
    // 2.60 m² × 25 mm = 65 L on 0.60 m² is 108.3 mm: 41.7 left of 150.
    expect(reply.headline).toMatch(/^Fits: 4[12](\.\d)? mm left in pump box$/);
    // 90 L on 2.60 m²: 34.6 mm.
    expect(textOf(reply)).toMatch(/Blocked drain: the display rises 3[45](\.\d)? mm, and holds it/);
    // 70 + 65 L into 0.60 m² × 150 mm = 90 L: 45 L over.
    expect(textOf(reply)).toContain("Stuck top-off: 45 L run over");
    // The display's 1820 L and 90 L more that the pump brings.
    expect(textOf(reply)).toContain("1910 L, at display");
    expect(reply.cautions.some(({ level, text }) => level === "danger" && text.includes("sticks on"))).toBe(
      true,
    );
  });

  it("asks for the row by the names of the tank's own containers, and for a surface it cannot know", async () => {
    const club = openClub();
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm; drum 110 L label",
    );
    expect(textOf(await club.say("/flood check"))).toContain("Yours are drum");
    expect(textOf(await club.fill("drum holds the pump, room 90 mm"))).toContain(
      "How large is the water's surface in drum",
    );
  });

  it("refuses nonsense", async () => {
    const club = openClub();
    for (const row of [
      "'; DROP TABLE tank",
      "box: pump, surface -3 m2, room 9 mm",
      "box: pump, surface 1e999 m2, room 9 mm",
      "🐡: pump",
      "a: pump, surface 1 m2, room 9 mm; a: pump, surface 1 m2, room 9 mm",
    ]) {
      const outcome = await club.say(`/flood check ${BEFORE} row:${row}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
