/** Fills `rates` with the change per unit of time of each entry of `state`. */
export type Rates = (state: Float64Array, rates: Float64Array) => void;

export interface Tolerance {
  readonly relative: number;
  /** One for each entry of the state. */
  readonly absolute: Float64Array;
}

/**
 * A stepper for one system of equations: `advance(state, duration)` moves the state on in place,
 * choosing its own steps and remembering the last good one. Sums that the rates keep constant are
 * kept constant to rounding, whatever the step.
 * Written out stage by stage: this is where all the time of an ensemble goes.
 * Source: dormand-prince-1980, the 5(4) pair.
 */
export function stepper(size: number, rates: Rates, tolerance: Tolerance) {
  const [k1, k2, k3, k4, k5, k6, k7, trial] = [0, 1, 2, 3, 4, 5, 6, 7].map(
    () => new Float64Array(size),
  ) as unknown as Workspace;
  const { relative, absolute } = tolerance;
  let step = 0.1;

  /** One trial step of length h from y into `trial`; returns its error against the tolerance. */
  function attempt(y: Float64Array, h: number): number {
    for (let i = 0; i < size; i += 1) trial[i] = at(y, i) + h * (1 / 5) * at(k1, i);
    rates(trial, k2);
    for (let i = 0; i < size; i += 1) {
      trial[i] = at(y, i) + h * ((3 / 40) * at(k1, i) + (9 / 40) * at(k2, i));
    }
    rates(trial, k3);
    for (let i = 0; i < size; i += 1) {
      trial[i] = at(y, i) + h * ((44 / 45) * at(k1, i) - (56 / 15) * at(k2, i) + (32 / 9) * at(k3, i));
    }
    rates(trial, k4);
    for (let i = 0; i < size; i += 1) {
      trial[i] =
        at(y, i) +
        h *
          ((19372 / 6561) * at(k1, i) -
            (25360 / 2187) * at(k2, i) +
            (64448 / 6561) * at(k3, i) -
            (212 / 729) * at(k4, i));
    }
    rates(trial, k5);
    for (let i = 0; i < size; i += 1) {
      trial[i] =
        at(y, i) +
        h *
          ((9017 / 3168) * at(k1, i) -
            (355 / 33) * at(k2, i) +
            (46732 / 5247) * at(k3, i) +
            (49 / 176) * at(k4, i) -
            (5103 / 18656) * at(k5, i));
    }
    rates(trial, k6);
    for (let i = 0; i < size; i += 1) {
      trial[i] =
        at(y, i) +
        h *
          ((35 / 384) * at(k1, i) +
            (500 / 1113) * at(k3, i) +
            (125 / 192) * at(k4, i) -
            (2187 / 6784) * at(k5, i) +
            (11 / 84) * at(k6, i));
    }
    rates(trial, k7);
    let error = 0;
    for (let i = 0; i < size; i += 1) {
      const off =
        h *
        ((71 / 57600) * at(k1, i) -
          (71 / 16695) * at(k3, i) +
          (71 / 1920) * at(k4, i) -
          (17253 / 339200) * at(k5, i) +
          (22 / 525) * at(k6, i) -
          (1 / 40) * at(k7, i));
      const scale = at(absolute, i) + relative * Math.max(Math.abs(at(y, i)), Math.abs(at(trial, i)));
      error = Math.max(error, Math.abs(off) / scale);
    }
    return error;
  }

  return function advance(state: Float64Array, duration: number): void {
    let left = duration;
    rates(state, k1);
    while (left > 1e-12) {
      const h = Math.min(step, left);
      const error = attempt(state, h);
      const factor = error === 0 ? 5 : Math.min(5, Math.max(0.2, 0.9 * error ** -0.2));
      if (error <= 1) {
        left -= h;
        state.set(trial);
        // The last stage was taken at the new state: it is the first stage of the next step.
        k1.set(k7);
        // A step cut short by the end of the stretch says nothing against the longer one.
        if (h === step || factor < 1) step = h * factor;
      } else step = h * factor;
    }
  };
}

type Workspace = readonly [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];

function at(values: Float64Array, index: number): number {
  return values[index] as number;
}
