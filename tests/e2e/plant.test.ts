import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const CONTAINERS =
  "display 260x100x78 cm inside, level 70 cm; settling box 80x40x60 cm inside, level 45 cm; pump box 100x60x60 cm inside, level 40 cm";

async function withTank() {
  const club = openClub();
  await club.ask(`/tank add name:Lagoon kind:marine containers:${CONTAINERS}`);
  return club;
}

describe("/plant water", () => {
  it("keeps what was typed, and says back how it was read", async () => {
    const club = await withTank();
    const noted = await club.ask(
      "/plant water crest:60 slots of 6 mm, teeth 40 mm level:25 mm lift:5 ft 7 in",
    );
    expect(noted.ok).toBe(true);
    expect(textOf(noted)).toContain("60 slots of 6 mm, teeth 40 mm high");
    // 5 ft 7 in is 170.18 cm (definition of the inch, 25.4 mm).
    expect(textOf(noted)).toContain("170.2 cm");
    expect(textOf(await club.ask("/plant show"))).toContain("overflow crest | 60 slots of 6 mm");
    await club.ask("/plant water crest:clear");
    expect(textOf(await club.ask("/plant show"))).not.toContain("60 slots");
  });

  it("keeps nothing that cannot be read, and asks for a pump in the row", async () => {
    const club = await withTank();
    expect(textOf(await club.say("/plant water row:settling box: overflows 14 mm"))).toContain(
      "Which container holds the pump?",
    );
    expect(textOf(await club.say("/plant water pipe:50 mm, 4 m"))).toContain(
      "metric pipe is sold by its outside",
    );
    expect(
      textOf(await club.say("/plant water pump:0 L/h at 5 m; 4000 L/h at 6 m; 8000 L/h at 2 m")),
    ).toContain("flow has to rise");
    expect((await club.ask("/plant show")).table).toBeUndefined();
  });

  it("keeps notes of one's own tanks only", async () => {
    const club = await withTank();
    await club.ask("/tank share tank:Lagoon");
    const other = await club.ask("/plant water level:25 mm tank:Lagoon", "bruno");
    expect(other.ok).toBe(false);
    expect(textOf(other)).toContain("belongs to another member");
  });

  it("survives odd texts", async () => {
    const club = await withTank();
    for (const odd of [
      "'; DROP TABLE tank; --",
      "1e999 mm",
      "🦈🦈🦈",
      "60 slots of -6 mm",
      "=,=,=;;;:::",
      "9".repeat(500),
    ]) {
      for (const option of [
        "crest",
        "level",
        "returns",
        "drain",
        "standby",
        "pipe",
        "lift",
        "pump",
        "row",
        "inlet",
        "surface",
      ]) {
        const outcome = await club.say(`/plant water ${option}:${odd}`);
        expect(outcome.kind === "question" || !outcome.ok).toBe(true);
      }
    }
  });
});

describe("/plant room", () => {
  it("reads devices, circuits, walls and prices", async () => {
    const club = await withTank();
    const noted = await club.ask(
      "/plant room room:18-26 °C humidity:45 % walls:acrylic 1 in devices:return pump 180 W, circuit A; light 150 W, 9 h, power factor 0.6, circuit B circuits:A 20 A, protected; B 15 A price:17 cents/kWh volts:120",
    );
    const text = textOf(noted);
    expect(text).toContain("acrylic, 25.4 mm");
    expect(text).toContain("return pump: 180 W, 24 h a day, circuit A, life support");
    expect(text).toContain("B: 15 A, not ground-fault protected");
    expect(text).toContain("0.17");
  });

  it("asks again where nothing can be read, and survives odd texts", async () => {
    const club = await withTank();
    expect(textOf(await club.say("/plant room walls:mystery 4 mm"))).toContain(
      "does not say what the walls are of",
    );
    expect(textOf(await club.say("/plant room battery:100 Ah 12 V"))).toContain("lead-acid or lithium");
    expect(textOf(await club.say("/plant room generator:maybe"))).toContain("yes");
    for (const odd of ["; DELETE", "1e400 W", "∞", "::::", "-5"])
      for (const option of [
        "room",
        "humidity",
        "walls",
        "devices",
        "circuits",
        "volts",
        "price",
        "battery",
        "air",
        "footprint",
        "masses",
      ]) {
        const outcome = await club.say(`/plant room ${option}:${odd}`);
        expect(outcome.kind === "question" || !outcome.ok).toBe(true);
      }
  });
});

describe("/plant people and /plant show", () => {
  it("keeps contacts and valves as typed, and names what is missing", async () => {
    const club = await withTank();
    await club.ask(
      "/plant people contacts:Ines 555 0100; vet Dr Alva 555 0142 valves:main shut-off left of the pump box",
    );
    const shown = textOf(await club.ask("/plant show"));
    expect(shown).toContain("vet Dr Alva 555 0142");
    expect(shown).toContain("Not noted: overflow crest");
  });

  it("has nothing to keep without a tank or a fact", async () => {
    const club = openClub();
    expect(textOf(await club.ask("/plant people contacts:Ines"))).toContain("You keep no tank here yet");
    await club.ask(`/tank add name:Lagoon kind:marine containers:${CONTAINERS}`);
    expect((await club.ask("/plant people")).ok).toBe(false);
    expect((await club.say("/plant show tank:<script>")).kind).toBe("question");
  });
});
