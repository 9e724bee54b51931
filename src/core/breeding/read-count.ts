import type { Read } from "../quantity/read.ts";
import type { Count } from "./ledger/facts.ts";

/** A count as typed: a number with how it is known, or scoops to be reckoned up. */
export type CountEntry =
  | { readonly kind: "number"; readonly count: Count }
  | { readonly kind: "scoops"; readonly counts: readonly number[]; readonly scoopML: number };

const WHOLE = String.raw`\d{1,3}(?:[ ,.'’]\d{3})+|\d+`;
const EXAMPLES = "“131”, “about 500”, “400-600” or scoops as “4 7 5 in 10 mL”";
/** A bare guess may be this far off, as a share either way. Source: assumption. */
const GUESS_REACH = 0.5;
const MOST = 1e9;
const MOST_SCOOPS = 60;

/** Reads what was counted: exactly, in scoops, or by eye. */
export function readCountEntry(text: string): Read<CountEntry> {
  const typed = text.trim().toLowerCase();
  const scoops =
    /^([\d\s,;+and]+?)\s*(?:in|x|×|per|of|@)\s*(\d+(?:[.,]\d+)?)\s*(ml|l|litres?|liters?|millilit(?:re|er)s?)(?:\s*(?:each|scoops?))?$/.exec(
      typed,
    );
  if (scoops !== null) return readScoops(scoops[1] ?? "", scoops[2] ?? "", scoops[3] ?? "");
  const range = new RegExp(String.raw`^(${WHOLE})\s*(?:-|–|—|to)\s*(${WHOLE})$`).exec(typed);
  if (range !== null) {
    const [a, b] = [wholeOf(range[1]), wholeOf(range[2])];
    return judged({ best: Math.round((a + b) / 2), low: Math.min(a, b), high: Math.max(a, b), how: "guess" });
  }
  const single = new RegExp(String.raw`^(about|around|roughly|ca\.?|~|≈|guess(?:ed)?)?\s*(${WHOLE})$`).exec(
    typed,
  );
  if (single === null)
    return { kind: "unreadable", message: `That is not a count I can read. Try ${EXAMPLES}.` };
  const number = wholeOf(single[2]);
  return single[1] === undefined
    ? judged({ best: number, low: number, high: number, how: "exact" })
    : judged({
        best: number,
        low: Math.floor(number * (1 - GUESS_REACH)),
        high: Math.ceil(number * (1 + GUESS_REACH)),
        how: "guess",
      });
}

function readScoops(list: string, volume: string, unit: string): Read<CountEntry> {
  const parts = list.split(/[\s,;+]+|and/).filter((part) => part !== "");
  const counts = parts.map(Number);
  const scoopML = Number(volume.replace(",", ".")) * (unit.startsWith("l") ? 1000 : 1);
  if (
    counts.length === 0 ||
    counts.length > MOST_SCOOPS ||
    counts.some((count) => !Number.isInteger(count) || count > MOST) ||
    !(scoopML > 0 && scoopML <= 1e6)
  )
    return { kind: "unreadable", message: `Those are not scoops I can read. Try ${EXAMPLES}.` };
  return {
    kind: "read",
    value: { kind: "scoops", counts, scoopML },
    readAs: `${counts.length} ${counts.length === 1 ? "scoop" : "scoops"} of ${scoopML} mL: ${counts.join(", ")}`,
  };
}

function judged(count: Count): Read<CountEntry> {
  if (count.high > MOST)
    return { kind: "unreadable", message: `That is more than can be meant. Try ${EXAMPLES}.` };
  return { kind: "read", value: { kind: "number", count }, readAs: sayCount(count) };
}

function wholeOf(text: string | undefined): number {
  return Number((text ?? "").replace(/\D/g, ""));
}

/** "131, counted", "about 500 (250–750), guessed". */
export function sayCount({ best, low, high, how }: Count): string {
  const say = (value: number): string => Math.round(value).toLocaleString("en");
  const range = Math.round(low) === Math.round(high) ? "" : ` (${say(low)}–${say(high)})`;
  const words = { exact: "counted", subsample: "from scoops", guess: "guessed" } as const;
  return `${how === "exact" ? "" : "about "}${say(best)}${range}, ${words[how]}`;
}
