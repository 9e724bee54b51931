import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/oxygen full", () => {
  it("gives what the equation of Benson & Krause gives", async () => {
    const club = openClub();
    // Benson & Krause 1984, as used by USGS OWQ Technical Memorandum 2011.03: 6.7721 mg/L.
    expect((await club.ask("/oxygen full temperature:25 °C salinity:35 ppt")).headline).toBe("6.77 mg/L");
    // The same, at 1500 m of the US Standard Atmosphere 1976: 7.553 mg/L.
    const high = await club.ask("/oxygen full temperature:20 °C salinity:0 ppt air:1500 m");
    expect(high.headline).toBe("7.55 mg/L");
    // 4921.26 ft is 1500 m (definition of the foot, 0.3048 m).
    expect((await club.ask("/oxygen full temperature:20 °C salinity:0 ppt air:4921.26 ft")).headline).toBe(
      "7.55 mg/L",
    );
    // The same equation at 90 kPa: 8.0528 mg/L; 900 hPa is 90 kPa.
    expect((await club.ask("/oxygen full temperature:20 °C salinity:0 ppt air:900 hPa")).headline).toBe(
      "8.05 mg/L",
    );
  });

  it("asks for the temperature, then for the salt", async () => {
    const club = openClub();
    expect(textOf(await club.say("/oxygen full"))).toContain("How warm is the water?");
    expect(textOf(await club.fill("25 °C"))).toContain("How salty is the water?");
    // APHA Standard Methods 4500-O table (from memory): 8.263 mg/L in fresh water at 25 °C.
    const reply = await club.fill("0 ppt");
    expect(reply.kind === "reply" && reply.headline).toBe("8.26 mg/L");
  });

  it("asks which unit of air, and refuses air that cannot be", async () => {
    const club = openClub();
    const asked = await club.say("/oxygen full temperature:25 °C salinity:0 ppt air:1013");
    expect(textOf(asked)).toContain("has no unit");
    const reply = await club.ask("/oxygen full temperature:25 °C salinity:0 ppt air:5 kPa");
    expect(reply.ok).toBe(false);
    expect(reply.body[0]).toContain("cannot be right");
    for (const air of ["'; DROP TABLE member", "1e999 m", "-", "∞ kPa", "12 parsecs"]) {
      const odd = await club.say(`/oxygen full temperature:25 °C salinity:0 ppt air:${air}`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/oxygen reading", () => {
  it("turns mg/L into per cent and back", async () => {
    const club = openClub();
    // 100 × 6.0 / 6.7721 = 88.6 % (Benson & Krause 1984, as above).
    const share = await club.ask("/oxygen reading reading:6 mg/L temperature:25 °C salinity:35 ppt");
    expect(share.headline).toBe("88.6 % of saturation");
    // 0.92 × 6.7721 = 6.230.
    const content = await club.ask("/oxygen reading reading:92 % temperature:25 °C salinity:35 ppt");
    expect(content.headline).toBe("6.23 mg/L of oxygen");
    expect(textOf(content)).toContain("A meter left on fresh water shows 22 % too much");
  });

  it("warns of a low share however it was given, and asks for a bare number's unit", async () => {
    const club = openClub();
    // 60 % of 6.7721 is 4.06 mg/L.
    const low = await club.ask("/oxygen reading reading:60 % temperature:25 °C salinity:35 ppt");
    expect(low.cautions.some(({ level }) => level === "danger")).toBe(true);
    const same = await club.ask("/oxygen reading reading:4.06 mg/L temperature:25 °C salinity:35 ppt");
    expect(same.cautions.some(({ level }) => level === "danger")).toBe(true);
    const asked = await club.say("/oxygen reading reading:92 temperature:25 °C salinity:35 ppt");
    expect(textOf(asked)).toContain("Which does the meter show?");
  });

  it("refuses shares and contents no water has", async () => {
    const club = openClub();
    for (const reading of ["900 %", "-4 %", "1e400 mg/L", "500 mg/L", "<script> %"]) {
      const odd = await club.say(`/oxygen reading reading:${reading} temperature:25 °C salinity:35 ppt`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/oxygen budget", () => {
  it("holds a stocked tank's oxygen against its use, from the tank's own notes", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm");
    await club.ask(
      "/tank note livestock:2 queen triggerfish 30 cm food:60 g prawn 3 times a week salinity:35 ppt temperature:25 °C",
    );
    const reply = await club.ask("/oxygen budget measured:6.0 mg/L");
    // 200 × 100 × 60 cm is 1200 L; at 6.0 mg/L it holds 7.2 g.
    const held = reply.table?.rows.find(([name]) => name?.startsWith("held now"))?.[1] ?? "";
    expect(held).toMatch(/^7\.2 g/);
    expect(textOf(reply)).toContain("held when fully aerated | 6.77 mg/L");
    expect(reply.headline).toMatch(/ h \(.*after a meal, if pumps and air stop/);
    expect(textOf(reply)).toContain("After a meal oxygen would settle near");
    expect(reply.title).toBe("Lagoon: oxygen budget");
  });

  it("asks for the volume, and says when nothing breathes", async () => {
    const club = openClub();
    const asked = await club.say("/oxygen budget livestock:1 picasso triggerfish 15 cm");
    expect(textOf(asked)).toContain("How much water is in the system?");
    const nothing = await club.ask("/oxygen budget volume:300 L salinity:35 ppt temperature:25 °C");
    expect(nothing.ok).toBe(false);
    expect(nothing.body[0]).toContain("nothing to add up yet");
    const odd = await club.say(
      "/oxygen budget livestock:999999999 picasso triggerfish 15 cm volume:300 L salinity:35 ppt temperature:25 °C",
    );
    expect(odd.kind === "question" || !odd.ok).toBe(true);
  });
});
