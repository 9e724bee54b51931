import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

describe("/uv dose", () => {
  it("is intensity times time, less age and fouling, against twice a published dose", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/uv dose lit:1.6 L intensity:18 mW/cm2 flow:2000 L/h target:Cryptocaryon irritans theront, lethal in vitro volume:2300 L",
    );
    // 18 × 1.6 × 3600 ÷ 2000 = 51.84 mJ/cm² new; × 0.8 × 0.8 = 33.2.
    expect(Math.abs(figure(reply.headline) - 33.2)).toBeLessThan(1);
    // 288 mJ/cm² (Lu et al. 2022) need at most 360 L/h new; × 0.64 ÷ 2 = 115 L/h.
    expect(Math.abs(figure(/most flow for it: (.*)/.exec(textOf(reply))?.[1]) - 115)).toBeLessThan(6);
    expect(textOf(reply)).toContain("not surely reached");
    expect(textOf(reply)).toContain("cures nothing");
    expect(textOf(reply)).toContain("burns eyes and skin");
    // 2000 × 24 ÷ 2300 = 20.9 passes.
    expect(textOf(reply)).toMatch(/passes (20\.9|21) times a day/);
  });

  it("warns that drinking-water doses do not carry over", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/uv dose lit:1.6 L intensity:18 mW/cm2 flow:2000 L/h target:Cryptosporidium, 3 log",
    );
    expect(textOf(reply)).toContain("12 mJ/cm² published");
    expect(textOf(reply)).toContain("far too small for parasites of fish");
  });

  it("asks for the light, piece by piece, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/uv dose lit:1.6 L flow:2000 L/h"))).toContain("How strong is the light");
    expect(
      textOf(await club.say("/uv dose lit:1.6 L flow:2000 L/h lamp:55 W length:80 cm sleeve:2.5 cm")),
    ).toContain("its chamber");
    const narrow = await club.ask(
      "/uv dose lit:1.6 L flow:2000 L/h lamp:55 W length:80 cm sleeve:9 cm chamber:8 cm clarity:90 %",
    );
    expect(narrow.ok).toBe(false);
    for (const odd of ["bright", "0 mW/cm2", "-3", "1e999"]) {
      const outcome = await club.say(`/uv dose lit:1.6 L flow:2000 L/h intensity:${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
