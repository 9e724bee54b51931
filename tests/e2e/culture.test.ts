import { describe, expect, it } from "vitest";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

describe("/culture", () => {
  it("/culture start, /culture count and /culture harvest: growth with the harvest put back", async () => {
    const club = await openBreedingClub();
    expect(
      textOf(await club.ask("/culture start name:rotifers A organism:rotifers litres:20 L place:cellar")),
    ).toContain("no back-up");
    await club.ask(
      "/culture start name:rotifers B organism:rotifers litres:10 L place:kitchen keeper:Bruno from:rotifers A",
    );
    const first = textOf(await club.ask("/culture count culture:rotifers A count:23 19 27 21 25 in 0.1 mL"));
    // 115 in 0.5 mL: 230 per mL (189.9–276.1), R 4.2.2 poisson.test.
    expect(first).toContain("230 per mL (190–276)");
    await club.ask("/culture harvest culture:rotifers A litres:5 L");
    club.now += DAY;
    // The same density after a quarter was taken: 25 % a day needs +33.3 % (exact arithmetic).
    const second = textOf(await club.ask("/culture count culture:rotifers A count:23 19 27 21 25 in 0.1 mL"));
    expect(second).toContain("33 % a day; up to 25 % a day can be taken for good");
  });

  it("/culture show warns before a crash and names the keeper of the back-up", async () => {
    const club = await openBreedingClub();
    await club.ask("/culture start name:rotifers A organism:rotifers litres:20 L place:cellar");
    await club.ask("/culture start name:rotifers B organism:rotifers litres:10 L place:kitchen keeper:Bruno");
    for (const sample of ["40 42 38", "30 33 28", "20 22 19"]) {
      await club.ask(`/culture count culture:rotifers A count:${sample} in 0.1 mL`);
      club.now += DAY;
    }
    const shown = await club.ask("/culture show culture:rotifers A");
    expect(textOf(shown)).toContain("has shrunk over its last 3 counts");
    expect(textOf(shown)).toContain("rotifers B at kitchen, kept by Bruno");
    expect(shown.chart?.panels[0]?.series[0]?.marks).toHaveLength(3);
    expect(shown.chart?.panels[0]?.axisTitle).toBe("rotifers, per mL");
    expect(textOf(await club.ask("/rota tonight"))).toContain("start the back-up (Bruno keeps it)");
    expect(textOf(await club.ask("/culture end culture:rotifers A why:crashed"))).toContain(
      "rotifers B at kitchen",
    );
    expect(textOf(await club.say("/culture count culture:rotifers A count:3 in 0.1 mL"))).toContain(
      "no culture",
    );
  });

  it("/culture feed tops up to the target and says how many litres to sieve", async () => {
    const club = await openBreedingClub();
    await club.ask("/culture start name:rotifers A organism:rotifers litres:20 L place:cellar");
    await club.ask("/culture count culture:rotifers A count:15 15 15 in 0.1 mL");
    const told = textOf(await club.ask("/culture feed tank:tank 3 left:3 target:10"));
    // (10 − 3) × 40 L × 1000 = 280,000; at 150 per mL 1.87 L; 560,000 a day at 25 % ask for 14.93 L.
    expect(told).toContain("280,000 rotifers: 1.9 L of rotifers A");
    expect(told).toContain("about 15 L of culture");
    expect(textOf(await club.ask("/culture feed tank:tank 3 left:12 target:10"))).toContain("Nothing to add");
    expect(textOf(await club.ask("/culture feed tank:grow-out left:0 target:10"))).toContain("are missing");
  });

  it("/culture tin keeps a hatching test, /culture cysts weighs by it and counts the clock back", async () => {
    const club = await openBreedingClub();
    expect(textOf(await club.ask("/culture cysts nauplii:150,000"))).toContain("test the tin");
    // 125 per 250 µL from 1.6 g in 800 mL: 250,000 per gram (FAO FTP 361 worksheet, from memory).
    expect(
      textOf(
        await club.ask("/culture tin name:blue tin count:120 125 130 in 0.25 mL water:800 mL cysts:1.6 g"),
      ),
    ).toContain("250,000 nauplii per gram");
    const told = textOf(await club.ask("/culture cysts nauplii:900,000 at:19:00"));
    // 900,000 ÷ (250,000 × 0.9) = 4.0 g; hatched in 18–24 h for Thursday 19:00.
    expect(told).toContain("Weigh 4 g");
    expect(told).toContain("between Wed 19:00 and Thu 01:00");
    expect(textOf(await club.say("/culture cysts nauplii:900,000 at:late"))).toContain("not a time of day");
  });
});
