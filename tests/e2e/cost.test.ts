import { expect, it } from "vitest";
import { openBreedingClub } from "../support/breeding-club.ts";
import { textOf } from "../support/club.ts";

it("/cost add splits to the cent, /cost balance settles, /cost paid is taken off", async () => {
  const club = await openBreedingClub();
  // 10,000 cents among three: 3334, 3333, 3333 (largest remainder, the earlier name first).
  expect(textOf(await club.ask("/cost add what:lamp amount:100 €"))).toContain(
    "Ines 33.34, Bruno 33.33, Thalia 33.33",
  );
  // 4735 by weights 2, 1, 1: 2367, 1184, 1184.
  expect(
    textOf(await club.ask("/cost add what:salt amount:47.35 shared:Ines 2, Bruno, Thalia", "bruno")),
  ).toContain("Ines 23.67, Bruno 11.84, Thalia 11.84");
  // Ines 100 − 33.34 − 23.67 = 42.99; Bruno 47.35 − 33.33 − 11.84 = 2.18; Thalia −45.17.
  const balance = textOf(await club.ask("/cost balance"));
  expect(balance).toContain("Thalia pays Ines 42.99 €");
  expect(balance).toContain("Thalia pays Bruno 2.18 €");
  await club.ask("/cost paid to:Ines amount:42.99", "thalia");
  await club.ask("/cost paid to:Bruno amount:2.18", "thalia");
  expect(textOf(await club.ask("/cost balance"))).toContain("All are even");
});

it("refuses another currency, part of a cent and a stranger", async () => {
  const club = await openBreedingClub();
  expect(textOf(await club.say("/cost add what:salt amount:$20"))).toContain("nothing is converted");
  expect(textOf(await club.say("/cost add what:salt amount:0.001"))).toContain("whole cents");
  expect(textOf(await club.say("/cost add what:salt amount:20 shared:Ines, Zeno"))).toContain(
    "“Zeno” is nobody",
  );
  expect(textOf(await club.ask("/cost balance", "otto"))).toContain("not in this breeding group");
});
