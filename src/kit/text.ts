/** Marks that change direction or show nothing; they hide what a text says, so none is kept. */
const INVISIBLE =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\ufffb]/g;

/** A member's text without control and invisible characters, trimmed. */
export function cleaned(text: string): string {
  return text.normalize("NFC").replace(INVISIBLE, "").trim();
}

/** A piece of a member's text, short enough to be said back, in quotation marks. */
export function quoted(text: string, longest = 40): string {
  const letters = [...cleaned(text).replace(/\s+/g, " ")];
  const shown = letters.length > longest ? `${letters.slice(0, longest).join("")}…` : letters.join("");
  return `“${shown}”`;
}

/** "a, b and c". */
export function listed(items: readonly string[], joiner = "and"): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} ${joiner} ${items[items.length - 1]}`;
}

/** "1 tank", "2 tanks". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** With a capital at the head of a sentence; "pH" and "mL" stay as chemists write them. */
export function capitalised(text: string): string {
  return /^\p{Ll}(?!\p{Lu})/u.test(text) ? text.slice(0, 1).toUpperCase() + text.slice(1) : text;
}
