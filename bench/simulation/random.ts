/** A seeded source of random numbers: the same seed, the same record, on every machine. */
export interface Random {
  /** Between 0 and 1. */
  uniform(): number;
  between(low: number, high: number): number;
  normal(): number;
  pick<T>(choices: readonly T[]): T;
}

/** Source: Jenkins, small fast counting generator (sfc32), as commonly written. */
export function seeded(seed: number): Random {
  let a = 0x9e3779b9 ^ seed;
  let b = 0x243f6a88 ^ Math.imul(seed, 0x85ebca6b);
  let c = 0xb7e15162;
  let counter = 1;
  const next = () => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 16; i += 1) next();
  const uniform = () => Math.max(next(), 1e-12);
  return {
    uniform,
    between: (low, high) => low + (high - low) * uniform(),
    normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
    pick: <T>(choices: readonly T[]) => choices[Math.floor(uniform() * choices.length)] as T,
  };
}
