import { expect, it } from "vitest";
import { commands } from "../../commands/index.ts";
import { allCommands } from "../../src/kit/command.ts";
import { DAY, openBreedingClub } from "../support/breeding-club.ts";
import { type Club, HOME_CLUB, memberId, textOf } from "../support/club.ts";

const FAMILIES = ["group", "brood", "spawn", "batch", "culture", "rota", "juveniles", "pedigree", "cost"];

/** What somebody might type by mistake, or to see what happens. */
const ODD = [
  "0",
  "-1",
  "1e308",
  "999999999",
  "0.0000001",
  "not a number",
  "__proto__",
  "constructor",
  "<@123456789012345678>",
  "@everyone",
  "'; DROP TABLE breeding_event; --",
  "𝒻𝒾𝓈𝒽 🐟",
  "a".repeat(1999),
  "me",
  "B1",
  "tank 3",
  "Ines",
  "0 L",
  "0 g",
  "0 kg",
  "1e9 L",
  "-300 °C",
  "100000 h",
  "0 0 0 in 1 mL",
  "1 2 3 in 0.0001 mL",
  "999999999 999999999 in 1 mL",
  "about 999999999",
  "0-0",
  "tomorrow",
  "9999-12-31",
  "clownfish",
  "250 %",
  "0 €",
  "99999999999 €",
  "24:00",
] as const;

async function withEverything(): Promise<Club> {
  const club = await openBreedingClub();
  await club.ask("/spawn eggs tank:tank 3 count:about 300 temperature:26 °C");
  club.now += 8 * DAY;
  await club.ask("/spawn hatched batch:B1 count:about 200");
  await club.ask("/spawn eggs tank:tank 3");
  await club.ask("/culture start name:rotifers A organism:rotifers litres:20 L place:cellar");
  await club.ask("/culture count culture:rotifers A count:20 21 in 0.1 mL");
  await club.ask("/juveniles want species:clownfish number:3", "bruno");
  await club.ask("/juveniles give batch:B1 number:3 to:Bruno");
  await club.ask("/rota plan");
  return club;
}

it("whatever is typed into any option is answered, asked about or refused, never a fault, and totals hold", async () => {
  const club = await withEverything();
  const paths = allCommands(commands).filter(({ path }) => FAMILIES.includes(path.split(" ")[0] ?? ""));
  expect(paths.length).toBeGreaterThan(40);
  const faults: string[] = [];
  for (const { path, command } of paths) {
    const usual: Record<string, string> = {};
    for (const [name, option] of Object.entries(command.options)) {
      const known = USUAL[name] ?? option.choices?.[0] ?? option.example;
      if (option.isNeeded) usual[name] = known;
    }
    for (const name of Object.keys(command.options))
      for (const odd of ODD) {
        const { outcome } = await club.app.answer({
          member: memberId("ines"),
          club: HOME_CLUB,
          isSteward: false,
          path,
          options: { ...usual, [name]: odd },
          answers: {},
        });
        const said = textOf(outcome);
        if (club.defects.length > 0) faults.push(`${path} ${name}:${odd}: ${String(club.defects.pop())}`);
        else if (/\b(undefined|NaN|Infinity|Invalid DateTime)\b/.test(said))
          faults.push(`${path} ${name}:${odd}: ${said}`);
      }
  }
  expect(faults).toEqual([]);
  const state = club.store.records.breeding.state(HOME_CLUB);
  expect(Object.values(state?.balances ?? {}).reduce((sum, cents) => sum + cents, 0)).toBe(0);
}, 60_000);

/** Texts that read, so that one odd one is tried at a time. */
const USUAL: Readonly<Record<string, string>> = {
  tank: "tank 3",
  batch: "B1",
  into: "B2",
  to: "grow-out",
  culture: "rotifers A",
  animal: "Nemea",
  first: "Nemea",
  second: "Argos",
  species: "clownfish",
  number: "2",
  transfer: "1",
  count: "4 7 5 in 10 mL",
  litres: "2 L",
  water: "800 mL",
  cysts: "1.6 g",
  mean: "0.5 g",
  left: "2",
  nauplii: "150000",
  amount: "10",
  day: "tomorrow",
  from: "tomorrow",
  until: "2026-06-01",
  what: "salt",
  entry: "3",
  role: "keeper",
  who: "Bruno",
};
