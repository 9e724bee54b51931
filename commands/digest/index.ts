import { DateTime } from "luxon";
import { PARAMETERS, unitText } from "../../src/core/log/parameters.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
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
import { momentOf, type TrendRecord, tankEvents, trendRecord } from "../../src/kit/trend-record.ts";
import { pause } from "../../src/kit/unhurried.ts";
import { showRange, wantedRange } from "../../src/kit/wanted-range.ts";
import type { Tank } from "../../src/records/tank.ts";
import { digestChart } from "./chart.ts";
import { doneLine, overdueLines } from "./doings.ts";
import { type Finding, figureOf, findingOf, showMark, spanOf } from "./findings.ts";

const DAYS = 30;
const DAY_MS = 86_400_000;

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
      chart: digestChart(findings, out, dated, from, DAYS, context),
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
