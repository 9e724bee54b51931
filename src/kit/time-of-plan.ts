import { casual } from "chrono-node/en";
import { DateTime } from "luxon";
import { RULE_EXAMPLES, readRule } from "../core/plans/read-rule.ts";
import type { Rule } from "../core/plans/recurrence.ts";
import type { Read } from "../core/quantity/read.ts";
import type { Member } from "../records/member.ts";
import { calendarOf } from "./calendar.ts";
import { type Option, reading } from "./option.ts";
import { quoted } from "./text.ts";

/** When a plan says no time of day: at seven in the evening, when people are home. */
const USUAL_MINUTE = 19 * 60;
/** Clocks differ a little; what lies no further back than this is taken as now. */
const BACK_MS = 5 * 60_000;
const FURTHEST_YEARS = 3;
const DAY_MS = 86_400_000;

/** When a plan falls due: a repeating rule in words, or one moment still to come. */
export function planTimeOption(description: string): Option<Rule, true> {
  return reading(description, "every 7 days 19:00", (text, { member, now }) => {
    const calendar = calendarOf(member.zone);
    return readRule(text, calendar.local(now), USUAL_MINUTE) ?? once(text, member, now);
  });
}

function once(text: string, member: Member, now: number): Read<Rule> {
  const moment = readMoment(text, member, now);
  if (moment.kind !== "read") return moment;
  const { day, minute } = calendarOf(member.zone).local(moment.value);
  return { kind: "read", value: { kind: "once", day, minute }, readAs: moment.readAs };
}

/** A moment to come, or just now; milliseconds since 1970. */
export function readMoment(text: string, member: Member, now: number): Read<number> {
  if (/^now$/i.test(text.trim())) return { kind: "read", value: now, readAs: "now" };
  const here = DateTime.fromMillis(now, { zone: member.zone });
  const [found, ...others] = casual.parse(
    text.slice(0, 100),
    { instant: new Date(now), timezone: here.offset },
    { forwardDate: true },
  );
  if (
    found === undefined ||
    others.length > 0 ||
    found.end !== null ||
    found.text.length < text.trim().length / 2
  )
    return { kind: "unreadable", message: `${quoted(text)} is no time I can read. Try ${RULE_EXAMPLES}.` };
  const { start } = found;
  const part = (name: "year" | "month" | "day" | "hour" | "minute"): number => start.get(name) ?? 0;
  const hasTime = start.isCertain("hour") || /\bin \d|hour|minute/i.test(text);
  const day = DateTime.utc(part("year"), part("month"), part("day")).toMillis() / DAY_MS;
  if (!Number.isInteger(day))
    return {
      kind: "unreadable",
      message: `${quoted(text)} is no day of the calendar. Try ${RULE_EXAMPLES}.`,
    };
  const minute = hasTime ? part("hour") * 60 + part("minute") : USUAL_MINUTE;
  const at = calendarOf(member.zone).instant({ day, minute });
  const said = DateTime.fromMillis(at, { zone: member.zone }).toFormat("ccc d MMM yyyy, HH:mm", {
    locale: "en",
  });
  if (at < now - BACK_MS)
    return {
      kind: "unreadable",
      message: `${quoted(text)} would be ${said}, which has passed. Try ${RULE_EXAMPLES}.`,
    };
  if (at > here.plus({ years: FURTHEST_YEARS }).toMillis())
    return { kind: "unreadable", message: `${quoted(text)} would be ${said}: too far ahead to be meant.` };
  return { kind: "read", value: at, readAs: said };
}
