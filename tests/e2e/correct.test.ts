import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const DAY = 86_400_000;

async function withRecord() {
  const club = openClub();
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
  for (const nitrate of [20, 21, 20, 22, 21]) {
    await club.ask(`/log no3 ${nitrate}`);
    club.now += 3 * DAY;
  }
  return club;
}

describe("/correct", () => {
  it("puts a value in the place of another, at the same time, and /undo brings the old one back", async () => {
    const club = await withRecord();
    const before = (await club.ask("/readings")).table?.rows.map((row) => row[1]);
    const reply = await club.ask("/correct reading:3 to:no3 19");
    expect(reply.headline).toContain("nitrate 19 mg/L");
    expect(textOf(reply)).toContain("It was “nitrate 20 mg/L");
    const after = await club.ask("/readings");
    expect(after.table?.rows).toHaveLength(5);
    expect(after.table?.rows.map((row) => row[1])).toEqual(before);
    expect(textOf(after)).toContain("nitrate 19 mg/L");
    await club.ask("/undo");
    const back = textOf(await club.ask("/readings"));
    expect(back).not.toContain("nitrate 19 mg/L");
    expect(back.match(/nitrate 20 mg\/L/g)).toHaveLength(2);
  });

  it("asks about a slip as at the entry", async () => {
    const club = await withRecord();
    const asked = await club.say("/correct reading:5 to:no3 4.7");
    // 4.7 × 62.0049/14.0067 = 20.8 (atomic masses).
    expect(asked.kind === "question" && asked.choices[0]?.label).toMatch(/^20\.8 mg\/L/);
    expect(textOf(await club.pick(1))).toMatch(/nitrate 20\.81? mg\/L as NO₃, corrected from nitrate 4\.7/);
    expect((await club.ask("/readings")).table?.rows).toHaveLength(5);
  });

  it("does not take the slip itself for what is usual", async () => {
    const club = await withRecord();
    await club.say("/log no3 4.7");
    await club.pick("Yes, 4.7");
    expect((await club.say("/correct reading:6 to:no3 20.8")).kind).toBe("reply");
  });

  it("asks for the scale of a gravity, and reads it by the instrument that was used", async () => {
    const club = await withRecord();
    await club.ask("/log salinity 34 ppt");
    expect((await club.say("/correct reading:6 to:sg 1.026")).kind).toBe("question");
    // 1.026 at 25/25 is 34.51, at 20/20 34.21 (EOS-80).
    expect(textOf(await club.pick("25/25"))).toContain("34.5 ppt");
    await club.ask("/instrument add name:glass for:salinity scale:20/20 °C");
    await club.ask("/log salinity 34 ppt with:glass");
    expect(textOf(await club.ask("/correct reading:8 to:sg 1.026"))).toContain("34.2 ppt");
  });

  it("refuses another parameter, several values, a number that is not there, and another's reading", async () => {
    const club = await withRecord();
    for (const line of [
      "/correct reading:1 to:temp 25",
      "/correct reading:1 to:no3 20, no2 0.1",
      "/correct reading:1 to:wc 30 %",
      "/correct reading:99 to:no3 20",
    ])
      expect((await club.ask(line)).ok, line).toBe(false);
    const stranger = await club.ask("/correct reading:1 to:no3 99", "bruno");
    expect(textOf(stranger)).toContain("There is no reading 1 of yours");
    expect(textOf(await club.ask("/readings"))).not.toContain("99");
  });

  it("refuses a reading that was already corrected or taken back", async () => {
    const club = await withRecord();
    await club.ask("/correct reading:1 to:no3 19");
    expect((await club.ask("/correct reading:1 to:no3 18")).ok).toBe(false);
  });
});
