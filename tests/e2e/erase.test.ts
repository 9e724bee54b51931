import { describe, expect, it } from "vitest";
import { memberId, openClub, textOf } from "../support/club.ts";

async function withAll() {
  const club = openClub();
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1500 L measured");
  await club.ask("/tank share tank:Lagoon");
  await club.ask("/log no3 20, temp 25");
  await club.ask("/instrument add name:chart for:nitrate");
  await club.ask("/settings gallon:US zone:Europe/Lisbon");
  await club.ask("/salt calibrate used:4233.6 g volume:98.39 L read:35 ppt temperature:25 °C");
  return club;
}

describe("/erase", () => {
  it("asks first, and then leaves nothing", async () => {
    const club = await withAll();
    expect(textOf(await club.say("/erase"))).toContain("will be gone for good");
    const reply = await club.pick("Erase everything");
    expect(textOf(reply)).toContain("1 tank and 2 readings are gone");
    expect((await club.ask("/tank list")).title).toBe("No tanks yet");
    expect((await club.ask("/instrument list")).title).toBe("No instruments yet");
    expect(textOf(await club.ask("/settings"))).toContain("Time zone: UTC.");
    expect((await club.say("/salt mix volume:30 gal salinity:35 ppt")).kind).toBe("question");
    expect((await club.say("/tank show tank:Lagoon", "bruno")).kind).toBe("question");
  });

  it("keeps everything when the member thinks better of it", async () => {
    const club = await withAll();
    await club.say("/erase");
    expect((await club.pick("Keep it")).title).toBe("Nothing was erased");
    expect((await club.ask("/tank list")).title).toBe("1 tank");
  });

  it("erases nobody else, and is not set off by somebody else", async () => {
    const club = await withAll();
    await club.ask("/tank add name:Lagoon kind:fresh containers:box 100 L measured", "bruno");
    await club.say("/erase");
    const other = await club.app.choose(club.last?.id ?? "", memberId("bruno"), 0);
    expect(other.outcome.title).toBe("That question has gone");
    await club.pick("Erase everything");
    expect((await club.ask("/tank list", "bruno")).title).toBe("1 tank");
  });

  it("makes its own old buttons dead", async () => {
    const club = await withAll();
    await club.say("/salt mix volume:100 L");
    const open = club.last?.id ?? "";
    await club.say("/erase");
    await club.pick("Erase everything");
    expect((await club.app.fill(open, memberId("ines"), "35 ppt")).outcome.title).toBe(
      "That question has gone",
    );
    expect(club.app.recall(open, memberId("ines"))).toBeUndefined();
  });
});
