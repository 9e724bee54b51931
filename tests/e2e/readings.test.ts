import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

async function withRecord() {
  const club = openClub();
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
  await club.ask("/log no3 20, temp 25 when:3 days ago");
  await club.ask("/log no3 22 when:yesterday 9am");
  await club.ask("/log no3 21, wc 30 %");
  return club;
}

describe("/readings", () => {
  it("shows the newest first, with numbers to correct them by, and a line as it was typed", async () => {
    const { table } = await (await withRecord()).ask("/readings");
    expect(table?.rows.map((row) => row[2]?.replace(" as NO3", ""))).toEqual([
      "nitrate 21 mg/L",
      expect.stringMatching(/^water change/),
      "nitrate 22 mg/L",
      "nitrate 20 mg/L",
      "temperature 25 °C",
    ]);
    expect(table?.rows[0]?.[0]).toBe("4");
    expect(table?.rows[0]?.[1]).toBe("just now");
    expect(table?.rows[2]?.[1]).toBe("Tue 3 Mar 2026, 09:00");
  });

  it("shows one parameter by any of its names, and as many as asked for", async () => {
    const club = await withRecord();
    expect((await club.ask("/readings of:no3 count:2")).table?.rows.map((row) => row[0])).toEqual(["4", "3"]);
    expect((await club.ask("/readings of:temp")).table?.rows).toHaveLength(1);
  });

  it("asks again for what it keeps no readings of", async () => {
    const outcome = await (await withRecord()).say("/readings of:happiness");
    expect(outcome.kind === "question" && outcome.isMistake).toBe(true);
    expect(textOf(outcome)).toContain("nitrate");
  });

  it("shows nobody the record of a private tank", async () => {
    const club = await withRecord();
    expect((await club.ask("/readings", "bruno")).ok).toBe(false);
    expect((await club.say("/readings tank:Lagoon", "bruno")).kind).toBe("question");
    await club.ask("/tank share tank:Lagoon");
    expect((await club.ask("/readings tank:Lagoon", "bruno")).table?.rows).toHaveLength(5);
  });
});
