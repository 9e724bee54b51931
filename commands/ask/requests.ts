import { type ParameterId, parameter } from "../../src/core/log/parameters.ts";
import { findEventWord } from "../../src/core/questions/events.ts";
import { findRecorded } from "../../src/core/questions/find-event.ts";
import type { Meaning } from "../../src/core/questions/meaning.ts";
import { summaryBetween } from "../../src/core/questions/record-summary.ts";
import { logLine } from "../../src/core/questions/rules-of-talk.ts";
import { findCommand } from "../../src/kit/command.ts";
import { type Context, counted } from "../../src/kit/index.ts";
import { readTimeSpan } from "../../src/kit/time-span.ts";
import type { Tank } from "../../src/records/tank.ts";

/** Another command's request that answers a question, with what has to be said beside it. */
export interface Equivalent {
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  readonly remarks: readonly string[];
}

/** Events to look through for the one meant. */
const MOST_EVENTS = 5_000;
const MOST_READINGS = 20_000;

type Build = (
  meaning: Meaning,
  tank: Tank | undefined,
  context: Context,
) => Omit<Equivalent, "options"> & {
  readonly options: Readonly<Record<string, string | undefined>>;
};

const plain = (path: string, options: Readonly<Record<string, string | undefined>>) => ({
  path,
  options,
  remarks: [],
});

const BUILDS: Readonly<Partial<Record<Meaning["intent"], Build>>> = {
  trend: ({ parameter: of, since }, tank, context) => {
    const found = since === undefined ? undefined : eventSince(since, tank, context);
    const isWeighed = of === "nitrate" || of === "phosphate";
    const isTold = since === undefined || (isWeighed && found !== undefined);
    return {
      path: "trend",
      options: { of, since: isWeighed ? found : undefined },
      remarks:
        isTold || of === undefined
          ? []
          : [...readingsSince(of, since, tank, context), "The trend below is of the whole recent record."],
    };
  },
  effect: ({ parameter: of, event, about }, tank, context) => {
    const events = tank === undefined ? [] : context.records.log.events(tank.owner, tank.id, MOST_EVENTS);
    const found = event === undefined ? undefined : findRecorded(events, event, about);
    return plain("trend", { of, since: found?.readAs ?? about ?? event });
  },
  until: ({ parameter: of, limit }) => plain("trend", { of, limit }),
  "salt-mix": ({ quantities: q }) => plain("salt mix", { volume: q?.["volume"], salinity: q?.["salinity"] }),
  "salt-convert": ({ quantities: q }) => plain("salt convert", { salinity: q?.["salinity"] }),
  "salt-adjust": ({ quantities: q }) => plain("salt adjust", { from: q?.["from"], to: q?.["to"] }),
  "top-off": ({ quantities: q }) =>
    plain("salt topoff", { evaporated: q?.["evaporated"], full: q?.["full"], now: q?.["now"] }),
  "change-plan": ({ quantities: q, parameter: of }, tank, context) =>
    plain("change plan", {
      now: level(q?.["now"], of) ?? latestLevel(of, tank, context),
      target: level(q?.["target"], of),
      each: q?.["each"],
    }),
  "change-effect": ({ quantities: q, parameter: of }, tank, context) =>
    plain("change effect", {
      now: level(q?.["now"], of) ?? latestLevel(of, tank, context),
      size: q?.["size"],
    }),
  dilute: ({ quantities: q }) =>
    plain("dose dilute", { target: q?.["target"], volume: q?.["volume"], stock: q?.["stock"] }),
  "stocking-load": () => plain("stocking load", {}),
  "stocking-add": ({ quantities: q }) => plain("stocking add", { animal: animalText(q?.["animal"]) }),
  volume: () => plain("tank show", {}),
  ammonia: ({ quantities: q }) =>
    plain("ammonia check", {
      reading: q?.["reading"],
      ph: q?.["ph"],
      temperature: q?.["temperature"],
      salinity: q?.["salinity"],
    }),
  "oxygen-full": ({ quantities: q }) =>
    plain("oxygen full", { temperature: q?.["temperature"], salinity: q?.["salinity"] }),
  "oxygen-reading": ({ quantities: q }) =>
    plain("oxygen reading", {
      reading: q?.["reading"],
      temperature: q?.["temperature"],
      salinity: q?.["salinity"],
    }),
  "oxygen-budget": () => plain("oxygen budget", {}),
  convert: ({ quantities: q }) => plain("convert", { quantity: q?.["amount"], to: q?.["to"] }),
  log: ({ quantities: q }) =>
    plain("log", { line: q?.["line"] === undefined ? undefined : logLine(q["line"]) }),
  help: () => plain("help", {}),
};

