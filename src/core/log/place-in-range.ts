/** Where a reading stands against a wanted range. A span that crosses an edge cannot be told. */
export type Place = "inside" | "below" | "above" | "cannot tell";

interface Ends {
  readonly low?: number;
  readonly high?: number;
}

/** A value is above when all it may be lies above; open ends of the range hold everything. */
export function placeInRange(value: { readonly low: number; readonly high: number }, range: Ends): Place {
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = range;
  if (value.low > high) return "above";
  if (value.high < low) return "below";
  return value.low >= low && value.high <= high ? "inside" : "cannot tell";
}
