import { expect, it } from "vitest";
import { pngOf } from "../../../src/charts/png.ts";
import { svgOf } from "../../../src/charts/svg-of.ts";
import type { Reply } from "../../../src/kit/reply.ts";
import { DAY, openBreedingClub } from "../../support/breeding-club.ts";

const FONT = "data/fonts/NotoSans-Regular.ttf";

/** The picture of a reply, as drawn. */
function drawn({ chart, picture }: Reply): string {
  const spec = chart ?? picture;
  if (spec === undefined) throw new Error("no picture");
  const svg = svgOf(spec);
  expect(pngOf(svg, FONT).length).toBeGreaterThan(2000);
  return svg;
}

it("draws the week's rota with each one's days, in words beside the colour", async () => {
  const club = await openBreedingClub();
  await club.ask("/rota plan days:4");
  await club.ask("/rota done");
  await club.ask("/rota cannot day:thursday", "bruno");
  const svg = drawn(await club.ask("/rota week"));
  // Eight days for three people and those open to all.
  expect(svg.match(/data-state=/g)).toHaveLength(8 * 4);
  expect(svg.match(/data-state="done"/g)).toHaveLength(1);
  expect(svg.match(/data-state="open"/g)).toHaveLength(1);
  expect(svg.match(/data-state="planned"/g)).toHaveLength(2);
  for (const word of ["Ines", "Bruno", "Thalia", "open to all", "Wed", "4 Mar", "done"])
    expect(svg).toContain(`>${word}<`);
});

it("draws a pedigree from left to right, father above mother, and marks who stands twice", async () => {
  const club = await openBreedingClub();
  await club.ask("/brood add name:Kalle species:clownfish sex:male sire:Argos dam:Nemea");
  await club.ask("/brood add name:Lotte species:clownfish sex:female sire:Argos dam:Nemea");
  await club.ask("/brood add name:Pip & Co species:clownfish sire:Kalle dam:Lotte");
  const svg = drawn(await club.ask("/pedigree show animal:Pip & Co"));
  const boxes = [...svg.matchAll(/data-animal="([^"]+)" x="([\d.]+)" y="([\d.]+)"/g)].map(
    ([, name, x, y]) => ({
      name,
      x: Number(x),
      y: Number(y),
    }),
  );
  expect(boxes.map(({ name }) => name)).toEqual([
    "Pip &#38; Co",
    "Kalle",
    "Lotte",
    "Argos",
    "Nemea",
    "Argos",
    "Nemea",
  ]);
  expect(boxes[1]?.y).toBeLessThan(boxes[2]?.y ?? 0);
  expect(boxes[3]?.x).toBeGreaterThan(boxes[1]?.x ?? 0);
  expect(svg).toContain("more than once");
});

it("draws survival as steps with a band, and a culture with one mark for each count", async () => {
  const club = await openBreedingClub();
  await club.ask("/spawn eggs tank:tank 3");
  club.now += 8 * DAY;
  await club.ask("/spawn hatched batch:B1 count:50");
  club.now += 4 * DAY;
  await club.ask("/batch deaths number:2 batch:B1");
  club.now += 4 * DAY;
  const survival = drawn(await club.ask("/batch show batch:B1"));
  expect(survival).toContain("alive, % of those at risk");
  expect(survival).toMatch(/fill-opacity="0\.22"|opacity="0\.22"/);
  await club.ask("/culture start name:rotifers A organism:rotifers litres:20 L place:cellar");
  for (const sample of ["20 22 21", "26 27 25"]) {
    await club.ask(`/culture count culture:rotifers A count:${sample} in 0.1 mL`);
    club.now += DAY;
  }
  expect(drawn(await club.ask("/culture show culture:rotifers A"))).toContain("rotifers, per mL");
});
