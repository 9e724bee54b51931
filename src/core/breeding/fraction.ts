/** An exact fraction in lowest terms; the denominator is positive. */
export interface Exact {
  readonly over: bigint;
  readonly under: bigint;
}

export const NONE: Exact = { over: 0n, under: 1n };
export const ONE: Exact = { over: 1n, under: 1n };

/** Throws: RangeError for a denominator of zero. */
export function fraction(over: bigint, under: bigint): Exact {
  if (under === 0n) throw new RangeError("a fraction over zero");
  const divisor = greatestCommon(over < 0n ? -over : over, under < 0n ? -under : under);
  const sign = under < 0n ? -1n : 1n;
  return divisor === 0n ? NONE : { over: (sign * over) / divisor, under: (sign * under) / divisor };
}

export function plus(a: Exact, b: Exact): Exact {
  return a.under === b.under
    ? fraction(a.over + b.over, a.under)
    : fraction(a.over * b.under + b.over * a.under, a.under * b.under);
}

/** The sum of many, brought to lowest terms once. */
export function sumOf(all: Iterable<Exact>): Exact {
  let [over, under] = [0n, 1n];
  for (const each of all) {
    if (each.under === under) over += each.over;
    else if (under % each.under === 0n) over += each.over * (under / each.under);
    else {
      over = over * each.under + each.over * under;
      under *= each.under;
    }
  }
  return fraction(over, under);
}

export function minus(a: Exact, b: Exact): Exact {
  return plus(a, { over: -b.over, under: b.under });
}

export function times(a: Exact, b: Exact): Exact {
  return fraction(a.over * b.over, a.under * b.under);
}

export function half(a: Exact): Exact {
  return a.over % 2n === 0n ? { over: a.over / 2n, under: a.under } : { over: a.over, under: a.under * 2n };
}

export function asNumber({ over, under }: Exact): number {
  // Long fractions are cut to what a double holds before they are divided.
  const excess = Math.max(0, under.toString(2).length - 1000);
  return Number(over >> BigInt(excess)) / Number(under >> BigInt(excess));
}

/** "1/8"; whole numbers stand alone. */
export function showExact({ over, under }: Exact): string {
  return under === 1n ? String(over) : `${over}/${under}`;
}

function greatestCommon(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}
