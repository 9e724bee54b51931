import { expect, it } from "vitest";
import { openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

it("/brood add notes parents, /brood pair reckons their young, /brood list and /brood gone keep the book", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos dam:Nemea");
  await club.ask("/brood add name:Lotte species:clownfish sex:female sire:Argos dam:Nemea");
  // Full brother and sister: 1/4 (falconer-mackay-1996, from memory; any textbook).
  expect(textOf(await club.ask("/brood pair name:pair 2 first:Kalle second:Lotte tank:tank 1"))).toContain(
    "1/4 (25.0 %)",
  );
  expect(textOf(await club.ask("/brood list"))).toContain("pair 2: Kalle and Lotte in tank 1");
  await club.ask("/brood gone animal:Kalle why:died");
  const list = textOf(await club.ask("/brood list"));
  expect(list).not.toContain("pair 2");
  expect(list).toContain("Lotte");
});

it("refuses parents it does not know, and an animal that would be its own ancestor", async () => {
  const club = await openBreedingClub();
  expect(textOf(await club.ask("/brood add name:Kalle species:clownfish sire:Zeno"))).toContain(
    "no animal “Zeno”",
  );
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos dam:Nemea");
  expect(textOf(await club.ask("/brood add name:Argos species:clownfish sire:Kalle"))).toContain(
    "own ancestor",
  );
});
