/** Longest piece looked at as one sentence; what runs on longer is cut at a space. */
const LONGEST = 400;

/** A text cut where one thought ends and the next begins, so that a “no” reaches no further than it was meant. */
export function clausesOf(text: string): readonly string[] {
  return sentencesOf(text).flatMap((sentence) =>
    sentence
      .split(
        /(?:,|;|\s-\s|\bbut\b|\band\b|\byet\b|\balthough\b|\bthough\b|\bhowever\b|\bexcept\b|\bapart from\b|\bjust\b)+/i,
      )
      .map((clause) => clause.trim())
      .filter((clause) => clause !== ""),
  );
}

/** A text sentence by sentence; a figure's decimal point ends none. */
export function sentencesOf(text: string): readonly string[] {
  return text
    .split(/(?:[.!?…]+(?=\s|$)|[\n\r]+|:(?=\s))/)
    .flatMap(pieces)
    .map((piece) => piece.trim())
    .filter((piece) => piece !== "");
}

function pieces(sentence: string): readonly string[] {
  if (sentence.length <= LONGEST) return [sentence];
  const cut = sentence.lastIndexOf(" ", LONGEST);
  const at = cut < LONGEST / 2 ? LONGEST : cut;
  return [sentence.slice(0, at), ...pieces(sentence.slice(at))];
}
