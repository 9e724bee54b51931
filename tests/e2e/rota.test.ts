import { describe, expect, it } from "vitest";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

describe("/rota", () => {
  it("/rota plan shares evenly, leaves absences out, and keeps what is planned", async () => {
    const club = await openBreedingClub();
    await club.ask("/rota away from:2026-03-04 until:2026-03-06");
    // The first seven of three members, one of them away for the first three days, is a worked example:
    // B C B A C A B (rule: lowest load, then longest idle, then list order).
    const told = await club.ask("/rota plan days:7");
    const names = told.body.slice(0, 7).map((line) => /evening: (\w+)/.exec(line)?.[1]);
    expect(names).toEqual(["Bruno", "Thalia", "Bruno", "Ines", "Thalia", "Ines", "Bruno"]);
    expect(textOf(await club.ask("/rota plan days:7"))).toContain("planned already");
    expect(told.picture?.kind).toBe("rota");
  });

  it("“I can't do Thursday”: /rota cannot opens it, /rota take gives it and the credit to whoever steps in", async () => {
    const club = await openBreedingClub();
    await club.ask("/rota plan days:3");
    // Thursday is Bruno's: Ines, Bruno, Thalia from Wednesday on.
    expect(textOf(await club.ask("/rota cannot day:thursday"))).toContain("You have no duty");
    expect(textOf(await club.ask("/rota cannot day:thursday", "bruno"))).toMatch(
      /(Ines|Thalia) would be next/,
    );
    await club.ask("/rota take day:thursday", "thalia");
    expect(textOf(await club.ask("/rota take day:thursday"))).toContain("Nothing is open");
    club.now += DAY;
    await club.ask("/rota done", "thalia");
    expect(textOf(await club.ask("/group show"))).toContain("Thalia: helper, 1 duty done");
  });

  it("/rota done credits the doer, whoever was planned, and a missed one is open to all without a word of blame", async () => {
    const club = await openBreedingClub();
    await club.ask("/rota plan days:3");
    club.now += DAY;
    const card = textOf(await club.ask("/rota tonight"));
    expect(card).toContain("Not noted as done: Wed 4 Mar, evening");
    expect(card).not.toMatch(/Ines.*(missed|forgot)/i);
    expect(textOf(await club.ask("/rota done day:yesterday by:Bruno"))).toContain(
      "By Bruno, in place of Ines",
    );
    expect(textOf(await club.ask("/rota done day:yesterday"))).toContain("No duty of yesterday is left");
  });

  it("/rota hatch plans the nights of the window, and they fall away once it has hatched", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 3");
    const told = textOf(await club.ask("/rota hatch batch:B1"));
    expect(told).toContain("Mon 9 Mar: Ines");
    expect(told).toContain("Tue 10 Mar: Bruno");
    club.now += 7 * DAY;
    expect(textOf(await club.ask("/rota tonight"))).toContain("eggs of B1 may hatch");
    await club.ask("/spawn hatched batch:B1");
    expect(textOf(await club.ask("/rota week"))).not.toContain("Sat 14 Mar");
    expect(textOf(await club.ask("/rota hatch batch:B1"))).toContain("is past that");
  });

  it("/rota tonight goes from the most delicate tank to the least, alerts last", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 3");
    club.now += 8 * DAY;
    await club.ask("/spawn hatched batch:B1 count:200");
    await club.ask("/batch split number:50 batch:B1 to:grow-out");
    await club.ask("/batch deaths number:9 batch:B2");
    const lines = (await club.ask("/rota tonight")).body;
    const place = (text: string): number => lines.findIndex((line) => line.includes(text));
    expect(place("feed the larvae of B1")).toBeGreaterThan(0);
    expect(place("B2")).toBeGreaterThan(place("feed the larvae of B1"));
    expect(place("alert since")).toBeGreaterThan(place("B2"));
  });

  it("/rota week says when nothing is planned, and /rota away reads the days in order", async () => {
    const club = await openBreedingClub();
    expect(textOf(await club.ask("/rota week"))).toContain("No duty is planned");
    expect(textOf(await club.ask("/rota away from:2026-03-10 until:2026-03-08"))).toContain(
      "before the first",
    );
    expect(textOf(await club.say("/rota cannot day:last monday"))).toContain("not a day to come");
  });
});
