import type { Want } from "./ledger/state.ts";

export interface FairShare {
  readonly person: number;
  readonly animals: number;
  readonly asked: number;
  readonly isReady: boolean;
}

/** Deals out animals one at a time to whoever has had the fewest so far and still wants some; among equals the
 *  one who asked first. Those whose tank is not ready come after all who are. Source: common-practice. */
export function fairShares(
  available: number,
  wants: readonly Want[],
  hadBefore: (person: number) => number,
): readonly FairShare[] {
  const inOrder = [...wants].sort(
    (a, b) =>
      Number(b.isReady) - Number(a.isReady) ||
      (a.since < b.since ? -1 : a.since > b.since ? 1 : 0) ||
      a.number - b.number,
  );
  const shares = inOrder.map((want) => ({ want, animals: 0, had: hadBefore(want.person) }));
  let left = Math.floor(available);
  for (const isReady of [true, false]) {
    const dealt = shares.filter(({ want }) => want.isReady === isReady);
    while (left > 0) {
      let next: (typeof shares)[number] | undefined;
      for (const share of dealt)
        if (share.animals < share.want.animals && (next === undefined || share.had < next.had)) next = share;
      if (next === undefined) break;
      next.animals += 1;
      next.had += 1;
      left -= 1;
    }
  }
  return shares.map(({ want, animals }) => ({
    person: want.person,
    animals,
    asked: want.animals,
    isReady: want.isReady,
  }));
}
