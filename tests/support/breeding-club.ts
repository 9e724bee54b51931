import { type Club, openClub } from "./club.ts";

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;

/** An invented group: Ines keeps it, Bruno and Thalia help; five tanks, two pairs. */
export async function openBreedingClub(file?: string): Promise<Club> {
  const club = openClub(file);
  for (const [as, line] of SET_UP) await club.ask(line, as);
  return club;
}

const SET_UP: readonly (readonly [string, string])[] = [
  ["ines", "/group start name:Lagoon breeders as:Ines"],
  ["bruno", "/group join as:Bruno"],
  ["thalia", "/group join as:Thalia"],
  ["ines", "/group role who:Bruno role:helper"],
  ["ines", "/group role who:Thalia role:helper"],
  ["ines", "/group tank name:tank 1 litres:100 L zone:broodstock water:rack A"],
  ["ines", "/group tank name:tank 2 litres:100 L zone:broodstock water:rack A"],
  ["ines", "/group tank name:tank 3 litres:40 L zone:hatchery"],
  ["ines", "/group tank name:grow-out litres:200 L zone:grow-out"],
  ["ines", "/group tank name:box litres:60 L zone:quarantine"],
  ["ines", "/brood add name:Nemea species:clownfish sex:female origin:wild"],
  ["ines", "/brood add name:Argos species:clownfish sex:male origin:wild"],
  ["ines", "/brood add name:Milo species:clownfish sex:male origin:traded"],
  ["ines", "/brood pair name:pair 1 first:Nemea second:Argos tank:tank 3"],
];
