import { describe, expect, it } from "vitest";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { type HOME_CLUB, memberId, openClub, textOf } from "../support/club.ts";

describe("/group", () => {
  it("/group start makes a keeper, /group join an observer, /group role a helper", async () => {
    const club = openClub();
    expect(textOf(await club.ask("/group start name:Lagoon breeders as:Ines"))).toContain(
      "You are its keeper",
    );
    expect(textOf(await club.ask("/group join as:Bruno", "bruno"))).toContain("observer");
    expect(textOf(await club.ask("/group role who:Bruno role:helper"))).toContain("Bruno is now helper");
    expect(textOf(await club.ask("/group show"))).toContain("Bruno: helper");
  });

  it("lets in somebody who is mentioned, and gives them the role at once", async () => {
    const club = await openBreedingClub();
    expect(textOf(await club.ask("/group role who:<@123456789> role:helper as:Milena"))).toContain(
      "Milena is now helper",
    );
  });

  it("is refused in a private talk, twice, and to strangers", async () => {
    const club = openClub();
    const alone = await club.app.answer({
      member: memberId("ines"),
      isSteward: false,
      path: "group start",
      options: { name: "Mine", as: "Ines" },
      answers: {},
    });
    expect(textOf(alone.outcome)).toContain("belongs to a club");
    expect(textOf(await club.ask("/group show"))).toContain("no breeding group yet");
    await club.ask("/group start name:Lagoon breeders as:Ines");
    expect(textOf(await club.ask("/group start name:Other as:Bruno", "bruno"))).toContain("already");
    expect(textOf(await club.ask("/group ledger", "bruno"))).toContain("not in this breeding group");
  });

  it("keeps another club's group apart", async () => {
    const club = await openBreedingClub();
    const elsewhere = await club.app.answer({
      member: memberId("ines"),
      club: "test:other" as typeof HOME_CLUB,
      isSteward: false,
      path: "group show",
      options: {},
      answers: {},
    });
    expect(textOf(elsewhere.outcome)).toContain("no breeding group yet");
  });

  it("/group tank is a keeper's, and an observer changes nothing", async () => {
    const club = await openBreedingClub();
    expect(textOf(await club.ask("/group tank name:tub litres:20 L zone:sick", "bruno"))).toContain(
      "Only a keeper",
    );
    await club.ask("/group join as:Otto", "otto");
    expect(textOf(await club.ask("/spawn eggs tank:tank 3", "otto"))).toContain("observer");
  });

  it("/group tank begins a quarantine that an arrival starts anew for all of that water", async () => {
    const club = await openBreedingClub();
    const begun = await club.ask("/group tank name:box litres:60 L zone:quarantine quarantine:30");
    // 30 days, as many keepers have it (common practice, no source): 4 March and 30 days is 3 April.
    expect(textOf(begun)).toContain("Fri 3 Apr");
    club.now += 11 * DAY;
    await club.ask("/brood add name:Juno species:clownfish sex:female origin:traded tank:box");
    // 15 March and 30 days.
    expect(textOf(await club.ask("/group show"))).toContain("until Tue 14 Apr");
  });

  it("/group ledger shows who and when, /group correct takes an entry back and leaves it visible", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 3");
    await club.ask("/spawn hatched batch:B1 count:100");
    await club.ask("/batch deaths number:2 batch:B1", "bruno");
    const ledger = await club.ask("/group ledger");
    const entry = ledger.table?.rows.find(([, , , what]) => what === "B1: 2 dead");
    expect(entry?.[2]).toBe("Bruno");
    expect(
      textOf(await club.ask(`/group correct entry:${entry?.[0]} why:counted twice`, "thalia")),
    ).toContain("a keeper does");
    await club.ask(`/group correct entry:${entry?.[0]} why:counted twice`, "bruno");
    expect(textOf(await club.ask("/group ledger"))).toContain("B1: 2 dead, taken back");
    expect(textOf(await club.ask("/batch list"))).toContain("100, counted");
    expect(textOf(await club.ask(`/group correct entry:${entry?.[0]}`, "bruno"))).toContain("already");
    expect(textOf(await club.ask("/group correct entry:1"))).toContain("built upon it");
  });

  it("/group clear lifts an alert, for keepers", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 3");
    await club.ask("/spawn hatched batch:B1 count:100");
    club.now += 3 * DAY;
    await club.ask("/batch deaths number:6 batch:B1");
    expect(textOf(await club.ask("/group clear water:tank 3", "bruno"))).toContain("Only a keeper");
    expect(textOf(await club.ask("/group clear water:tank 3"))).toContain("lifted");
    expect(textOf(await club.ask("/group clear water:tank 3"))).toContain("no alert");
  });

  it("/group month is one page, to print as well", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 3");
    const page = await club.ask("/group month");
    expect(textOf(page)).toContain("1 spawn, 0 hatched");
    expect(page.files?.[0]?.content).toContain("<h1>Lagoon breeders");
  });

  it("/group leave opens the duties of whoever goes, and the last keeper stays until there is another", async () => {
    const club = await openBreedingClub();
    await club.ask("/rota plan days:6");
    await club.say("/group leave", "bruno");
    expect(textOf(await club.pick("Leave", "bruno"))).toContain("Duties now open to all: 2");
    const week = textOf(await club.ask("/rota week"));
    expect(week).not.toContain("Bruno");
    expect(week.match(/open to all/g)).toHaveLength(2);
    await club.say("/group leave");
    expect(textOf(await club.pick("Leave"))).toContain("only keeper");
  });
});
