import { expect, it } from "vitest";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { type Club, textOf } from "../support/club.ts";

async function withJuveniles(): Promise<Club> {
  const club = await openBreedingClub();
  await club.ask("/group join as:Otto", "otto");
  await club.ask("/spawn eggs tank:tank 3");
  club.now += 8 * DAY;
  await club.ask("/spawn hatched batch:B1 count:20");
  return club;
}

it("/juveniles want, /juveniles share: one at a time to whoever had the fewest, ready tanks first", async () => {
  const club = await withJuveniles();
  await club.ask("/juveniles want species:clownfish number:4 ready:yes", "otto");
  await club.ask("/juveniles want species:clownfish number:10 ready:yes", "thalia");
  await club.ask("/juveniles want species:clownfish number:10 ready:not yet", "bruno");
  // 9 among two who are ready, one at a time from the first who asked: Otto 4 (all he asked), Thalia 5.
  const shared = await club.ask("/juveniles share batch:B1 number:9");
  expect(shared.table?.rows.map(([who, share]) => [who, share])).toEqual([
    ["Otto", "4"],
    ["Thalia", "5"],
    ["Bruno", "0"],
  ]);
  expect(textOf(shared)).toContain("check clownfish with your authority");
  // All 20: Otto 4, Thalia 10, then Bruno, whose tank is not ready, the 6 that are left.
  expect(textOf(await club.ask("/juveniles share batch:B1"))).toContain("not said to be ready at Bruno");
  expect(textOf(await club.ask("/juveniles want species:clownfish number:0", "otto"))).toContain("withdrawn");
});

it("/juveniles give, /juveniles confirm: counts once both sides have confirmed, with card and quarantine", async () => {
  const club = await withJuveniles();
  expect(textOf(await club.ask("/juveniles give batch:B1 number:4 to:Otto"))).toContain("Transfer 1");
  expect(textOf(await club.ask("/juveniles give batch:B1 number:17 to:Otto"))).toContain(
    "promised ones included",
  );
  expect(textOf(await club.ask("/juveniles confirm transfer:1"))).toContain("Waiting for Otto");
  expect(textOf(await club.ask("/batch list"))).toContain("20, counted");
  const done = textOf(await club.ask("/juveniles confirm transfer:1", "otto"));
  expect(done).toContain("B1 has left: 16, counted");
  expect(done).toContain("Parents: Nemea (wild) and Argos (wild)");
  expect(done).toContain("30 days in quarantine");
  expect(done).toContain("Never release");
  expect(textOf(await club.ask("/juveniles confirm transfer:1", "otto"))).toContain("no open transfer");
});

it("nobody confirms for another, and a transfer called off counts as here", async () => {
  const club = await withJuveniles();
  await club.ask("/juveniles give batch:B1 number:4 to:Otto");
  await club.ask("/juveniles confirm transfer:1", "otto");
  expect(textOf(await club.ask("/juveniles confirm transfer:1", "otto"))).toContain("one side has confirmed");
  await club.ask("/juveniles confirm transfer:1 what:call off");
  expect(textOf(await club.ask("/batch list"))).toContain("20, counted");
});

it("/juveniles card asks for papers where a treaty protects the species", async () => {
  const club = await openBreedingClub();
  await club.ask("/spawn eggs tank:tank 1 species:seahorse");
  const card = await club.ask("/juveniles card batch:B1");
  expect(textOf(card)).toContain("papers may be needed");
  expect(textOf(card)).not.toMatch(/\blegal\b/);
  expect(card.files?.[0]?.content).toContain("Descent");
});
