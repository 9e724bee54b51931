import type { Read } from "../quantity/read.ts";
import { partsOf, withPart } from "./name-match.ts";

const MOST_PARTS = 40;

/** Reads a list part by part; the first doubtful part is asked about, with the rest kept as typed. */
export function readList<T>(
  typed: string,
  examples: string,
  readPart: (part: string) => Read<T>,
): Read<readonly T[]> {
  const parts = partsOf(typed);
  if (parts.length === 0)
    return { kind: "unreadable", message: `There is nothing in that list. Try ${examples}.` };
  if (parts.length > MOST_PARTS)
    return {
      kind: "unreadable",
      message: `That list has ${parts.length} entries; at most ${MOST_PARTS} fit.`,
    };
  const values: T[] = [];
  const said: string[] = [];
  for (const [index, part] of parts.entries()) {
    const read = readPart(part);
    if (read.kind === "unreadable") return read;
    if (read.kind === "ask")
      return {
        ...read,
        choices: read.choices.map((choice) => ({ ...choice, text: withPart(parts, index, choice.text) })),
      };
    values.push(read.value);
    said.push(read.readAs);
  }
  return { kind: "read", value: values, readAs: said.join("; ") };
}
