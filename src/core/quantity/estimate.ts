/** A best value and the range it may lie in; `low <= best <= high`, and all three equal when exact. */
export interface Estimate<Q extends number = number> {
  readonly best: Q;
  readonly low: Q;
  readonly high: Q;
}

/** An input known exactly, or taken as exact. */
export function exactly<Q extends number>(value: Q): Estimate<Q> {
  return { best: value, low: value, high: value };
}

/** An input with a range; the best value defaults to the middle. */
export function between<Q extends number>(low: Q, high: Q, best = ((low + high) / 2) as Q): Estimate<Q> {
  return { best, low, high };
}

export function isExact(estimate: Estimate): boolean {
  return estimate.low === estimate.high;
}

/** A figure given with no range of its own gets one: plus or minus `half`. One with a range keeps it. */
export function orDoubted<Q extends number>(estimate: Estimate<Q>, half: number): Estimate<Q> {
  return isExact(estimate)
    ? between((estimate.best - half) as Q, (estimate.best + half) as Q, estimate.best)
    : estimate;
}

/** Applies a monotone conversion to all three figures. */
export function mapEstimate<From extends number, To extends number>(
  estimate: Estimate<From>,
  convert: (value: From) => To,
): Estimate<To> {
  const a = convert(estimate.low);
  const b = convert(estimate.high);
  const [low, high] = a <= b ? [a, b] : [b, a];
  return { best: convert(estimate.best), low, high };
}

type Values<Inputs> = { [K in keyof Inputs]: Inputs[K] extends Estimate<infer Q> ? Q : never };
type Estimates<Outputs> = {
  [K in keyof Outputs]: Outputs[K] extends number ? Estimate<Outputs[K]> : never;
};

/** What widens one output most: the input's name, and its share (0–1) of the squared spread. */
export interface Driver<Name extends string = string> {
  readonly input: Name;
  readonly share: number;
}

export interface Propagated<Inputs, Outputs> {
  readonly estimates: Estimates<Outputs>;
  /** Undefined when every input that matters to that output is exact. */
  readonly drivers: { readonly [K in keyof Outputs]: Driver<Extract<keyof Inputs, string>> | undefined };
}

/**
 * Carries the ranges of independent inputs through `f`: each input is moved alone to both ends of
 * its range, and the deviations of each output are added as squares, upward and downward apart.
 * One ranged input gives exactly f(low)…f(high) for a monotone f.
 * Source: jcgm-100-2008, 5.1.2 (uncorrelated inputs), with finite differences in place of slopes.
 * `f` must be finite over the whole box of inputs; a bound where it is not widens to the best value only.
 */
export function propagate<
  Inputs extends { readonly [name: string]: Estimate<number> },
  Outputs extends { readonly [name: string]: number },
>(inputs: Inputs, f: (values: Values<Inputs>) => Outputs): Propagated<Inputs, Outputs> {
  const names = Object.keys(inputs) as Extract<keyof Inputs, string>[];
  const best = Object.fromEntries(names.map((name) => [name, (inputs[name] as Estimate).best]));
  const centre = f(best as Values<Inputs>);
  const moved = names
    .filter((name) => !isExact(inputs[name] as Estimate))
    .map((name) => {
      const input = inputs[name] as Estimate;
      return {
        name,
        ends: [input.low, input.high].map((end) => f({ ...best, [name]: end } as Values<Inputs>)),
      };
    });
  const estimates: Record<string, Estimate> = {};
  const drivers: Record<string, Driver<Extract<keyof Inputs, string>> | undefined> = {};
  for (const key of Object.keys(centre)) {
    const middle = centre[key] as number;
    let up = 0;
    let down = 0;
    let total = 0;
    let widest = 0;
    let driver: Extract<keyof Inputs, string> | undefined;
    for (const { name, ends } of moved) {
      const deviations = ends.map((end) => (end[key] as number) - middle).filter(Number.isFinite);
      const above = Math.max(0, ...deviations);
      const below = Math.min(0, ...deviations);
      up += above * above;
      down += below * below;
      const spread = (above - below) ** 2;
      total += spread;
      if (spread > widest) {
        widest = spread;
        driver = name;
      }
    }
    estimates[key] = { best: middle, low: middle - Math.sqrt(down), high: middle + Math.sqrt(up) };
    drivers[key] = driver === undefined ? undefined : { input: driver, share: widest / total };
  }
  return { estimates, drivers } as unknown as Propagated<Inputs, Outputs>;
}
