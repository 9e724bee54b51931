import { DateTime } from "luxon";
import { habitOf } from "../../src/core/log/habit.ts";
import { PARAMETERS, unitText } from "../../src/core/log/parameters.ts";
import { replacedShare } from "../../src/core/log/replaced-since.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import type { ChartSpec } from "../../src/kit/chart.ts";
import {
  type Context,
  counted,
  defineCommand,
  listed,
  optional,
  type Reply,
  tankInMind,
  tankOption,
  UserError,
} from "../../src/kit/index.ts";
import { spark } from "../../src/kit/spark.ts";
import { endsOf } from "../../src/kit/trend-chart.ts";
import {
  type DatedEvent,
  dayOf,
  momentOf,
  type TrendRecord,
  tankEvents,
  trendRecord,
} from "../../src/kit/trend-record.ts";
import { pause } from "../../src/kit/unhurried.ts";
import { showRange, wantedRange } from "../../src/kit/wanted-range.ts";
import type { Tank } from "../../src/records/tank.ts";
import { type Finding, figureOf, findingOf, showMark, spanOf } from "./findings.ts";

const DAYS = 30;
const DAY_MS = 86_400_000;
/** As many small charts as one picture holds. */
const MOST_PANELS = 8;

export default defineCommand({
  name: "digest",
  summary: "A tank's last 30 days on one page: readings, what left its range, what is overdue",
  options: { tank: optional(tankOption()) },
  examples: ["/digest", "/digest tank:Lagoon"],
  async run({ tank: given }, context): Promise<Reply> {
    const tank = tankInMind(given, undefined, context);
    if (tank === undefined)
      throw new UserError("not-found", "You keep no tank here yet. Describe one with /tank add.");
    const records = await recordsOf(tank, context);
    const from = DateTime.fromMillis(context.now).minus({ days: DAYS }).toMillis();
    const findings: Finding[] = [];
    for (const record of records) {
      const finding = findingOf(record, wantedRange(record.parameter, tank, context), from);
      if (finding !== undefined) findings.push(finding);
      await pause();
    }
    const out = findings.filter(({ place }) => place === "above" || place === "below");
    const dated = records[0]?.dated ?? [];
    const overdue = overdueLines(records, dated, context.now);
    const base = {
      kind: "reply" as const,
      ok: true,
      title: `${tank.name}: the last ${DAYS} days`,
      cautions: [],
      audience: context.audience,
    };
    const done = doneLine(dated.filter(({ at }) => momentOf(at) >= from));
    if (findings.length === 0)
      return {
        ...base,
        ok: overdue.length > 0,
        ...(overdue.length === 0
          ? {}
          : { headline: `Nothing tested in ${DAYS} days; ${overdue.length} overdue` }),
        body: [
          `No reading was logged in ${DAYS} days. /log takes one, e.g. “no3 20, temp 25.5”.`,
          ...done,
          ...overdue,
        ],
      };
    return {
      ...base,
      headline: headline(findings, out, overdue),
      body: [
        ...out.map((finding) => outLine(finding, context)),
        ...findings.flatMap(({ heading }) => (heading === undefined ? [] : [`Heading: ${heading}`])),
        ...overdue,
        ...done,
        "/trend tells more of any of them; /target sets the ranges.",
      ],
      table: {
        columns: ["what", "last", `${DAYS} days`, "low–high", "wanted"],
        rows: findings.map((finding) => rowOf(finding)),
      },
      chart: chartOf(findings, out, dated, from, context),
    };
  },
});

/** One record for everything ever tested in the tank, the rest left out. */
async function recordsOf(tank: Tank, context: Context): Promise<readonly TrendRecord[]> {
  const events = tankEvents(tank, context);
  const records: TrendRecord[] = [];
  for (const subject of PARAMETERS) {
    if (context.records.log.latest(tank.owner, tank.id, subject.id) === undefined) continue;
    records.push(trendRecord(subject, tank, 0, context, events));
    await pause();
  }
  return records;
}

function headline(findings: readonly Finding[], out: readonly Finding[], overdue: readonly string[]): string {
  const judged = findings.filter(({ wanted }) => wanted !== undefined).length;
  const place =
    out.length === 0
      ? `Nothing out of range, of ${counted(judged, "thing")} tested`
      : `Out of range: ${listed(out.map(({ record }) => record.parameter.name))}`;
  return overdue.length === 0 ? place : `${place}; ${overdue.length} overdue`;
}

