/** Lets whatever else waits have its turn. */
export function pause(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** Runs long work step by step, with a pause after each. */
export async function unhurried<T>(work: Generator<undefined, T, undefined>): Promise<T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    await pause();
  }
}
