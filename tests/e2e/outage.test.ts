import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const WATER = "display:100 L surface:0.5 m2 temperature:25 °C salinity:35 ppt oxygen:6.4 mg/L";

/** Hours in the headline, best value. */
function hours(headline: string | undefined): number {
  return Number(/(\d+(?:\.\d+)?) h/.exec(headline ?? "")?.[1]);
}

describe("/outage plan", () => {
  it("counts down from the oxygen in the display by what its fish breathe", async () => {
    const club = openClub();
    const reply = await club.ask(`/outage plan livestock:10 damselfish 50 g ${WATER}`);
    // Clarke & Johnston 1999: a 50 g fish at 25 °C rests on 205 mg/(kg h); × 1.5 active × 1.5 for all else is
    // 231 mg/h for ten of them; 100 L × (6.4 − 4) mg/L last 1.04 h when nothing comes in.
    expect(Math.abs(hours(reply.headline) - 1.04)).toBeLessThan(0.06);
    // To 2 mg/L: 100 × 4.4 ÷ 231 = 1.9 h.
    expect(textOf(reply)).toMatch(/emergency: (1\.9|2\.0|2|1\.91|1\.92|1\.93) h/);
    // Oxygen comes first, and the battery air pump is asked about.
    const first = reply.body.find((line) => line.startsWith("1. ")) ?? "";
    expect(first).toContain("Keep the surface moving");
    expect(textOf(reply)).toContain("A battery air pump changes most of all");
    expect(reply.cautions.some(({ text }) => text.includes("filters stand apart"))).toBe(true);
  });

  it("shows what a battery air pump and a generator change, with the caution on exhaust", async () => {
    const club = openClub();
    const reply = await club.ask(
      `/outage plan livestock:10 damselfish 50 g ${WATER} room:12 °C air:4 L/min at 50 cm generator:yes`,
    );
    const text = textOf(reply);
    expect(text).toContain("With your battery air pump");
    expect(text).toContain("1. Start a battery air pump");
    expect(text).toContain("Wrap the walls in blankets");
    expect(text).toContain("Run a generator outdoors only");
    expect(text).toMatch(/Water temperature: .* after 6 h/);
  });

  it("takes a saved tank and says what it took, and asks one thing at a time", async () => {
    const club = openClub();
    expect(textOf(await club.say("/outage plan"))).toContain("Which animals live in the display");
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm; pump box 100x60x60 cm inside, level 40 cm",
    );
    await club.ask(
      "/tank note livestock:1 grouper 5 kg; 6 triggerfish 1 kg salinity:35 ppt temperature:25.5 °C",
    );
    const reply = await club.ask("/outage plan");
    expect(reply.title).toBe("Lagoon: a power cut");
    expect(textOf(reply)).toContain("water in the display 1820 L");
    expect(textOf(reply)).toContain("display surface 2.6 m²");
  });

  it("refuses nonsense", async () => {
    const club = openClub();
    for (const odd of [
      "'; DROP TABLE tank",
      "0 damselfish 50 g",
      "10 damselfish -50 g",
      "99999999 fish 1 g",
      "🐟",
    ]) {
      const outcome = await club.say(`/outage plan livestock:${odd} ${WATER}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
    const boiling = await club.say(
      `/outage plan livestock:10 damselfish 50 g display:100 L surface:0.5 m2 temperature:80 °C salinity:35 ppt`,
    );
    expect(boiling.kind === "question" || !boiling.ok).toBe(true);
  });
});

describe("/outage battery", () => {
  it("gives the hours of a battery, less what age takes", async () => {
    const club = openClub();
    const reply = await club.ask("/outage battery load:60 W battery:100 Ah, 12 V, lead-acid");
    // 100 Ah × 12 V × 0.5 × 0.87 ÷ 60 W = 8.7 h new; × 0.85 for age = 7.4 h.
    expect(hours(reply.headline)).toBeCloseTo(7.4, 0);
    expect(textOf(reply)).toContain("licensed electrician");
  });

  it("asks for the battery, and refuses one that cannot be", async () => {
    const club = openClub();
    expect(textOf(await club.say("/outage battery load:60 W"))).toContain("Which battery?");
    for (const odd of ["100 Ah", "12 V lead-acid", "-4 Ah, 12 V, lead-acid", "1e9 V", "💥"]) {
      const outcome = await club.say(`/outage battery load:60 W battery:${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
    expect((await club.ask("/outage battery load:0 W battery:100 Ah, 12 V, lead-acid")).ok).toBe(false);
  });
});
