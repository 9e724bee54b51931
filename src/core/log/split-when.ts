import { EQUIPMENT } from "./read-event.ts";

/** A line with the words that say when cut off its end; what they mean is read elsewhere. */
export interface SplitLine {
  readonly line: string;
  readonly when?: string;
}

const MONTH =
  "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?";
const WEEKDAY = "(?:mon|tues?|wednes|thurs?|fri|satur|sun)(?:day)?|(?:wed|thu|sat)";
const CLOCK =
  "(?:(?:[01]?\\d|2[0-3])[:h][0-5]\\d(?: ?[ap]\\.?m\\.?)?|(?:0?[1-9]|1[0-2]) ?[ap]\\.?m\\.?|noon|midnight)";
const ISO = "\\d{4}-\\d{2}-\\d{2}(?:[t ]\\d{2}:\\d{2}(?::\\d{2})?z?)?";
const YEAR = "(?:,? \\d{4})?";
const PART = "(?:morning|noon|afternoon|evening|night)";
const DAY = [
  `(?:on )?${ISO}`,
  "(?:the )?day before yesterday",
  `(?:yesterday|today)(?: ${PART})?`,
  `(?:this|last) ${PART}`,
  "tonight|just now|right now|now",
  `(?:last|this|on) (?:${WEEKDAY})`,
  `(?:on )?(?:${WEEKDAY}) ${PART}`,
  `(?:on )?(?:the )?\\d{1,2}(?:st|nd|rd|th)? (?:of )?${MONTH}${YEAR}`,
  `(?:on )?${MONTH} \\d{1,2}(?:st|nd|rd|th)?${YEAR}`,
  "on \\d{1,2}[/.]\\d{1,2}(?:[/.]\\d{2,4})?",
  "(?:a|an|one|two|three|\\d{1,3}) (?:min(?:ute)?s?|hours?|hrs?|h|days?|d|weeks?) ago",
  "last week",
].join("|");
/** A day, a time, or both in either order. A clock alone needs "at" unless it shows minutes or am/pm. */
const PHRASE = `(?:(?:${DAY})(?:,? (?:at |@ ?)?${CLOCK})?|(?:at |@ ?)?${CLOCK}(?:,? (?:${DAY}))?)`;
const WHOLE = new RegExp(`^(${PHRASE})[ .]*$`, "i");
/** "heater on 3 May": the "on" belongs to the heater. */
const SWITCHED_ON = new RegExp(`\\b(?:${EQUIPMENT})(?: \\d)?$`, "i");
/** Longer than any phrase above; what stands further left is never looked at. */
const LONGEST_PHRASE = 60;

/**
 * Cuts a simple time phrase off the end of a typed line: "no3 20 yesterday 9pm", "wc 30% on 3 May",
 * "fed 2026-05-03 21:00". The words of a note belong to the note: "note glass cleaned today" keeps
 * "today" in its text as well as giving it back. Time linear in the length of the line.
 */
export function splitWhen(typed: string): SplitLine {
  const line = typed.replace(/\s+/g, " ").trim();
  const tailStart = Math.max(0, line.length - LONGEST_PHRASE);
  const cut = tailStart === 0 ? 0 : line.indexOf(" ", tailStart) + 1;
  if (tailStart > 0 && cut === 0) return { line };
  const tail = line.slice(cut);
  // The longest phrase is the one that begins at the earliest word.
  const starts = [0, ...[...tail.matchAll(/[ ,;]+/g)].map((gap) => gap.index + gap[0].length)];
  for (const start of starts) {
    const when = WHOLE.exec(tail.slice(start))?.[1];
    if (when === undefined) continue;
    const before = `${line.slice(0, cut)}${tail.slice(0, start)}`.replace(/[\s,;]+$/, "");
    if (/^on /i.test(when) && SWITCHED_ON.test(before)) {
      return { line: `${before} ${when.slice(0, 2)}`, when: when.slice(3) };
    }
    return /(?:^|[,;] ?)note\b[^,;]*$/i.test(before) ? { line, when } : { line: before, when };
  }
  return { line };
}
