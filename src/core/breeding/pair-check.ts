import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { effectiveFromSexes, inbreedingPerGeneration } from "./effective-size.ts";
import { asNumber, type Exact, showExact } from "./fraction.ts";
import type { Animal } from "./ledger/state.ts";
import { keyOf } from "./ledger/state.ts";
import { ancestry, Kinships, type Pedigree, pedigreeOf } from "./pedigree.ts";

export interface PairCheck {
  /** Inbreeding of the young: exact where every ancestor is known, else the least it can be. */
  readonly inbreeding: Exact;
  readonly isAtLeast: boolean;
  readonly closeness?: string;
  /** Others of the same species and fitting sex, the least related first. */
  readonly better: readonly {
    readonly name: string;
    readonly inbreeding: Exact;
    readonly meanKinship: Exact;
  }[];
  readonly effective?: number;
}

/** From this inbreeding of the young a pair is better not formed: half sibs. Source: falconer-mackay-1996. */
const AVOID_FROM = 0.125;
const MOST_CHOICES = 5;

export function animalsPedigree(animals: readonly Animal[]): Pedigree | undefined {
  return pedigreeOf(
    animals.map(({ name, sires, dam }) => ({
      id: keyOf(name),
      sires: sires.map(keyOf),
      ...(dam === undefined ? {} : { dam: keyOf(dam) }),
    })),
  );
}

/** Whether two may be paired: the inbreeding of their young, and who would be less related. */
export function pairCheck(a: Animal, b: Animal, animals: readonly Animal[]): Answer<PairCheck> | NoAnswer {
  const pedigree = animalsPedigree(animals);
  if (pedigree === undefined) return noAnswer("breeding-pedigree-loop", { animal: a.name });
  const kinships = new Kinships(pedigree);
  const stock = animals.filter(
    (each) => each.gone === undefined && each.species.toLowerCase() === a.species.toLowerCase(),
  );
  const keys = stock.map(({ name }) => keyOf(name));
  const inbreeding = kinships.kinship(keyOf(a.name), keyOf(b.name));
  const known = new Map(animals.map((animal) => [keyOf(animal.name), animal]));
  const isAtLeast = [...ancestry(pedigree, [keyOf(a.name), keyOf(b.name)])].some((key) => {
    const animal = known.get(key);
    return (
      animal === undefined ||
      ((animal.sires.length === 0 || animal.dam === undefined) && animal.origin !== "wild")
    );
  });
  const choices = stock
    .filter(
      ({ name, sex }) =>
        name !== a.name && name !== b.name && (sex === "unknown" || a.sex === "unknown" || sex !== a.sex),
    )
    .map(({ name }) => ({ name, inbreeding: kinships.kinship(keyOf(a.name), keyOf(name)) }))
    .filter((each) => asNumber(each.inbreeding) < asNumber(inbreeding))
    .sort((x, y) => asNumber(x.inbreeding) - asNumber(y.inbreeding) || (x.name < y.name ? -1 : 1));
  // Mean kinship with the whole stock only decides among those that are equally little related.
  const last = choices[MOST_CHOICES - 1];
  const better = choices
    .filter((each) => last === undefined || asNumber(each.inbreeding) <= asNumber(last.inbreeding))
    .map((each) => ({ ...each, meanKinship: kinships.meanKinship(keyOf(each.name), keys) }))
    .sort(
      (x, y) =>
        asNumber(x.inbreeding) - asNumber(y.inbreeding) || asNumber(x.meanKinship) - asNumber(y.meanKinship),
    )
    .slice(0, MOST_CHOICES);
  const size = asNumber(inbreeding);
  const males = stock.filter(({ sex }) => sex === "male").length;
  const females = stock.filter(({ sex }) => sex === "female").length;
  const effective = males > 0 && females > 0 ? effectiveFromSexes(males, females) : undefined;
  const closeness =
    size >= 0.25
      ? "as close as brother and sister, or parent and young"
      : size >= AVOID_FROM
        ? "as close as half brother and sister"
        : size >= 0.0625
          ? "as close as first cousins"
          : undefined;
  const cautions: Caution[] = [
    ...(size >= AVOID_FROM && closeness !== undefined
      ? [caution("breeding-close-kin", { kin: `They are ${closeness}` })]
      : []),
    ...(isAtLeast ? [caution("breeding-at-least", {}, "note")] : []),
    ...(a.origin === "traded" && b.origin === "traded" ? [caution("breeding-shop-stock", {}, "note")] : []),
    ...((a.origin === "wild") !== (b.origin === "wild")
      ? [caution("breeding-mixes-origins", {}, "note")]
      : []),
    ...(effective === undefined || effective >= 50
      ? []
      : [caution("breeding-no-population", { effective }, "note")]),
  ];
  return {
    kind: "answer",
    value: {
      inbreeding,
      isAtLeast,
      ...(closeness === undefined ? {} : { closeness }),
      better,
      ...(effective === undefined ? {} : { effective }),
    },
    method: "Kinship of the two by the tabular method, in exact fractions: the inbreeding of their young",
    working: [
      "relationship with a younger animal: half of that with its father and half of that with its mother",
      "with itself: one and half the relationship of its parents; kinship is half the relationship",
      `kinship of ${a.name} and ${b.name}: ${showExact(inbreeding)} = ${(100 * size).toPrecision(3)} %`,
      ...(effective === undefined
        ? []
        : [
            `${males} males and ${females} females count for ${effective.toPrecision(3)}, and lose ${(100 * inbreedingPerGeneration(effective)).toPrecision(2)} % of their variety a generation`,
          ]),
    ],
    constants: [{ name: "better not paired from", value: "1/8", source: "falconer-mackay-1996" }],
    sources: ["henderson-1976", "falconer-mackay-1996", "ballou-lacy-1995", "wright-1931"],
    assumptions: ["animals whose parents are not known are taken as unrelated to all others"],
    cautions,
  };
}
