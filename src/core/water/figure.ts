/** A number as a line of working shows it: four figures that count, no trailing noughts. */
export function figure(value: number, significant = 4): string {
  const rounded = Number(value.toPrecision(significant));
  return Object.is(rounded, -0) ? "0" : String(rounded);
}
