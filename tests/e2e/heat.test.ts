import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

/** The first figure of a text. */
function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

describe("/heat duty", () => {
  const ROOM = "open:2.6 m2 walls:acrylic 25 mm temperature:25.5 °C room:20 °C humidity:45 %";

  it("adds up walls, surface and evaporation", async () => {
    const club = openClub();
    const reply = await club.ask(`/heat duty ${ROOM} wetted:5 m2 equipment:300 W`);
    // ISO 6946 films: 1 ÷ (1/200 + 0.025/0.19 + 1/7.7) = 3.75 W/(m² K); × 5 m² × 5.5 K = 103 W.
    const walls = reply.table?.rows.find(([name]) => name?.startsWith("walls"))?.[1];
    expect(Math.abs(figure(walls) - 103)).toBeLessThan(6);
    // 8–10 W/(m² K) × 2.6 m² × 5.5 K = 114–143 W (common practice, no source).
    const surface = figure(reply.table?.rows.find(([name]) => name?.includes("surface"))?.[1]);
    expect(surface).toBeGreaterThan(113);
    expect(surface).toBeLessThan(144);
    expect(reply.cautions.some(({ text }) => text.includes("Two smaller heaters"))).toBe(true);
    expect(
      reply.cautions.some(({ level, text }) => level === "danger" && text.includes("licensed electrician")),
    ).toBe(true);
  });

  it("takes walls, surface and devices of a saved tank, and asks for the rest", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm");
    await club.ask("/tank note temperature:25.5 °C");
    expect(textOf(await club.say("/heat duty"))).toContain("How warm is the room");
    await club.ask(
      "/plant room room:20 °C humidity:45 % walls:acrylic 25 mm devices:return pump 180 W; light 240 W, 12 h; heater 300 W",
    );
    const reply = await club.ask("/heat duty");
    // Floor 2.6 m² and walls 2 × (2.6 + 1.0) m × 0.7 m: 7.64 m² × 3.75 × 5.5 K = 158 W.
    expect(Math.abs(figure(reply.table?.rows[0]?.[1]) - 158)).toBeLessThan(9);
    expect(textOf(reply)).toContain("open water 2.6 m²");
  });

  it("refuses nonsense", async () => {
    const club = openClub();
    for (const odd of [
      "temperature:90 °C",
      "room:-200 °C",
      "humidity:400 %",
      "open:0 m2",
      "walls:acrylic -25 mm",
      "equipment:∞ W",
    ]) {
      const [name = ""] = odd.split(":");
      const others = `${ROOM} wetted:5 m2`
        .split(" ")
        .join(" ")
        .replace(new RegExp(`${name}:[^:]+?(?= [a-z]+:|$)`), "");
      const outcome = await club.say(`/heat duty ${others} ${odd}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/heat topoff", () => {
  const ROOM = "open:2.6 m2 temperature:25.5 °C room:22 °C humidity:45 %";

  it("gives a day's evaporation between the published formulas", async () => {
    const club = openClub();
    const reply = await club.ask(`/heat topoff ${ROOM}`);
    // Pool formula 9.3, buoyancy formula 11.2, measured still pools 12.5 kg a day.
    expect(figure(reply.headline)).toBeGreaterThanOrEqual(10.5);
    expect(figure(reply.headline)).toBeLessThanOrEqual(11.7);
    expect(textOf(reply)).toContain("ventilate, or mould follows");
  });

  it("tells what a failed top-off does", async () => {
    const club = openClub();
    const reply = await club.ask(
      `/heat topoff ${ROOM} salinity:35 ppt volume:2300 L inlet:20 L reservoir:70 L free:106 L fallback:65 L`,
    );
    // 70 L of fresh water into 2300 L of 35: 34.0. 70 + 65 L into 106 L: 29 L over.
    expect(textOf(reply)).toMatch(/salinity ends at 3(3\.9\d?|4(\.0)?) ppt/);
    expect(textOf(reply)).toContain("29 L once the pump stops");
    // 20 L at 11.2 L a day: 43 h.
    expect(textOf(reply)).toMatch(/draws air after 4[1-5] h/);
  });

  it("asks for open water and room, and refuses nonsense", async () => {
    const club = openClub();
    expect(textOf(await club.say("/heat topoff"))).toContain("How much open water");
    for (const odd of ["'; --", "0 m2", "1e999 m2", "-2 m2"]) {
      const outcome = await club.say(`/heat topoff open:${odd} temperature:25.5 °C room:22 °C humidity:45 %`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});

describe("/heat change", () => {
  it("gives the hours of a chiller against steady heat", async () => {
    const club = openClub();
    // 2300 L × 4.092 kJ/(L K) × 2 K ÷ (1500 − 500) W = 5.23 h.
    expect((await club.ask("/heat change by:2 °C power:1500 W against:500 W volume:2300 L")).headline).toBe(
      "5.2 h",
    );
    // 2700 L × 10 K hold 31 kWh.
    expect(textOf(await club.ask("/heat change by:10 °C power:2 kW volume:2700 L"))).toContain("31 kWh");
  });

  it("refuses a power that never gets there", async () => {
    const club = openClub();
    const weak = await club.ask("/heat change by:2 °C power:400 W against:500 W volume:2300 L");
    expect(weak.ok).toBe(false);
    expect(weak.body[0]).toContain("may not get there");
    for (const odd of ["0 °C", "hot", "1e999 °C"]) {
      const outcome = await club.say(`/heat change by:${odd} power:400 W volume:2300 L`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
