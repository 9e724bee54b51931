import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/algae harvest", () => {
  it("tells the nitrate that a harvest stands for", async () => {
    const reply = await openClub().ask("/algae harvest wet:1 kg dry:10 % nitrogen:3 % volume:2700 L");
    // 1000 g × 0.1 × 0.03 = 3 g N (definition); × 4.4268 / 2700 L = 4.919 mg/L as NO₃ (standard atomic weights).
    expect(reply.headline).toBe("4.9 mg/L less nitrate");
    expect(reply.body[0]).toContain("3 g of nitrogen");
  });

  it("takes the tank's water, and a wide range where the algae are not known", async () => {
    const club = openClub();
    expect(textOf(await club.say("/algae harvest wet:800 g"))).toContain("How much water is in the system?");
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:algae tank 100x60x50 cm inside, level 45 cm",
    );
    const reply = await club.ask("/algae harvest wet:800 g");
    expect(reply.title).toContain("Lagoon");
    // 800 g × 0.1 × 0.03 = 2.4 g; 100 × 60 × 45 cm = 270 L: 39.3 mg/L, of which the dry share alone makes ± half.
    expect(reply.headline).toMatch(/^(39|40|4\d) mg\/L \(\d+–\d+\) less nitrate$/);
  });

  it("refuses what no scale shows", async () => {
    const club = openClub();
    for (const wet of ["-1 kg", "1e400 kg", "heaps", "0 g"]) {
      const odd = await club.say(`/algae harvest wet:${wet} volume:2700 L`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/algae need", () => {
  it("is the harvest turned round", async () => {
    const reply = await openClub().ask("/algae need nitrate:4.9187 mg/L dry:10 % nitrogen:3 % volume:2700 L");
    // 4.9187 mg/L NO₃ of 2700 L is 3.0 g N; / (0.1 × 0.03) = 1000 g.
    expect(reply.headline).toBe("Harvest 1 kg of drained algae a week");
  });

  it("reads nitrate as nitrogen where it is said to be, and refuses a share above all of it", async () => {
    const club = openClub();
    // 1.11112 mg/L N × 2700 L = 3.0 g N.
    const reply = await club.ask("/algae need nitrate:1.11112 mg/L as N dry:10 % nitrogen:3 % volume:2700 L");
    expect(reply.headline).toBe("Harvest 1 kg of drained algae a week");
    for (const share of ["300 %", "-5 %", "∞ %", "'; --"]) {
      const odd = await club.say(`/algae need nitrate:5 mg/L dry:${share} volume:2700 L`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});