function outLine({ record, marks, wanted, place, since }: Finding, { member, now }: Context): string {
  const last = marks.at(-1);
  const value = last === undefined ? "" : showMark(last, three);
  const range = wanted === undefined ? "" : `wanted ${showRange(wanted, record.parameter)}, ${wanted.from}`;
  const day = DateTime.fromMillis(since, { zone: member.zone });
  const days = Math.floor((now - since) / DAY_MS);
  return `${record.parameter.name} is ${place} its range: ${value} (${range}), since ${day.toFormat("d MMM", { locale: "en" })}${days > 0 ? `, ${counted(days, "day")} ago` : ""}.`;
}

function rowOf({ record, marks, wanted, place }: Finding): readonly string[] {
  const { parameter } = record;
  const span = spanOf(marks);
  const last = marks.at(-1);
  const unit = unitText(parameter);
  const flag = place === "above" ? " ▲" : place === "below" ? " ▼" : "";
  return [
    unit === "" ? parameter.name : `${parameter.name}, ${parameter.unit}`,
    `${last === undefined ? "" : showMark(last, three)}${flag}`,
    spark(marks.map(figureOf)),
    `${three(span.low)}–${three(span.high)}`,
    wanted === undefined ? "" : showRange(wanted, { ...parameter, unit: "pH" }),
  ];
}

function three(value: number): string {
  return showNumber(value, 3);
}

/** Kinds of events that are looked for as habits, in the words for them. */
const HABITS: Readonly<Partial<Record<DatedEvent["kind"], string>>> = {
  "water change": "water change",
  harvest: "harvest",
  "media change": "media change",
  dose: "dose",
  feeding: "feeding",
};

function overdueLines(
  records: readonly TrendRecord[],
  dated: readonly DatedEvent[],
  now: number,
): readonly string[] {
  const today = now / DAY_MS;
  const doings = [
    ...Object.entries(HABITS).map(([kind, name]) => ({
      name,
      times: dated.filter((each) => each.kind === kind).map(({ at }) => at),
    })),
    ...records.map(({ parameter, readings }) => ({
      name: `${parameter.name} test`,
      times: readings.map(({ at }) => at),
    })),
  ];
  return doings.flatMap(({ name, times }) => {
    const habit = habitOf(times, today);
    return habit?.isOverdue === true
      ? [
          `Overdue: ${name}, last ${counted(Math.round(habit.sinceDays), "day")} ago; it used to be every ${showNumber(habit.everyDays, 2)} days.`,
        ]
      : [];
  });
}

/** "Done: 3 water changes (66 % of the water in all), 1 harvest." */
function doneLine(dated: readonly DatedEvent[]): readonly string[] {
  const kinds = [...new Set(dated.map(({ kind }) => kind))].filter((kind) => kind !== "note");
  const shares = dated.flatMap(({ event }) => (event.kind === "water change" ? [event.fraction] : []));
  const said = kinds.map((kind) => {
    const count = counted(
      dated.filter((each) => each.kind === kind).length,
      kind,
      PLURAL[kind] ?? `${kind}s`,
    );
    return kind === "water change" && shares.length > 0
      ? `${count} (${showNumber(replacedShare(shares) * 100, 2)} % of the water in all)`
      : count;
  });
  return said.length === 0 ? [] : [`Done: ${listed(said)}.`];
}

const PLURAL: Readonly<Partial<Record<DatedEvent["kind"], string>>> = {
  "livestock in": "times livestock in",
  "livestock out": "times livestock out",
  "equipment on": "times equipment on",
  "equipment off": "times equipment off",
};

function chartOf(
  findings: readonly Finding[],
  out: readonly Finding[],
  dated: readonly DatedEvent[],
  from: number,
  { now, member }: Context,
): ChartSpec {
  // What left its range comes first when there is not room for all.
  const shown =
    findings.length <= MOST_PANELS ? findings : [...new Set([...out, ...findings])].slice(0, MOST_PANELS);
  const names = listed(shown.map(({ record }) => record.parameter.name));
  return {
    altText: `The last ${DAYS} days of ${names}. ${out.length === 0 ? "Nothing is out of its range." : `Out of range: ${listed(out.map(({ record, place }) => `${record.parameter.name} (${place})`))}.`}`,
    from,
    until: now,
    now,
    zone: member.zone,
    events: dated
      .filter(({ at, event }) => event.kind === "water change" && at >= dayOf(new Date(from).toISOString()))
      .map(({ at }) => ({ at: momentOf(at), label: "change" })),
    panels: shown.map(({ record, marks, wanted }) => {
      const unit = unitText(record.parameter);
      return {
        axisTitle: unit === "" ? record.parameter.name : `${record.parameter.name}, ${unit}`,
        series: [{ name: "readings", marks }],
        forecasts: [],
        ...(wanted === undefined ? {} : { target: endsOf(wanted) }),
      };
    }),
  };
}
