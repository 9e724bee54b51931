import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

/** Elementary geometry, each worked out by itself and by numerical integration. */
const SHAPES: readonly (readonly [string, number])[] = [
  ["box 260x100x70 cm inside, level 70 cm", 1820],
  ["cylinder 46.5 x 60 cm inside, level 49 cm", 83.213],
  ["drum on its side 46.5 x 65 cm inside, level 15 cm", 30.79],
  ["bow front 183 x 46 x 65 cm bow 15 cm inside, level 60 cm", 615.47],
  ["quarter round 100 x 65 cm inside, level 60 cm", 471.24],
  ["hexagon 90 x 75 cm inside, level 70 cm", 491.04],
  ["L-shape 240 x 180 x 65 cm cut 160 x 100 cm inside, level 60 cm", 1632],
  ["tapered tub 88 x 54 x 98 x 64 x 45 cm inside, level 34 cm", 180.45],
];

describe("/vessel volume", () => {
  it.each(SHAPES)("%s", async (container, litres) => {
    const club = openClub();
    const reply = await club.ask(`/vessel volume container:${container}`);
    expect(Math.abs(figure(reply.headline) - litres)).toBeLessThan(litres * 0.005);
  });

  it("asks whether dimensions are inside or outside, and takes walls off", async () => {
    const club = openClub();
    const asked = await club.say("/vessel volume container:box 260x100x78 cm, wall 25 mm, level 70 cm");
    expect(textOf(asked)).toContain("inside or outside");
    const outside = await club.pick("outside");
    // (260 − 5) × (100 − 5) × 70 cm = 1695.75 L, shown to three figures.
    expect(outside.kind === "reply" && Math.abs(figure(outside.headline) - 1696)).toBeLessThan(5);
  });

  it("takes rock and sand off by their solids, and lets a measured fill stand", async () => {
    const club = openClub();
    const rock = await club.ask(
      "/vessel volume container:display 260x100x78 cm inside, level 70 cm, rock 240 kg, sand 4 cm deep",
    );
    // 240 kg ÷ 2800 kg/m³ = 85.7 L; 2.60 m² × 4 cm × (1 − 0.40) = 62.4 L; 1820 − 148 = 1672 L.
    expect(Math.abs(figure(rock.headline) - 1672)).toBeLessThan(9);
    const measured = await club.ask(
      "/vessel volume container:drum 40x40x60 cm inside, level 50 cm, 71 L measured",
    );
    expect(figure(measured.headline)).toBe(71);
  });

  it("refuses water above the rim and nonsense", async () => {
    const club = openClub();
    for (const odd of [
      "box 10x10x10 cm inside, level 20 cm",
      "box 0x10x10 cm inside",
      "'; DROP TABLE",
      "box 1e999x1x1 cm inside",
      "🪣",
    ]) {
      const outcome = await club.say(`/vessel volume container:${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/vessel displaced", () => {
  it("counts solids only: pores are full of water", async () => {
    const club = openClub();
    const reply = await club.ask("/vessel displaced rock:240 kg bed:260 x 100 cm depth:4 cm");
    // Archimedes: 240 kg ÷ 2800 kg/m³ = 85.7 L; sand 2.60 m² × 4 cm × (1 − 0.40) = 62.4 L, and 41.6 L between the grains.
    expect(Math.abs(figure(reply.headline) - 148.1)).toBeLessThan(2);
    expect(textOf(reply)).toMatch(/Rock: 8[56](\.\d)? L/);
    expect(textOf(reply)).toMatch(/4[12](\.\d)? L( \(\d+–\d+\))? of water stand between the grains/);
    // Wet rock carries water: its range is wider.
    const wet = await club.ask("/vessel displaced rock:100 kg weighed:wet and drained");
    expect(wet.headline).toContain("–");
  });

  it("asks for the depth of a bed, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/vessel displaced bed:2.6 m2"))).toContain("How deep is the sand");
    expect(textOf(await club.say("/vessel displaced"))).toContain("How much rock");
    for (const odd of ["0 kg", "-3 kg", "1e999 kg", "a boulder"]) {
      const outcome = await club.say(`/vessel displaced rock:${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/vessel second-hand", () => {
  it("judges nothing, and advises leak test and fabricator", async () => {
    const club = openClub();
    const reply = await club.ask("/vessel second-hand");
    expect(reply.headline).toContain("Not judged");
    expect(textOf(reply)).toContain("Test-fill it outdoors");
    expect(textOf(reply)).toContain("tank fabricator");
    expect(reply.cautions.filter(({ level }) => level === "danger")).toHaveLength(3);
  });

  it("takes nothing beside its name", async () => {
    const club = openClub();
    await expect(club.say("/vessel second-hand will this old tub hold?")).rejects.toThrow(
      "takes nothing beside its name",
    );
  });
});
