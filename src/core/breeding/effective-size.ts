/** Breeders a population counts for when its sexes are unequal. Source: wright-1931. Range: both > 0. */
export function effectiveFromSexes(males: number, females: number): number {
  if (!(males > 0 && females > 0)) throw new RangeError("both sexes are needed");
  return (4 * males * females) / (males + females);
}

/** Inbreeding gained in one generation. Source: falconer-mackay-1996. Range: Ne > 0. */
export function inbreedingPerGeneration(effective: number): number {
  if (!(effective > 0)) throw new RangeError("an effective size must be above zero");
  return 1 / (2 * effective);
}

/** Inbreeding after some generations of one effective size. Source: falconer-mackay-1996. */
export function inbreedingAfter(effective: number, generations: number): number {
  return 1 - (1 - inbreedingPerGeneration(effective)) ** generations;
}

/** When families differ in how many young they leave, the mean being two. Source: holsinger-notes. */
export function effectiveFromFamilies(parents: number, variance: number): number {
  return (2 * parents - 1) / (1 + variance / 2);
}

/** Over generations of changing size: the harmonic mean. Source: wright-1931 (as taught; from memory). */
export function effectiveOverGenerations(sizes: readonly number[]): number {
  if (sizes.length === 0 || sizes.some((size) => !(size > 0)))
    throw new RangeError("every generation needs a size");
  return sizes.length / sizes.reduce((sum, size) => sum + 1 / size, 0);
}

/** Equal founders that would keep as much variety. Source: lacy-1989. */
export function founderEquivalents(contributions: readonly number[]): number {
  const squares = contributions.reduce((sum, share) => sum + share * share, 0);
  if (!(squares > 0)) throw new RangeError("nobody contributed");
  return 1 / squares;
}

/** Chance-weighted inbreeding of young with several possible sires. Throws: RangeError unless chances sum to 1. */
export function expectedInbreeding(kinships: readonly number[], chances: readonly number[]): number {
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  if (Math.abs(total - 1) > 1e-9 || chances.length !== kinships.length)
    throw new RangeError("every sire needs a chance, and the chances must come to one");
  return kinships.reduce((sum, kinship, index) => sum + kinship * (chances[index] ?? 0), 0);
}
