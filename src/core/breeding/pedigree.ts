import { type Exact, fraction, half, minus, NONE, ONE, plus, sumOf, times } from "./fraction.ts";

/** An animal and its parents; a group spawn names every male that may be the sire, each equally likely. */
export interface Descent {
  readonly id: string;
  readonly sires: readonly string[];
  readonly dam?: string;
}

/** A family tree made ready for reckoning. */
export interface Pedigree {
  readonly animals: ReadonlyMap<string, Descent>;
  /** Place of each animal in an order that has parents before their young. */
  readonly rank: ReadonlyMap<string, number>;
}

/** Puts parents before young. A parent that is not listed counts as a founder of unknown descent.
 *  Undefined when an animal would be its own ancestor. */
export function pedigreeOf(descents: readonly Descent[]): Pedigree | undefined {
  const animals = new Map(descents.map((descent) => [descent.id, descent]));
  for (const { sires, dam } of descents)
    for (const parent of [...sires, ...(dam === undefined ? [] : [dam])])
      if (!animals.has(parent)) animals.set(parent, { id: parent, sires: [] });
  const rank = new Map<string, number>();
  const open = new Set<string>();
  for (const start of animals.keys()) {
    // A path of its own instead of recursion: pedigrees may be long.
    const path: { readonly id: string; readonly parents: string[] }[] = [];
    const enter = (id: string): boolean => {
      if (rank.has(id)) return true;
      if (open.has(id)) return false;
      open.add(id);
      path.push({ id, parents: [...parentsOf(animals.get(id))] });
      return true;
    };
    if (!enter(start)) return undefined;
    while (path.length > 0) {
      const top = path[path.length - 1];
      if (top === undefined) break;
      const parent = top.parents.pop();
      if (parent === undefined) {
        open.delete(top.id);
        rank.set(top.id, rank.size);
        path.pop();
      } else if (!enter(parent)) return undefined;
    }
  }
  return { animals, rank };
}

function parentsOf(descent: Descent | undefined): readonly string[] {
  if (descent === undefined) return [];
  return descent.dam === undefined ? descent.sires : [...descent.sires, descent.dam];
}

/** Reckons relationships in one pedigree and keeps what it has found. */
export class Kinships {
  readonly #pedigree: Pedigree;
  readonly #found = new Map<string, Exact>();

  constructor(pedigree: Pedigree) {
    this.#pedigree = pedigree;
  }

  /** Twice the kinship, by the tabular method: half of that with the younger one's parents; with itself, one
   *  and half the relationship of its parents. Source: henderson-1976; falconer-mackay-1996. */
  relationship(a: string, b: string): Exact {
    const { rank, animals } = this.#pedigree;
    const [rankA, rankB] = [rank.get(a), rank.get(b)];
    if (rankA === undefined || rankB === undefined) return NONE;
    const [older, younger] = rankA <= rankB ? [a, b] : [b, a];
    const key = `${Math.min(rankA, rankB)} ${Math.max(rankA, rankB)}`;
    const known = this.#found.get(key);
    if (known !== undefined) return known;
    const { sires, dam } = animals.get(younger) ?? { sires: [] };
    const value =
      older === younger
        ? plus(ONE, half(dam === undefined ? NONE : this.#meanWith(dam, sires)))
        : half(plus(this.#meanWith(older, sires), dam === undefined ? NONE : this.relationship(older, dam)));
    this.#found.set(key, value);
    return value;
  }

  /** Chance that two copies, one drawn from each, are the same by descent; the inbreeding of their young. */
  kinship(a: string, b: string): Exact {
    return half(this.relationship(a, b));
  }

  inbreeding(id: string): Exact {
    return minus(this.relationship(id, id), ONE);
  }

  /** Mean kinship of one animal with a whole stock, itself among them. Source: ballou-lacy-1995.
   *  Throws: RangeError for an empty stock. */
  meanKinship(id: string, stock: readonly string[]): Exact {
    return times(sumOf(stock.map((other) => this.kinship(id, other))), fraction(1n, BigInt(stock.length)));
  }

  #meanWith(animal: string, others: readonly string[]): Exact {
    if (others.length === 0) return NONE;
    const [only] = others;
    if (only !== undefined && others.length === 1) return this.relationship(animal, only);
    return times(
      sumOf(others.map((other) => this.relationship(animal, other))),
      fraction(1n, BigInt(others.length)),
    );
  }
}

/** The animal and all its known ancestors. */
export function ancestry(pedigree: Pedigree, ids: readonly string[]): ReadonlySet<string> {
  const seen = new Set<string>();
  const left = [...ids];
  for (let id = left.pop(); id !== undefined; id = left.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    left.push(...parentsOf(pedigree.animals.get(id)));
  }
  return seen;
}
