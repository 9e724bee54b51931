/** The candidate most like what was typed, when it is near enough to be meant; undefined otherwise. */
export function nearest(typed: string, candidates: readonly string[]): string | undefined {
  const wanted = typed.toLowerCase().slice(0, 40);
  const allowed = Math.max(1, Math.floor(wanted.length / 3));
  let best: { candidate: string; distance: number } | undefined;
  for (const candidate of candidates) {
    const distance = editDistance(wanted, candidate.toLowerCase().slice(0, 40));
    if (distance <= allowed && (best === undefined || distance < best.distance))
      best = { candidate, distance };
  }
  return best?.candidate;
}

/** How many letters must be put in, taken out, changed or swapped with a neighbour. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (beforeLast[j - 2] ?? 0) + 1);
      row.push(cost);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
