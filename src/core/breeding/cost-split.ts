/** Splits whole cents by weights so that the parts sum to the whole: what is left over after rounding down
 *  goes, a cent each, to the largest remainders, the earlier name first at a tie.
 *  Throws: RangeError for cents that are not whole or weights that are not above zero in sum. */
export function splitCents(totalCents: number, weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (!Number.isSafeInteger(totalCents) || totalCents < 0) throw new RangeError(`${totalCents} cents`);
  if (!(sum > 0) || weights.some((weight) => !Number.isSafeInteger(weight) || weight < 0))
    throw new RangeError("weights must be whole, and some above zero");
  const [total, all] = [BigInt(totalCents), BigInt(sum)];
  const parts = weights.map((weight, index) => {
    const share = total * BigInt(weight);
    return { index, cents: share / all, rest: share % all };
  });
  const left = Number(total - parts.reduce((done, { cents }) => done + cents, 0n));
  const lucky = new Set(
    [...parts]
      .sort((a, b) => (a.rest === b.rest ? a.index - b.index : a.rest > b.rest ? -1 : 1))
      .slice(0, left)
      .map(({ index }) => index),
  );
  return parts.map(({ index, cents }) => Number(cents) + (lucky.has(index) ? 1 : 0));
}

export interface Settlement {
  readonly from: string;
  readonly to: string;
  readonly cents: number;
}

/** Who pays whom so that everybody stands at nothing: the largest debtor pays the largest creditor, over and
 *  over; the earlier name first at a tie. Throws: RangeError unless the balances sum to zero. */
export function settle(
  balances: readonly { readonly id: string; readonly cents: number }[],
): readonly Settlement[] {
  const left = balances.map(({ id, cents }) => ({ id, cents }));
  if (left.reduce((sum, { cents }) => sum + cents, 0) !== 0)
    throw new RangeError("balances must sum to zero");
  const payments: Settlement[] = [];
  for (;;) {
    let creditor: { id: string; cents: number } | undefined;
    let debtor: { id: string; cents: number } | undefined;
    for (const each of left) {
      if (each.cents > (creditor?.cents ?? 0)) creditor = each;
      if (each.cents < (debtor?.cents ?? 0)) debtor = each;
    }
    if (creditor === undefined || debtor === undefined) return payments;
    const cents = Math.min(creditor.cents, -debtor.cents);
    payments.push({ from: debtor.id, to: creditor.id, cents });
    creditor.cents -= cents;
    debtor.cents += cents;
  }
}
