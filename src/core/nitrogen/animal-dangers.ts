import { type Caution, caution } from "../result.ts";
import { FISH } from "./fish.ts";
import type { AnimalGroup } from "./stocking-input.ts";

/** Animals with venom, in the words keepers use. Source: common-practice, from memory; the list is not complete. */
const STINGS =
  /\b(?:lion ?fish|turkey ?fish|scorpion ?fish|stone ?fish|wasp ?fish|wasp|waspfish|rabbit ?fish|fox ?face|spine ?foot|toad ?fish|weever|eel catfish|(?:sting|eagle|cow ?nose) ?rays?|rays?|urchins?|sea urchin|cone snails?|blue[- ]ring\w*|fire ?worms?|jelly ?fish|crown of thorns|anemones?|fire coral|zoanthids?|palythoa)\b/;

/** Animals whose bite or blade goes deep. Source: common-practice, from memory; the list is not complete. */
const WOUNDS =
  /\b(?:morays?|(?:moray|wolf|snowflake) eels?|eels?|trigger\w*|puffer\w*|porcupine ?fish|burr ?fish|sharks?|barracudas?|groupers?|tangs?|surgeon ?fish|unicorn ?fish|mantis|peacock mantis|snapping turtles?)\b/;

/** What to heed when hands go in with these animals: who stings, and who wounds. */
export function animalDangers(groups: readonly AnimalGroup[]): Caution[] {
  const named = groups.map(({ label, body }) => ({
    label,
    text: `${label} ${body.kind === "length" ? FISH[body.fish].name : ""}`.toLowerCase(),
  }));
  const stings = labelsOf(named, ({ text }) => STINGS.test(text) && !/\banemone ?fish/.test(text));
  const wounds = labelsOf(named, ({ text }) => WOUNDS.test(text));
  return [
    ...(stings === "" ? [] : [caution("animal-stings", { animals: stings }, "danger")]),
    ...(wounds === "" ? [] : [caution("animal-wounds", { animals: wounds }, "note")]),
  ];
}

interface Named {
  readonly label: string;
  readonly text: string;
}

function labelsOf(named: readonly Named[], is: (one: Named) => boolean): string {
  return [...new Set(named.filter(is).map(({ label }) => label))].join(", ");
}
