import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/skimmate check", () => {
  it("tells when it runs over and what salt it takes", async () => {
    const club = openClub();
    const reply = await club.ask(
      "/skimmate check rate:0.6 L/day holds:4 L now:1 L volume:2300 L salinity:35 ppt",
    );
    // (4 − 1) ÷ 0.6 × 24 = 120 h = 5 days. A week takes 4.2 L: 35 × (1 − e^(−4.2/2300)) = 0.064 ppt.
    expect(reply.headline).toBe("Full in 5 days");
    expect(textOf(reply)).toContain("4.2 L of salt water");
    expect(textOf(reply)).toContain("0.064 ppt");
  });

  it("asks for the volume, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/skimmate check rate:0.6 L/day holds:4 L"))).toContain(
      "How much water is in the system",
    );
    for (const odd of ["0 L/day", "foam", "-1 L/day", "1e999 L/day"]) {
      const outcome = await club.say(`/skimmate check rate:${odd} holds:4 L volume:2300 L salinity:35 ppt`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
