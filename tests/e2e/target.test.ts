import { describe, expect, it } from "vitest";
import { type Club, memberId, openClub, textOf } from "../support/club.ts";

const TANK = "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm";

async function openLagoon(): Promise<Club> {
  const club = openClub();
  await club.ask(TANK);
  return club;
}

describe("/target", () => {
  it("shows what is usual until a range is set, keeps that, and goes back", async () => {
    const club = await openLagoon();
    expect(textOf(await club.ask("/target of:nitrate"))).toContain(
      "nitrate | under 50 mg/L as NO₃ | usual for marine tanks",
    );
    const set = await club.ask("/target of:nitrate range:under 20");
    expect(textOf(set)).toContain("nitrate | under 20 mg/L as NO₃ | your target");
    expect(textOf(await club.ask("/target"))).toContain("nitrate | under 20 mg/L as NO₃ | your target");
    expect(textOf(await club.ask("/target of:nitrate range:usual"))).toContain("under 50");
  });

  it("reads a range in the units readings are typed in", async () => {
    const club = await openLagoon();
    // 1 dKH is 0.35663 meq/L (definition): 8 and 9 dKH are 2.853 and 3.210.
    expect(textOf(await club.ask("/target of:alkalinity range:8-9 dKH"))).toContain(
      "alkalinity | 2.85–3.21 meq/L",
    );
    // 77 and 79 °F are 25 and 26.1 °C (definition).
    expect(textOf(await club.ask("/target of:temperature range:77-79 °F"))).toContain(
      "temperature | 25–26.1 °C",
    );
    expect(textOf(await club.ask("/target of:calcium range:above 400 mg/L"))).toContain(
      "calcium | 400 mg/L or more",
    );
  });

  it("is what /trend and its chart measure by", async () => {
    const club = await openLagoon();
    await club.ask("/log temp 25");
    await club.ask("/target of:temperature range:22-24 °C");
    const reply = await club.ask("/trend of:temperature");
    expect(reply.chart?.panels[0]?.target).toEqual({ low: 22, high: 24 });
  });

  it("belongs to the keeper alone", async () => {
    const club = await openLagoon();
    await club.ask("/tank share tank:Lagoon");
    await club.ask("/target of:nitrate range:under 20");
    const theirs = await club.ask("/target of:nitrate range:under 5 tank:Lagoon", "bruno");
    expect(theirs.ok).toBe(false);
    expect(textOf(await club.ask("/target of:nitrate tank:Lagoon", "bruno"))).toContain(
      "under 20 mg/L as NO₃ | its target",
    );
  });

  it("goes with the tank", async () => {
    const club = await openLagoon();
    await club.ask("/target of:nitrate range:under 20");
    const [tank] = club.store.records.tanks.own(memberId("ines"));
    if (tank === undefined) throw new Error("no tank");
    club.store.records.tanks.remove(tank.owner, tank.id);
    expect(club.store.records.targets.of(tank.owner, tank.id)).toEqual([]);
  });

  it("refuses what is no range of anything", async () => {
    const club = await openLagoon();
    for (const line of [
      "/target of:nitrate range:20",
      "/target of:nitrate range:900000",
      "/target of:ph range:20-30",
      "/target of:nitrate range:-5 to -1",
      "/target range:5-10",
      "/target of:nitrate range:'; DROP TABLE target",
    ]) {
      const odd = await club.say(line);
      expect([line, odd.kind === "question" || !odd.ok]).toEqual([line, true]);
    }
    expect((await openClub().ask("/target")).ok).toBe(false);
  });
});
