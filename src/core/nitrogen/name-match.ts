/** Words of a name, singular, lower case. */
function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .split(" ")
    .filter(Boolean)
    .map((word) =>
      word.length > 3 && word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word,
    );
}

/**
 * Entries of a table that a member's words may mean: those in which every word stands, whole or as a
 * beginning; an entry whose very name it is comes alone.
 */
export function matching<K extends string>(
  typed: string,
  table: readonly { readonly key: K; readonly names: readonly string[] }[],
): readonly K[] {
  const wanted = wordsOf(typed);
  if (wanted.length === 0) return [];
  const exact = table.filter(({ names }) =>
    names.some((name) => wordsOf(name).join(" ") === wanted.join(" ")),
  );
  if (exact.length > 0) return exact.map(({ key }) => key);
  return table
    .filter(({ names }) =>
      names.some((name) => {
        const have = wordsOf(name);
        return wanted.every((word) =>
          have.some((each) => each === word || (word.length >= 3 && each.startsWith(word))),
        );
      }),
    )
    .map(({ key }) => key);
}

/** A list as members write one: parted by semicolons, commas or line ends; a comma inside a number stays. */
export function partsOf(text: string): readonly string[] {
  return text
    .split(/;|\n|,(?!\d)/)
    .map((part) => part.trim())
    .filter(Boolean);
}

/** The whole list with one part put in another way. */
export function withPart(parts: readonly string[], index: number, text: string): string {
  return parts.map((part, at) => (at === index ? text : part)).join("; ");
}
