/** The measures every quantity of a sum is made of, each with the unit it is counted in here. */
export const BASES = ["length", "mass", "time", "temperature", "charge", "salinity", "power"] as const;
export type Base = (typeof BASES)[number];

/** How often each measure goes into a quantity: a volume is length three times, a flow that per time.
 *  Counted in dm (so that dm³ is the litre), kg, h, K, meq, ppt and W. A measure left out goes in not at all. */
export type Dimension = { readonly [base in Base]?: number };

export const PLAIN: Dimension = {};

/** Powers beyond this are a slip or a jest. */
const HIGHEST_POWER = 12;

/** The dimension of a product: `a` times `b` to the power. Undefined when it goes beyond all sense. */
export function combined(a: Dimension, b: Dimension, power = 1): Dimension | undefined {
  const result: { [base in Base]?: number } = {};
  for (const base of BASES) {
    const exponent = (a[base] ?? 0) + power * (b[base] ?? 0);
    if (Math.abs(exponent) > HIGHEST_POWER) return undefined;
    if (exponent !== 0) result[base] = exponent;
  }
  return result;
}

export function isSame(a: Dimension, b: Dimension): boolean {
  return BASES.every((base) => (a[base] ?? 0) === (b[base] ?? 0));
}

export function isPlain(dimension: Dimension): boolean {
  return isSame(dimension, PLAIN);
}

const UNIT_OF_BASE: Readonly<Record<Base, string>> = {
  length: "dm",
  mass: "kg",
  time: "h",
  temperature: "K",
  charge: "meq",
  salinity: "ppt",
  power: "W",
};

/** "kg·dm³/h²": for a combination that has no name. */
export function spell(dimension: Dimension): string {
  const part = (base: Base, exponent: number) =>
    `${UNIT_OF_BASE[base]}${exponent === 1 ? "" : (RAISED[exponent] ?? `^${exponent}`)}`;
  const above = BASES.filter((base) => (dimension[base] ?? 0) > 0).map((base) =>
    part(base, dimension[base] ?? 0),
  );
  const below = BASES.filter((base) => (dimension[base] ?? 0) < 0).map((base) =>
    part(base, -(dimension[base] ?? 0)),
  );
  return `${above.length === 0 ? "1" : above.join("·")}${below.length === 0 ? "" : `/(${below.join("·")})`}`;
}

const RAISED: readonly (string | undefined)[] = [undefined, undefined, "²", "³"];
