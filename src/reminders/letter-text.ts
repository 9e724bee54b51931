import { DateTime } from "luxon";
import { sayMoment } from "../kit/calendar.ts";
import { listed } from "../kit/text.ts";
import type { Letter, LetterItem } from "../records/plan.ts";

/** Later than this, a reminder says so. */
const LATE_MS = 15 * 60_000;
const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** What a letter says, as plain data; a front decides how it looks. */
export interface LetterText {
  readonly title: string;
  readonly paragraphs: readonly string[];
  readonly cautions: readonly string[];
  /** What can be answered with buttons. */
  readonly answerable: readonly {
    readonly dutyId: number;
    readonly title: string;
    /** What has to come back is not skipped. */
    readonly mayBeSkipped: boolean;
  }[];
}

/** Everything due for one member at one time, gathered into one message. */
export function letterText(letter: Letter, now: number): LetterText {
  const { items, zone } = letter;
  const answerable = items.filter(({ duty }) => duty.half !== "notice");
  const [only] = items;
  const isSeveralTanks = new Set(items.map(({ tank }) => tank)).size > 1;
  const title =
    items.length === 1 && only !== undefined
      ? `${only.tank}: ${headOf(only)}`
      : `${isSeveralTanks ? "" : `${only?.tank ?? ""}: `}${items.length} reminders`;
  return {
    title,
    paragraphs: items.map((item) =>
      [
        ...(items.length === 1 ? [] : [`${isSeveralTanks ? `${item.tank}: ` : ""}${headOf(item)}`]),
        ...item.duty.words.lines,
        ...dueLine(item, zone, now),
      ].join("\n"),
    ),
    cautions: [...new Set(items.flatMap(({ duty }) => duty.words.cautions.map(({ text }) => text)))],
    answerable: answerable.map(({ duty }) => ({
      dutyId: duty.id,
      title: duty.words.title,
      mayBeSkipped: duty.half !== "back",
    })),
  };
}

function headOf({ duty }: LetterItem): string {
  const { title, because } = duty.words;
  if (duty.half !== "back") return title;
  return because === undefined ? title : `${title} (it was off: ${because})`;
}

function dueLine({ duty, missed }: LetterItem, zone: string, now: number): readonly string[] {
  if (duty.half === "notice") return [];
  const at = Date.parse(duty.dueAt);
  const late = now - at > LATE_MS ? `; this is ${lateness(now - at)} late` : "";
  const earlier =
    missed.length === 0
      ? []
      : [`Missed before it: ${listed(missed.map((each) => sayMoment(Date.parse(each), zone, now)))}.`];
  const repeat = duty.half === "back" ? ["I ask again until you say it is back on."] : [];
  return [`Due ${sayMoment(at, zone, now)}${late}.`, ...earlier, ...repeat];
}

function lateness(ms: number): string {
  if (ms < 2 * HOUR_MS) return `${Math.round(ms / 60_000)} minutes`;
  if (ms < 2 * DAY_MS) return `${Math.round(ms / HOUR_MS)} hours`;
  return `${Math.round(ms / DAY_MS)} days`;
}

/** Until when quiet hours last at that moment; undefined when it is not quiet. */
export function quietUntil(
  wishes: { readonly quietFrom: number; readonly quietUntil: number },
  zone: string,
  now: number,
): number | undefined {
  const { quietFrom: from, quietUntil: until } = wishes;
  const here = DateTime.fromMillis(now, { zone });
  const minute = here.hour * 60 + here.minute;
  const isQuiet =
    from < until ? minute >= from && minute < until : from !== until && (minute >= from || minute < until);
  if (!isQuiet) return undefined;
  const ends = here.startOf("day").set({ hour: Math.floor(until / 60), minute: until % 60 });
  return (minute < until ? ends : ends.plus({ days: 1 })).toMillis();
}
