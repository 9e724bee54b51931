import { type Settlement, settle, splitCents } from "./cost-split.ts";
import type { GroupState } from "./ledger/state.ts";

/** What falls to each of those who share. Weights are whole; those who joined later have no part in what was
 *  spent before. */
export function costShares(
  cents: number,
  sharers: readonly { readonly person: number; readonly weight: number }[],
): readonly { readonly person: number; readonly cents: number }[] {
  const parts = splitCents(
    cents,
    sharers.map(({ weight }) => weight),
  );
  return sharers.map(({ person }, index) => ({ person, cents: parts[index] ?? 0 }));
}

/** Those who share costs unless said otherwise: keepers and helpers who are here. */
export function usualSharers({
  people,
}: GroupState): readonly { readonly person: number; readonly weight: number }[] {
  return Object.values(people)
    .filter(({ isHere, role }) => isHere && role !== "observer")
    .map(({ number }) => ({ person: number, weight: 1 }));
}

/** Who pays whom so that all stand even. */
export function settlements({ balances }: GroupState): readonly Settlement[] {
  return settle(Object.entries(balances).map(([id, cents]) => ({ id, cents })));
}
