/**
 * Stops an equation from being used where it means nothing.
 * Throws: RangeError when `value` is not a finite number from `min` to `max`.
 */
export function requireWithin(
  name: string,
  value: number,
  min: number,
  max: number = Number.MAX_VALUE,
): void {
  if (!Number.isFinite(value) || value < min || value > max) {
    throw new RangeError(`${name} is ${value}, outside ${min} to ${max}`);
  }
}

/** The same for a quantity that must be above zero. Throws: RangeError. */
export function requirePositive(name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0)
    throw new RangeError(`${name} is ${value}, and must be above zero`);
}
