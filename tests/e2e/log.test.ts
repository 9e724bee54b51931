import { describe, expect, it } from "vitest";
import { type Club, openClub, textOf } from "../support/club.ts";

const DAY = 86_400_000;

async function withTanks(): Promise<Club> {
  const club = openClub();
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
  return club;
}

/** A steady record: nitrate 20 to 22, every third day. */
async function withRecord(): Promise<Club> {
  const club = await withTanks();
  for (const nitrate of [20, 21, 20, 22, 21]) {
    await club.ask(`/log no3 ${nitrate}`);
    club.now += 3 * DAY;
  }
  return club;
}

describe("/log", () => {
  it("takes readings and events in one line, and says back how it understood them", async () => {
    const club = await withTanks();
    const reply = await club.ask("/log no3 20, temp 78 F, wc 30 %, note glass cleaned");
    expect(reply.title).toBe("Lagoon: logged");
    // (78 − 32) / 1.8 = 25.56 °C.
    expect(reply.headline).toMatch(
      /nitrate 20 mg\/L.*temperature 78 °F = 25\.56 °C.*30 %.*note: glass cleaned/,
    );
    expect((await club.ask("/readings")).table?.rows).toHaveLength(4);
  });

  it("says a rough figure after its name, and takes a bound for no slip", async () => {
    const club = await withRecord();
    expect((await club.ask("/log nitrate about 20")).headline).toBe(
      "nitrate 20 mg/L (18–22) as NO3, taken as ± 10 %",
    );
    expect((await club.ask("/log no3 <5")).headline).toBe("nitrate below 5 mg/L as NO3");
  });

  it("takes nothing when a piece cannot be read, and says what it understood", async () => {
    const club = await withTanks();
    const outcome = await club.say("/log no3 20 wibble 7");
    expect(outcome.kind === "question" && outcome.isMistake).toBe(true);
    expect(textOf(outcome)).toContain("“wibble 7”");
    expect(textOf(outcome)).toContain("The rest I understood: nitrate 20 mg/L");
    expect(textOf(await club.ask("/readings"))).toContain("Nothing is logged yet");
  });

  it("takes what lies beyond a chart as an open bound", async () => {
    const club = await withTanks();
    await club.ask("/log no3 >160, po4 <0.02");
    expect(textOf(await club.ask("/readings"))).toMatch(/nitrate above 160[\s\S]*phosphate below 0\.02/);
  });

  it("asks for the scale of a hydrometer once", async () => {
    const club = await withTanks();
    const asked = await club.say("/log sg 1.026 temp 25.5");
    expect(asked.kind === "question" && asked.choices).toHaveLength(4);
    // 1.026 at 25/25 is 34.51 (EOS-80).
    expect(textOf(await club.pick("25/25"))).toContain("34.5 ppt");
    expect(textOf(await club.ask("/log sg 1.026"))).toContain("34.5 ppt");
  });

  it("reads the scale of the instrument named, or of the only one there is", async () => {
    const club = await withTanks();
    await club.ask("/instrument add name:glass hydrometer for:salinity scale:20/20 °C");
    // 1.026 at 20/20 is 34.21 (EOS-80).
    expect(textOf(await club.ask("/log sg 1.026"))).toContain("34.2 ppt");
    await club.ask("/instrument add name:old one for:salinity scale:60/60 °F");
    // 1.026 at 60/60 °F is 33.89.
    expect(textOf(await club.ask("/log sg 1.026 with:old one"))).toContain("33.9 ppt");
    expect((await club.ask("/readings of:salinity")).table?.rows.map((row) => row[3])).toEqual([
      "old one",
      "glass hydrometer",
    ]);
    const unknown = await club.ask("/log salinity 34 ppt with:new one");
    expect(textOf(unknown)).toContain("You have no instrument called “new one”");
  });

  it("takes a time in words, in the line or beside it, by the member's own clock", async () => {
    const club = await withTanks();
    await club.ask("/settings zone:America/Chicago");
    // Noon UTC on 4 March is 6 in the morning in Chicago (UTC−6, before daylight saving).
    expect(textOf(await club.ask("/log no3 20 when:yesterday 9pm"))).toContain("Tue 3 Mar 2026, 21:00");
    expect(textOf(await club.ask("/log no3 21 yesterday 8pm"))).toContain("Tue 3 Mar 2026, 20:00");
    expect(textOf(await club.ask("/log no3 21 when:2 days ago"))).toContain("Mon 2 Mar 2026, 06:00");
  });

  it("refuses a day that is still to come", async () => {
    const club = await withTanks();
    for (const when of ["tomorrow", "in 3 days", "2027-01-01", "31.12.2026"]) {
      const outcome = await club.say(`/log no3 20 when:${when}`);
      expect(outcome.kind === "question" && outcome.isMistake, when).toBe(true);
      expect(textOf(outcome)).toContain("still to come");
    }
  });

  it("asks which day 5/3 is, and offers only days that have been", async () => {
    const club = await withTanks();
    const asked = await club.say("/log no3 20 when:5/3");
    // On 4 March 2026 both readings of it lie ahead in this year.
    expect(asked.kind === "question" && asked.choices.map(({ label }) => label)).toEqual([
      "5 March 2025",
      "3 May 2025",
    ]);
    expect(textOf(await club.pick("5 March 2025"))).toContain("Wed 5 Mar 2025");
    club.now += 10 * DAY;
    const later = await club.say("/log no3 20 when:5/3");
    expect(later.kind === "question" && later.choices[0]?.label).toBe("5 March 2026");
    // The 25th can only be a day.
    expect(textOf(await club.ask("/log no3 20 when:25/2"))).toContain("Wed 25 Feb 2026");
  });

  it("asks about a figure that looks like nitrogen taken for nitrate, and logs nothing before the answer", async () => {
    const club = await withRecord();
    const asked = await club.say("/log no3 4.7");
    // 4.7 mg/L of nitrate-N is 4.7 × 62.0049/14.0067 = 20.8 mg/L of nitrate.
    expect(textOf(asked)).toContain("is far from this tank's last readings (20 to 22)");
    expect(asked.kind === "question" && asked.choices[0]?.label).toMatch(/^20\.8 mg\/L/);
    expect((await club.ask("/readings")).table?.rows).toHaveLength(5);
    await club.say("/log no3 4.7");
    expect(textOf(await club.pick(1))).toMatch(/nitrate 20\.81? mg\/L as NO₃, corrected from nitrate 4\.7/);
  });

  it("keeps the figure when the member stands by it", async () => {
    const club = await withRecord();
    await club.say("/log no3 4.7");
    expect(textOf(await club.pick("Yes, 4.7"))).toContain("nitrate 4.7 mg/L");
  });

  it("asks whether it was for another tank, and logs it there", async () => {
    const club = await withRecord();
    await club.ask("/tank add name:Lab kind:marine containers:box 100 L measured");
    for (const days of [9, 6, 3]) await club.ask(`/log no3 80 when:${days} days ago tank:Lab`);
    const asked = await club.say("/log no3 80");
    expect(asked.kind === "question" && asked.choices.some(({ label }) => label === "It was for Lab")).toBe(
      true,
    );
    expect((await club.pick("It was for Lab")).title).toBe("Lab: logged");
  });

  it("does not ask when a logged water change explains the fall", async () => {
    const club = await withRecord();
    await club.ask("/log wc 75 %");
    club.now += DAY;
    expect((await club.say("/log no3 5")).kind).toBe("reply");
  });

  it("needs a tank to log to", async () => {
    const reply = await openClub().ask("/log no3 20");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("/tank add name:Lagoon kind:marine");
  });
});
