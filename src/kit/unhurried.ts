/** Runs long work step by step; whatever else waits gets its turn between two steps. */
export async function unhurried<T>(work: Generator<undefined, T, undefined>): Promise<T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
