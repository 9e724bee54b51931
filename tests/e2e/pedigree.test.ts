import { expect, it } from "vitest";
import { openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

it("/pedigree check gives the exact figure, says at least where an ancestor is unknown, and a better choice", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos dam:Nemea");
  await club.ask("/brood add name:Lotte species:clownfish sex:female sire:Argos dam:Nemea");
  const wild = textOf(await club.ask("/pedigree check first:Lotte second:Kalle"));
  // Full brother and sister of two wild founders: 1/4.
  expect(wild).toContain("Inbreeding of their young: 1/4 (25.0 %)");
  expect(wild).toContain("avoid this pair");
  expect(wild).toContain("Less related to Lotte: Milo (0)");
  expect(textOf(await club.ask("/pedigree check first:Lotte second:Milo"))).toContain("at least 0");
});

it("averages over the possible fathers of a group spawn", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos, Milo dam:Nemea");
  // With his mother: half of (1 + 0) relationship, so kinship 1/4 whoever the father was; with Argos: half of
  // half of one, kinship 1/8.
  expect(textOf(await club.ask("/pedigree check first:Nemea second:Kalle"))).toContain("1/4");
  expect(textOf(await club.ask("/pedigree check first:Argos second:Kalle"))).toContain("1/8");
});

it("/pedigree show draws four generations and marks who stands twice", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos dam:Nemea");
  await club.ask("/brood add name:Lotte species:clownfish sex:female sire:Argos dam:Nemea");
  await club.ask("/brood add name:Pip species:clownfish sire:Kalle dam:Lotte");
  const shown = await club.ask("/pedigree show animal:Pip");
  expect(textOf(shown)).toContain("Inbreeding 1/4 (25.0 %)");
  expect(shown.picture?.kind).toBe("pedigree");
  const drawn = shown.picture?.kind === "pedigree" ? shown.picture.generations : [];
  expect(drawn.map((each) => each.length)).toEqual([1, 2, 4]);
  expect(drawn[2]?.every((animal) => animal?.isRepeated)).toBe(true);
});

it("refuses two species and one animal twice", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Sepp species:seahorse sex:male");
  expect(textOf(await club.ask("/pedigree check first:Nemea second:Sepp"))).toContain("hybrids");
  expect(textOf(await club.ask("/pedigree check first:Nemea second:Nemea"))).toContain(
    "Two different animals",
  );
});
