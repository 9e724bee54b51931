import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

describe("/weight check", () => {
  it("gives mass, kPa and psf, and flags rather than judges", async () => {
    const club = openClub();
    // 2500 kg on 2.9 m²: 8.45 kPa, 176.6 psf; on 6 feet of 79 cm²: 0.517 MPa. 2443 L at 1023.3 kg/m³ are 2500 kg.
    const reply = await club.ask(
      "/weight check water:2443 L footprint:2.9 m2 feet:6 x 79 cm2 salinity:35 ppt temperature:25 °C",
    );
    expect(Math.abs(figure(reply.headline) - 2500)).toBeLessThan(6);
    expect(reply.headline).toContain("8.45 kPa");
    expect(reply.headline).toContain("177 psf");
    expect(textOf(reply)).toContain("0.52 MPa");
    expect(textOf(reply)).toContain("never says that a floor will bear it");
    expect(
      reply.cautions.some(({ level, text }) => level === "danger" && text.includes("structural engineer")),
    ).toBe(true);
  });

  it("takes brim, footprint and rock from a saved tank", async () => {
    const club = openClub();
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm, rock 240 kg",
    );
    const reply = await club.ask("/weight check");
    // 2028 L to the brim less 85.7 L of rock (240 ÷ 2800): 1942 L × 1.0233 + 240 = 2228 kg.
    expect(Math.abs(figure(reply.headline) - 2228)).toBeLessThan(12);
    expect(textOf(reply)).toContain("footprint 2.6 m²");
  });

  it("asks for the water, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/weight check"))).toContain("How much water does it hold to the brim");
    for (const odd of ["0 m2", "-2 m2", "a floor", "1e999 m2"]) {
      const outcome = await club.say(`/weight check water:100 L footprint:${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/weight wall", () => {
  it("tells the push of the water, and refuses a thickness with its reasons", async () => {
    const club = openClub();
    const reply = await club.ask("/weight wall depth:70 cm length:2.6 m");
    // Hydrostatics: 1023.3 × 9.80665 × 0.70 = 7.02 kPa; half of it × 0.70 m × 2.6 m = 6.39 kN.
    expect(reply.headline).toBe("7 kPa at the bottom, 6.4 kN on the whole wall");
    expect(textOf(reply)).toContain("Wall thickness is not worked out here");
    expect(textOf(reply)).toContain("acrylic creeps");
  });

  it("refuses outright without figures, and refuses nonsense", async () => {
    const club = openClub();
    const refused = await club.ask("/weight wall");
    expect(refused.ok).toBe(false);
    expect(textOf(refused)).toContain("Have tanks made or judged by a fabricator");
    for (const odd of ["0 cm", "-5 cm", "deep", "1e999 m"]) {
      const outcome = await club.say(`/weight wall depth:${odd} length:2.6 m`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
