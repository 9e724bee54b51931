import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/kit/reply.ts";
import { type Club, openClub, START, textOf } from "../support/club.ts";

const DAY_MS = 86_400_000;
const TANK = "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm";

async function logged(club: Club, day: number, line: string): Promise<void> {
  club.now = START + day * DAY_MS;
  let said: Outcome = await club.say(`/log ${line}`);
  if (said.kind === "question") said = await club.pick(said.choices.length);
  if (said.kind !== "reply" || !said.ok) throw new Error(`not logged: ${line}: ${textOf(said)}`);
}

/** Sixty days: steady temperature every three days, falling pH, water changed every ten days until day 36. */
async function openLagoon(): Promise<Club> {
  const club = openClub();
  await club.ask(TANK);
  for (let day = 0; day <= 60; day += 3) {
    await logged(club, day, `temp ${day % 2 === 0 ? 25 : 25.2}`);
    await logged(club, day, `ph ${(8.3 - 0.008 * day).toFixed(2)}`);
  }
  for (const day of [6, 16, 26, 36]) await logged(club, day, "wc 30 %");
  for (const day of [33, 40, 47, 54]) await logged(club, day, "ca 350");
  await logged(club, 50, "harvested 300 g");
  club.now = START + 60 * DAY_MS + DAY_MS / 2;
  return club;
}

describe("/digest", () => {
  it("puts a month on one page: what left its range, what is heading out, what is overdue, what was done", async () => {
    const reply = await (await openLagoon()).ask("/digest");
    expect(reply.title).toBe("Lagoon: the last 30 days");
    expect(reply.headline).toBe("Out of range: calcium; 1 overdue");
    const text = textOf(reply);
    // Usual calcium in marine tanks begins at 380 mg/L (common practice, no source). Day 33 is 6 April 2026.
    expect(text).toContain(
      "calcium is below its range: 350 (wanted 380–460 mg/L, usual for marine tanks), since 6 Apr",
    );
    // 0.008 a day is 0.056 a week; 7.82 on day 60 and the usual 7.8: gone in two or three days (arithmetic).
    expect(text).toMatch(/Heading: pH: falling about 0\.056 a week.*leaves the range in about [23] days/);
    // Every 10 days, last on day 36, now day 60.5.
    expect(text).toMatch(/Overdue: water change, last 2[45] days ago; it used to be every 10 days/);
    // One change and one harvest from day 30.5 on.
    expect(text).toContain("Done: 1 harvest and 1 water change (30 % of the water in all).");
  });

  it("has a row and a small chart for everything tested, with its shape in blocks", async () => {
    const reply = await (await openLagoon()).ask("/digest");
    const rows = new Map(reply.table?.rows.map((row) => [row[0], row]));
    expect([...rows.keys()]).toEqual(["temperature, °C", "pH", "calcium, mg/L"]);
    expect(rows.get("pH")?.[2]).toMatch(/^█.*▁$/);
    expect(rows.get("pH")?.slice(3)).toEqual(["7.82–8.04", "7.8–8.4"]);
    expect(rows.get("calcium, mg/L")?.[1]).toBe("350 ▼");
    expect(rows.get("calcium, mg/L")?.[2]).toBe("▄▄▄▄");
    expect(reply.chart?.panels.map(({ axisTitle }) => axisTitle)).toEqual([
      "temperature, °C",
      "pH",
      "calcium, mg/L",
    ]);
    expect(reply.chart?.panels[0]?.series[0]?.marks).toHaveLength(10);
    expect(reply.chart?.altText).toBe(
      "The last 30 days of temperature, pH and calcium. Out of range: calcium (below).",
    );
  });

  it("measures by the member's own ranges", async () => {
    const club = await openLagoon();
    await club.ask("/target of:calcium range:300-400 mg/L");
    expect((await club.ask("/digest")).headline).toBe("Nothing out of range, of 3 things tested; 1 overdue");
  });

  it("says so when nothing was logged, or no tank is kept", async () => {
    const club = openClub();
    expect((await club.ask("/digest")).ok).toBe(false);
    await club.ask(TANK);
    const empty = await club.ask("/digest");
    expect(empty.ok).toBe(false);
    expect(textOf(empty)).toContain("No reading was logged in 30 days");
    await logged(club, 0, "temp 25");
    club.now = START + 45 * DAY_MS;
    expect((await club.ask("/digest")).ok).toBe(false);
  });

  it("is read by members the tank is shared with", async () => {
    const club = await openLagoon();
    await club.ask("/tank share tank:Lagoon");
    expect((await club.ask("/digest tank:Lagoon", "bruno")).headline).toBe(
      "Out of range: calcium; 1 overdue",
    );
  });
});
