import { clockText } from "../../src/core/plans/calendar.ts";
import {
  choice,
  defineCommand,
  optional,
  quoted,
  type Reply,
  reading,
  UserError,
} from "../../src/kit/index.ts";
import type { ReminderWishes } from "../../src/records/plan.ts";
import { plainReply } from "./shared.ts";

type Quiet = Pick<ReminderWishes, "quietFrom" | "quietUntil">;

/** "22:00-7:00", "10pm to 7am", "never". */
const quiet = reading<Quiet>("Hours without reminders, e.g. 22:00-7:00; or never", "22:00-7:00", (text) => {
  if (/^(?:never|none|off)$/i.test(text))
    return { kind: "read", value: { quietFrom: 0, quietUntil: 0 }, readAs: "never quiet" };
  const [from, until] = text.split(/\s*(?:-|–|to|until)\s*/i).map(minuteOf);
  return from === undefined || until === undefined || from === until
    ? { kind: "unreadable", message: `${quoted(text)} are no two times of day. Try “22:00-7:00” or “never”.` }
    : {
        kind: "read",
        value: { quietFrom: from, quietUntil: until },
        readAs: `${clockText(from)}–${clockText(until)}`,
      };
});

function minuteOf(text: string): number | undefined {
  const [, hourText, minuteText = "0", half] =
    /^(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)?$/i.exec(text.trim()) ?? [];
  if (hourText === undefined) return undefined;
  const hour = half === undefined ? Number(hourText) : (Number(hourText) % 12) + (/pm/i.test(half) ? 12 : 0);
  const minute = Number(minuteText);
  return hour > 23 || minute > 59 ? undefined : 60 * hour + minute;
}

const PLACES = ["direct message", "direct message only", "here"] as const;

export default defineCommand({
  name: "remind",
  summary: "Where and when you are reminded: by direct message or here, and quiet hours",
  options: {
    where: optional(choice("By direct message, or in the channel or thread where you type this", PLACES)),
    quiet: optional(quiet),
  },
  examples: ["/plan remind", "/plan remind where:here", "/plan remind quiet:22:00-7:00"],
  run({ where, quiet: hours }, context): Reply {
    const { records, member, request } = context;
    const before = records.plans.wishes(member.id);
    if (where !== undefined || hours !== undefined)
      records.plans.setWishes(member.id, { ...placeOf(where, request.place, before), ...(hours ?? {}) });
    const { place, fallback, quietFrom, quietUntil } = records.plans.wishes(member.id);
    return plainReply(
      "Your reminders",
      [
        place === "dm"
          ? `They come by direct message${fallback === undefined ? "" : "; if yours are closed, in the channel where you planned"}.`
          : "They come in the channel you chose. Whoever reads there can read them; only you can answer them.",
        quietFrom === quietUntil
          ? "At any hour."
          : `Quiet from ${clockText(quietFrom)} to ${clockText(quietUntil)}: what falls due then comes gathered afterwards. Only what is off for six hours or less and must come back is asked for all the same.`,
        `By the clock of ${member.zone}. In the terminal they stand there when it opens.`,
      ],
      context,
    );
  },
});

function placeOf(
  where: (typeof PLACES)[number] | undefined,
  here: string | undefined,
  before: ReminderWishes,
): ReminderWishes {
  const { quietFrom, quietUntil } = before;
  switch (where) {
    case undefined:
      return before;
    case "direct message":
      return { place: "dm", quietFrom, quietUntil, ...(here === undefined ? {} : { fallback: here }) };
    case "direct message only":
      return { place: "dm", quietFrom, quietUntil };
    case "here":
      if (here === undefined)
        throw new UserError("not-now", "Type it in the channel or thread of a server: there is none here.");
      return { place: here, quietFrom, quietUntil };
  }
}
