import { casual } from "chrono-node/en";
import { DateTime } from "luxon";

/** A phrase of day or time within a longer text. */
export interface FoundDate {
  readonly text: string;
  readonly index: number;
}

/** Only what names a day counts: "at 8" and "to 35" are figures of the question. */
const NAMES_A_DAY =
  /jan|feb|mar(?:ch)?\b|apr|\bmay\b|jun|jul|aug|sep|oct|nov|dec|mon|tue|wed|thu|fri|sat|sun|yesterday|today|tonight|ago|last|this|past|previous|week|month|year|morning|evening|\d{4}-\d{2}|\d{1,2}[/]\d{1,2}/i;
/** A month or weekday that is an ordinary word, too, unless something beside it says otherwise. */
const AMBIGUOUS = /^(?:may|march|mar|sun|sat|wed|mon|dec|second|sec)$/i;

/** Days and times named in a text, in order. */
export function findDates(now: number, zone: string): (text: string) => readonly FoundDate[] {
  const here = DateTime.fromMillis(now, { zone });
  return (text) =>
    // Cheap to see, and most questions name no day: the reader of dates is slow to wake.
    !NAMES_A_DAY.test(text)
      ? []
      : casual
          .parse(text.slice(0, 600), { instant: new Date(now), timezone: here.offset })
          .filter(({ text: found }) => NAMES_A_DAY.test(found))
          .filter(
            ({ text: found, index }) =>
              !AMBIGUOUS.test(found) || /\b(?:in|of|last|since|on|for|from|by) $/i.test(text.slice(0, index)),
          )
          .map(({ text: found, index }) => withoutFigure(found, index, text));
}

/** "20 today" and the "1 march" of "8.1 march" begin with a figure that is no part of the day. */
function withoutFigure(found: string, index: number, text: string): FoundDate {
  const isCut = /[\d.,]$/.test(text.slice(0, index));
  const figure =
    (isCut ? /^\d+\s+/ : /^\d+(?:[.,]\d+)?\s+(?=today|yesterday|tonight|this|last|now)/i).exec(found)?.[0] ??
    "";
  return { text: found.slice(figure.length), index: index + figure.length };
}
