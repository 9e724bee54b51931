import { type Batch, type GroupState, keyOf } from "./ledger/state.ts";

/** How many of a species somebody has had from the group so far. */
export function hadBefore(state: GroupState, person: number, species: string): number {
  return Object.values(state.transfers)
    .filter((each) => each.day !== undefined && each.to === person && keyOf(each.species) === keyOf(species))
    .reduce((sum, { animals }) => sum + animals, 0);
}

/** How many of a batch are there and not promised to anybody. */
export function unpromised(state: GroupState, batch: Batch): number {
  const promised = Object.values(state.transfers)
    .filter((each) => each.day === undefined && keyOf(each.batch) === keyOf(batch.id))
    .reduce((sum, { animals }) => sum + animals, 0);
  return Math.max(0, Math.floor(batch.alive?.low ?? 0) - promised);
}
