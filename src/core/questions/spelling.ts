/**
 * A speller for a closed list of words: an unknown word is taken for the one word of the list that is one
 * slip of the finger away (two in long words). `known` are words that are right as they stand.
 */
export function speller(targets: readonly string[], known: ReadonlySet<string>): (word: string) => string {
  const right = new Set([...targets, ...known]);
  const remembered = new Map<string, string>();
  return (word) => {
    if (right.has(word) || word.length < 4 || word.length > LONGEST_WORD) return word;
    const before = remembered.get(word);
    if (before !== undefined) return before;
    const found = nearestOf(word, targets);
    if (remembered.size < MOST_REMEMBERED) remembered.set(word, found);
    return found;
  };
}

const LONGEST_WORD = 24;
const MOST_REMEMBERED = 5_000;

function nearestOf(word: string, targets: readonly string[]): string {
  let best = word;
  let bestSlips = Number.POSITIVE_INFINITY;
  let isTied = false;
  for (const target of targets) {
    const allowed = Math.min(slipsAllowed(word), slipsAllowed(target));
    if (allowed === 0 || Math.abs(target.length - word.length) > allowed) continue;
    // A first letter is seldom mistyped, and a wrong one makes another word: "turned" and "burned".
    if (target[0] !== word[0] && !isSwappedHead(word, target)) continue;
    const slips = slipsBetween(word, target);
    if (slips > allowed || slips > bestSlips) continue;
    isTied = slips === bestSlips;
    if (slips < bestSlips) best = target;
    bestSlips = slips;
  }
  return isTied ? word : best;
}

function isSwappedHead(word: string, target: string): boolean {
  return word[0] === target[1] && word[1] === target[0];
}

function slipsAllowed(word: string): number {
  if (word.length < 4) return 0;
  return word.length < 8 ? 1 : 2;
}

/** Letters put in, left out, mistaken or swapped with a neighbour. */
export function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const differs = a[i - 1] === b[j - 1] ? 0 : 1;
      let slips = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + differs);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        slips = Math.min(slips, (beforeLast[j - 2] ?? 0) + 1);
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
