import { describe, expect, it } from "vitest";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

describe("/spawn", () => {
  it("/spawn eggs gives a window from print first, with the doubt that belongs to it", async () => {
    const club = await openBreedingClub();
    const told = textOf(await club.ask("/spawn eggs tank:tank 3 count:about 500 temperature:24 °C"));
    // Print says 6 to 10 days at 26–28 °C; half a day is added either way: days 5 to 11 from 4 March.
    expect(told).toContain("Hatching likely Mon 9 Mar to Sun 15 Mar");
    expect(told).toContain("lies outside 26–28 °C");
    expect(told).toContain("a prompt, not a promise");
  });

  it("goes by the pair's own past once there are three", async () => {
    const club = await openBreedingClub();
    for (const days of [8, 8, 9]) {
      await club.ask("/spawn eggs tank:tank 3");
      club.now += days * DAY;
      await club.ask(`/spawn hatched batch:${await newest(club)} count:about 300`);
      await club.ask(`/batch stage batch:${await newest(club)} stage:lost`);
    }
    // 29 March and 7.5 to 9.5 days: whole days 7 to 10.
    const told = textOf(await club.ask("/spawn eggs tank:tank 3"));
    expect(told).toContain("Hatching likely Sun 5 Apr to Wed 8 Apr");
    expect(told).toContain("your last 3 spawns of pair 1");
    expect(textOf(await club.ask("/spawn list"))).toContain("Sun 5 Apr to Wed 8 Apr");
  });

  it("gives no day for eggs that may rest, and says so for a species nobody knows", async () => {
    const club = await openBreedingClub();
    const resting = textOf(await club.ask("/spawn eggs tank:tank 1 species:nothobranchius"));
    expect(resting).toContain("no hatching day can be given");
    expect(textOf(await club.ask("/spawn eggs tank:tank 2 species:moon snail"))).toContain(
      "No hatching days are known",
    );
    expect(textOf(await club.ask("/spawn eggs tank:tank 1"))).toContain("say the species");
  });
});

async function newest(club: Awaited<ReturnType<typeof openBreedingClub>>): Promise<string> {
  const rows = (await club.ask("/batch list")).table?.rows ?? [];
  return rows.at(-1)?.[0] ?? "";
}
