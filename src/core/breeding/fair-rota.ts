/** One who takes duties: how many they have done, and the slot they last had. */
export interface DutyTaker {
  readonly id: string;
  readonly load: number;
  /** Number of the last slot taken, on the scale of the slots to be filled; absent if never. */
  readonly lastSlot?: number;
}

/** Gives each slot to the one with the lowest load, then the longest idle, then first in the list.
 *  Undefined where nobody can. `isAway` says who cannot take a slot. Source: common-practice. */
export function fairRota(
  takers: readonly DutyTaker[],
  slots: readonly number[],
  isAway: (id: string, slot: number) => boolean,
): readonly (string | undefined)[] {
  const load = new Map(takers.map(({ id, load: done }) => [id, done]));
  const last = new Map(takers.map(({ id, lastSlot }) => [id, lastSlot ?? Number.NEGATIVE_INFINITY]));
  return slots.map((slot) => {
    let chosen: string | undefined;
    for (const { id } of takers) {
      if (isAway(id, slot)) continue;
      if (chosen === undefined || isBefore(id, chosen)) chosen = id;
    }
    if (chosen !== undefined) {
      load.set(chosen, (load.get(chosen) ?? 0) + 1);
      last.set(chosen, slot);
    }
    return chosen;
  });

  function isBefore(a: string, b: string): boolean {
    const byLoad = (load.get(a) ?? 0) - (load.get(b) ?? 0);
    return byLoad < 0 || (byLoad === 0 && (last.get(a) ?? 0) < (last.get(b) ?? 0));
  }
}

/** 1 when all carry alike, 1/n when one carries all. Source: jain-1984. Range: some load above zero. */
export function fairness(loads: readonly number[]): number {
  const sum = loads.reduce((total, load) => total + load, 0);
  const squares = loads.reduce((total, load) => total + load * load, 0);
  return squares === 0 ? 1 : (sum * sum) / (loads.length * squares);
}
