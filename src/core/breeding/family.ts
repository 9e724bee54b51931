import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { Exact } from "./fraction.ts";
import { type Animal, keyOf } from "./ledger/state.ts";
import { animalsPedigree } from "./pair-check.ts";
import { ancestry, Kinships } from "./pedigree.ts";

export interface Family {
  readonly inbreeding: Exact;
  readonly isAtLeast: boolean;
  readonly meanKinship: Exact;
  /** Names, father before mother; several possible fathers joined by “or”. */
  readonly generations: readonly (readonly (string | undefined)[])[];
  /** Names that stand more than once. */
  readonly repeated: ReadonlySet<string>;
}

const MOST_GENERATIONS = 4;

/** One animal's forebears and what they make it. */
export function familyOf(animal: Animal, animals: readonly Animal[]): Answer<Family> | NoAnswer {
  const pedigree = animalsPedigree(animals);
  if (pedigree === undefined) return noAnswer("breeding-pedigree-loop", { animal: animal.name });
  const kinships = new Kinships(pedigree);
  const known = new Map(animals.map((each) => [keyOf(each.name), each]));
  const stock = animals
    .filter((each) => each.gone === undefined && keyOf(each.species) === keyOf(animal.species))
    .map(({ name }) => keyOf(name));
  const generations: (string | undefined)[][] = [[animal.name]];
  while (generations.length < MOST_GENERATIONS) {
    const next = (generations.at(-1) ?? []).flatMap((name) => {
      const each = name === undefined ? undefined : known.get(keyOf(name));
      const sire = each === undefined || each.sires.length === 0 ? undefined : each.sires.join(" or ");
      return [sire, each?.dam];
    });
    if (next.every((name) => name === undefined)) break;
    generations.push(next);
  }
  const all = generations.flat().filter((name) => name !== undefined);
  const repeated = new Set(all.filter((name, index) => all.indexOf(name) !== index));
  const isAtLeast = [...ancestry(pedigree, [keyOf(animal.name)])].some((key) => {
    const each = known.get(key);
    return (
      each === undefined || ((each.sires.length === 0 || each.dam === undefined) && each.origin !== "wild")
    );
  });
  return {
    kind: "answer",
    value: {
      inbreeding: kinships.inbreeding(keyOf(animal.name)),
      isAtLeast,
      meanKinship: kinships.meanKinship(
        keyOf(animal.name),
        stock.length === 0 ? [keyOf(animal.name)] : stock,
      ),
      generations,
      repeated,
    },
    method: "Relationship with itself by the tabular method, less one",
    working: [],
    constants: [],
    sources: ["henderson-1976", "ballou-lacy-1995"],
    assumptions: ["animals whose parents are not known are taken as unrelated to all others"],
    cautions: isAtLeast ? [caution("breeding-at-least", {}, "note")] : [],
  };
}
