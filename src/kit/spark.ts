const BLOCKS = [..."▁▂▃▄▅▆▇█"];

/** Readings as a row of blocks, oldest first: the shape of a month in a table's cell. */
export function spark(values: readonly number[], most = 12): string {
  const finite = values.filter(Number.isFinite);
  const shown = finite.length <= most ? finite : thinned(finite, most);
  const low = Math.min(...shown);
  const span = Math.max(...shown) - low;
  return shown
    .map((value) => BLOCKS[span === 0 ? 3 : Math.round(((value - low) / span) * (BLOCKS.length - 1))] ?? "")
    .join("");
}

/** Evenly spaced ones, the first and the last among them. */
function thinned(values: readonly number[], most: number): readonly number[] {
  return Array.from(
    { length: most },
    (_, i) => values[Math.round((i * (values.length - 1)) / (most - 1))] ?? 0,
  );
}
