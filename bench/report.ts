/** One measured figure with the goal it is held against. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  readonly goal: string;
  readonly isMet: boolean;
}

export function atMost(what: string, value: number, goal: number, unit: string): Row {
  return { what, measured: `${rounded(value)} ${unit}`, goal: `≤ ${goal} ${unit}`, isMet: value <= goal };
}

export function atLeast(what: string, value: number, goal: number, unit: string): Row {
  return {
    what,
    measured: `${rounded(value)} ${unit}`.trim(),
    goal: `≥ ${goal} ${unit}`.trim(),
    isMet: value >= goal,
  };
}

/** A figure with no goal of its own, beside which others stand. */
export function given(what: string, measured: string): Row {
  return { what, measured, goal: "", isMet: true };
}

export function printTable(title: string, rows: readonly Row[]): void {
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => cells(row)[column]?.length ?? 0)));
  console.log(`\n${title}`);
  for (const row of rows)
    console.log(
      `  ${cells(row)
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join("  ")}  ${row.goal === "" ? "" : row.isMet ? "met" : "MISSED"}`,
    );
}

function cells({ what, measured, goal }: Row): readonly [string, string, string] {
  return [what, measured, goal];
}

function rounded(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

/** Milliseconds of each of `runs` calls, sorted. */
export function timed(runs: number, call: (run: number) => unknown): readonly number[] {
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    call(run);
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b);
}

/** Nearest-rank percentile of sorted times. */
export function percentile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
