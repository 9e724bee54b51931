import { parameter, unitText } from "../../src/core/log/parameters.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { findRecorded } from "../../src/core/questions/find-event.ts";
import type { Meaning } from "../../src/core/questions/meaning.ts";
import { summaryBetween } from "../../src/core/questions/record-summary.ts";
import { type Context, counted, type Reply, UserError } from "../../src/kit/index.ts";
import { ago } from "../../src/kit/tank-figures.ts";
import { readTimeSpan } from "../../src/kit/time-span.ts";
import { sayWhen } from "../../src/kit/when-option.ts";
import type { Reading } from "../../src/records/log.ts";
import type { Tank } from "../../src/records/tank.ts";
import { sayRequest } from "./words.ts";

const MOST_READINGS = 20_000;
const MOST_EVENTS = 5_000;

/** Questions that the record alone answers: the latest reading, a past one, when something was last done. */
export function fromRecord(
  meaning: Meaning,
  tank: Tank,
  context: Context,
): Omit<Reply, "kind" | "cautions" | "audience"> | undefined {
  const { intent, parameter: of } = meaning;
  if (intent === "latest" && of !== undefined) return latest(of, tank, context);
  if (intent === "value" && of !== undefined) return value(of, meaning.at ?? "", tank, context);
  if (intent === "last-event" && of !== undefined) return lastTest(of, tank, context);
  if (intent === "last-event") return lastEvent(meaning, tank, context);
  return undefined;
}

type Told = ReturnType<typeof fromRecord>;

function latest(of: NonNullable<Meaning["parameter"]>, tank: Tank, context: Context): Told {
  const reading = context.records.log.latest(tank.owner, tank.id, of);
  const title = `${tank.name}: ${parameter(of).name}`;
  if (reading === undefined) return nothing(title, `No ${parameter(of).name} is logged yet.`);
  return {
    ok: true,
    title,
    headline: reading.readAs,
    body: [`Logged ${whenOf(reading, context)}.`, `More: ${readingsOf(of, tank)}`],
  };
}

function lastTest(of: NonNullable<Meaning["parameter"]>, tank: Tank, context: Context): Told {
  const reading = context.records.log.latest(tank.owner, tank.id, of);
  const title = `${tank.name}: last ${parameter(of).name} test`;
  if (reading === undefined) return nothing(title, `No ${parameter(of).name} is logged yet.`);
  return {
    ok: true,
    title,
    headline: ago(reading.at, context.now),
    body: [
      `${sayWhen(reading.at, context.member, context.now)}: ${reading.readAs}.`,
      `More: ${readingsOf(of, tank)}`,
    ],
  };
}

function value(of: NonNullable<Meaning["parameter"]>, at: string, tank: Tank, context: Context): Told {
  const { records, member, now } = context;
  const span = readTimeSpan(at, member, now);
  if (span.kind !== "read")
    throw new UserError("bad-input", span.kind === "unreadable" ? span.message : span.question);
  const subject = parameter(of);
  const unit = unitText(subject);
  const readings = records.log
    .readings(tank.owner, tank.id, of, MOST_READINGS)
    .map((reading) => ({ at: Date.parse(reading.at), best: reading.best, reading }));
  const { inside, lowest, highest, median, before, after } = summaryBetween(
    readings,
    span.value.from,
    span.value.to,
  );
  const title = `${tank.name}: ${subject.name}, ${span.readAs}`;
  const told = (each: { readonly reading: Reading } | undefined, word: string): readonly string[] =>
    each === undefined ? [] : [`${word}: ${each.reading.readAs}, ${whenOf(each.reading, context)}.`];
  const more = `More: ${readingsOf(of, tank)}`;
  const [only] = inside;
  if (only === undefined || lowest === undefined || highest === undefined || median === undefined) {
    if (before === undefined && after === undefined)
      return nothing(title, `No ${subject.name} is logged yet.`);
    return {
      ok: true,
      title,
      headline: "Nothing logged then",
      body: [...told(before, "Last before"), ...told(after, "First after"), more],
    };
  }
  if (inside.length === 1)
    return {
      ok: true,
      title,
      headline: only.reading.readAs,
      body: [`Logged ${whenOf(only.reading, context)}.`, more],
    };
  return {
    ok: true,
    title,
    headline: `${showNumber(lowest.best, 3)} to ${showNumber(highest.best, 3)} ${unit}`.trim(),
    body: [
      `${counted(inside.length, "reading")}; half of them at or below ${`${showNumber(median, 3)} ${unit}`.trim()}.`,
      ...told(inside[0], "First"),
      ...told(inside.at(-1), "Last"),
      more,
    ],
  };
}

function lastEvent({ event, about }: Meaning, tank: Tank, context: Context): Told {
  if (event === undefined) return undefined;
  const events = context.records.log.events(tank.owner, tank.id, MOST_EVENTS);
  const found = findRecorded(events, event, about);
  const named = about === undefined ? event : `${event} (${about})`;
  const title = `${tank.name}: last ${named}`;
  if (found !== undefined)
    return {
      ok: true,
      title,
      headline: ago(found.at, context.now),
      body: [
        `${sayWhen(found.at, context.member, context.now)}: ${found.readAs}.`,
        `More: ${sayRequest("readings", tank.isDefault ? {} : { tank: tank.name })}`,
      ],
    };
  const other = about === undefined ? undefined : findRecorded(events, event, undefined);
  return nothing(
    title,
    other === undefined
      ? `No ${event} is logged yet. /log takes them in words, e.g. “wc 30 %” or “fed 40 g prawn”.`
      : `None with “${about}” is logged. The last ${event} of any kind: ${other.readAs}, ${ago(other.at, context.now)}.`,
  );
}

function nothing(title: string, line: string): Told {
  return { ok: true, title, headline: "Nothing logged", body: [line] };
}

function whenOf({ at }: Reading, { member, now }: Context): string {
  const when = sayWhen(at, member, now);
  return when === "just now" ? when : `${ago(at, now)} (${when})`;
}

function readingsOf(of: string, tank: Tank): string {
  return sayRequest("readings", { of, ...(tank.isDefault ? {} : { tank: tank.name }) });
}