/** The request that answers this meaning, when there is a command for it. */
export function equivalentOf(
  meaning: Meaning,
  tank: Tank | undefined,
  context: Context,
): Equivalent | undefined {
  const built = BUILDS[meaning.intent]?.(meaning, tank, context);
  if (built === undefined) return undefined;
  const command = findCommand(context.commands, built.path);
  if (command === undefined) return undefined;
  const options = { ...built.options, ...(meaning.tank === undefined ? {} : { tank: meaning.tank }) };
  return {
    ...built,
    options: Object.fromEntries(
      Object.entries(options).flatMap(([name, text]) =>
        text === undefined || !Object.hasOwn(command.options, name) ? [] : [[name, text] as const],
      ),
    ),
  };
}

/** The logged event behind "since I added the trigger", in the words of the log. */
function eventSince(since: string, tank: Tank | undefined, { records }: Context): string | undefined {
  const found = findEventWord(since);
  if (found === undefined || tank === undefined) return undefined;
  const events = records.log.events(tank.owner, tank.id, MOST_EVENTS);
  return findRecorded(events, found.event, found.about)?.readAs;
}

/** What was read from a day on, when it is a day that was named. */
function readingsSince(
  of: ParameterId,
  since: string,
  tank: Tank | undefined,
  { records, member, now }: Context,
): readonly string[] {
  const span = readTimeSpan(since, member, now);
  if (tank === undefined || span.kind !== "read")
    return [`“${since}” is neither a logged event nor a day I can read.`];
  const readings = records.log
    .readings(tank.owner, tank.id, of, MOST_READINGS)
    .map((reading) => ({ at: Date.parse(reading.at), best: reading.best, readAs: reading.readAs }));
  const { inside, before } = summaryBetween(readings, span.value.from, now + 1);
  const first = before ?? inside[0];
  const last = inside.at(-1);
  if (first === undefined || last === undefined) return [`Nothing of it was logged since ${since}.`];
  return [
    `${/^(?:last|past) /.test(since) ? "In the" : "Since"} ${since}: ${counted(inside.length, "reading")}, from ${first.readAs} to ${last.readAs}.`,
  ];
}

/** A bare figure in the unit it is logged in, where there is only one such habit. */
function level(text: string | undefined, of: Meaning["parameter"]): string | undefined {
  if (text === undefined || of === undefined || !/\d$/.test(text)) return text;
  const { unit } = parameter(of);
  return unit === "mg/L" ? `${text} mg/L` : text;
}

function latestLevel(
  of: Meaning["parameter"],
  tank: Tank | undefined,
  { records }: Context,
): string | undefined {
  if (of === undefined || tank === undefined) return undefined;
  const { unit } = parameter(of);
  const reading = records.log.latest(tank.owner, tank.id, of);
  return reading === undefined || unit !== "mg/L" ? undefined : `${reading.best} mg/L`;
}

/** The stocking commands read "1 triggerfish 12 cm". */
function animalText(animal: string | undefined): string | undefined {
  if (animal === undefined) return undefined;
  const [, count = "1", length, name] =
    /^(?:(\d+) (?!(?:cm|mm|in|inch(?:es)?)\b))?(?:([\d.]+ ?(?:cm|mm|in|inch(?:es)?)) )?(.+)$/.exec(animal) ??
    [];
  return [count, name, length].filter(Boolean).join(" ");
}
