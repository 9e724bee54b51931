import { guessColumns, missingColumns, settleColumns } from "../src/interchange/columns.ts";
import {
  type BadRow,
  type ColumnQuestion,
  type ImportedRows,
  importReadings,
} from "../src/interchange/import-readings.ts";
import { type DayOrder, dayOrderOf } from "../src/interchange/moments.ts";
import { readTable, type Table } from "../src/interchange/table.ts";
import { fileOption } from "../src/kit/file-option.ts";
import {
  type Context,
  counted,
  defineCommand,
  type Outcome,
  optional,
  type Question,
  type Reply,
  tankOption,
  UserError,
  words,
} from "../src/kit/index.ts";
import type { NewReading } from "../src/records/log.ts";
import type { Tank } from "../src/records/tank.ts";
import { ownTank } from "./tank/shared.ts";

/** Bad rows told in the chat; a file holds them all. */
const SHOWN_BAD = 8;

export default defineCommand({
  name: "import",
  summary: "Bring readings in from a table: CSV or JSON, tried out before anything is kept",
  options: {
    file: fileOption("The table; its first line names the columns: date, nitrate, pH, …"),
    tank: optional(tankOption()),
    columns: optional(
      words(
        "What a column holds, if guessed wrongly, e.g. no3=nitrate mg/L; remarks=ignore",
        "no3=nitrate mg/L",
        500,
      ),
    ),
  },
  examples: ["/import file:readings.csv tank:Lagoon"],
  isSlow: true,
  async run(input, context): Promise<Outcome> {
    const tank = ownTank(input.tank, context);
    const table = readTable(input.file.name, input.file.content);
    if ("problem" in table) throw new UserError("bad-input", `${input.file.name}: ${table.problem}`);
    const columns = settleColumns(table.columns, guessColumns(table.columns), input.columns ?? "");
    if ("problem" in columns) throw new UserError("bad-input", columns.problem);
    const missing = missingColumns(columns);
    if (missing !== undefined)
      throw new UserError("bad-input", `${missing} The columns are: ${table.columns.join(", ")}.`);
    const order = orderOf(
      table,
      columns.findIndex(({ kind }) => kind === "moment" || kind === "date"),
      context,
    );
    if (order === undefined) return dayOrderQuestion();
    const read = await importReadings(table, columns, {
      zone: context.member.zone,
      order,
      habits: context.member.habits,
      now: context.now,
    });
    if (read.kind === "ask") return columnQuestion(read, input.columns);
    const fresh = unknown(read.readings, tank, context);
    const told = columns.flatMap((column, index) =>
      column.kind === "ignored"
        ? []
        : [`${table.columns[index]} → ${column.kind === "parameter" ? column.parameter.name : column.kind}`],
    );
    if (fresh.length === 0) return nothing(tank, read, context);
    if (context.request.answers["import"] === undefined)
      return confirmation(tank, read, fresh, told, context);
    if (context.request.answers["import"] !== "yes")
      return {
        kind: "reply",
        ok: true,
        title: `${tank.name}: nothing imported`,
        body: ["All is as it was."],
        cautions: [],
        audience: context.audience,
      };
    return write(tank, input.file, fresh, read.bad, context);
  },
});

function orderOf(table: Table, column: number, { request }: Context): DayOrder | undefined {
  const found = dayOrderOf(table.rows.map((row) => row.cells[column] ?? ""));
  if (found !== "unclear") return found ?? "day first";
  const answer = request.answers["day order"];
  return answer === "day first" || answer === "month first" ? answer : undefined;
}

function dayOrderQuestion(): Question {
  return {
    ...ASKED,
    text: "Which comes first in this file's dates, the day or the month?",
    choices: (["day first", "month first"] as const).map((order) => ({
      label: order,
      settle: { answers: { "day order": order } },
    })),
  };
}

function columnQuestion(
  { heading, question, choices }: ColumnQuestion,
  before: string | undefined,
): Question {
  return {
    ...ASKED,
    text: `Column “${heading}”: ${question}`,
    choices: choices.map(({ label, unit, remember, text }) => ({
      label,
      settle:
        remember === undefined
          ? {
              options: {
                columns: [before, `${heading}=${text.split(" ")[0] ?? ""} ${unit}`]
                  .filter(Boolean)
                  .join("; "),
              },
            }
          : {},
      ...(remember === undefined ? {} : { remember }),
    })),
  };
}

/** Readings not in the record yet: the same file may be handed over twice. */
function unknown(
  readings: readonly NewReading[],
  tank: Tank,
  { records, member }: Context,
): readonly NewReading[] {
  const key = ({ parameter, at, best }: Pick<NewReading, "parameter" | "at" | "best">): string =>
    `${parameter} ${at} ${best}`;
  const known = new Set(records.log.everything(member.id, tank.id).readings.map(key));
  return readings.filter((reading) => {
    const own = key(reading);
    const isNew = !known.has(own);
    known.add(own);
    return isNew;
  });
}

function confirmation(
  tank: Tank,
  { readings, bad }: ImportedRows,
  fresh: readonly NewReading[],
  told: readonly string[],
  { audience }: Context,
): Question {
  const known = readings.length - fresh.length;
  const moments = fresh.map(({ at }) => at).sort();
  return {
    ...ASKED,
    audience,
    title: `${tank.name}: a trial run`,
    text: `Import ${counted(fresh.length, "reading")}?`,
    body: [
      `Columns: ${told.join("; ")}.`,
      `From ${moments[0]?.slice(0, 10)} to ${moments.at(-1)?.slice(0, 10)}.`,
      ...(known === 0
        ? []
        : [`Left out, being in the record already or twice in the file: ${counted(known, "reading")}.`]),
      ...badLines(bad),
      "Nothing has been kept yet.",
    ],
    choices: [
      {
        label: `Import ${counted(fresh.length, "reading")}`,
        settle: { answers: { import: "yes" } },
        tone: "go",
      },
      { label: "Stop", settle: { answers: { import: "no" } }, tone: "stop" },
    ],
  };
}

function badLines(bad: readonly BadRow[]): readonly string[] {
  return bad.length === 0
    ? []
    : [
        `${counted(bad.length, "row")} cannot be read and will be left out:`,
        ...bad.slice(0, SHOWN_BAD).map(({ line, reason }) => `line ${line}: ${reason}`),
        ...(bad.length > SHOWN_BAD ? [`and ${bad.length - SHOWN_BAD} more.`] : []),
      ];
}

function nothing(tank: Tank, { readings, bad }: ImportedRows, { audience }: Context): Reply {
  return {
    kind: "reply",
    ok: false,
    title: `${tank.name}: nothing to import`,
    body: [
      readings.length > 0 ? "Every reading of this file is in the record already." : "No row could be read.",
      ...badLines(bad),
    ],
    cautions: [],
    audience,
  };
}

function write(
  tank: Tank,
  file: { readonly id: string; readonly name: string },
  readings: readonly NewReading[],
  bad: readonly BadRow[],
  { records, member, now, audience }: Context,
): Reply {
  records.log.add({
    owner: member.id,
    tankId: tank.id,
    line: `import of ${file.name}`,
    readings,
    events: [],
    now: new Date(now).toISOString(),
  });
  records.uploads.drop(member.id, file.id);
  return {
    kind: "reply",
    ok: true,
    title: `${tank.name}: imported`,
    headline: counted(readings.length, "reading"),
    body: [
      ...(bad.length === 0 ? [] : [`${counted(bad.length, "row")} left out.`]),
      "/undo takes all of it back.",
    ],
    ...(bad.length === 0
      ? {}
      : {
          files: [
            {
              name: "left-out.txt",
              mediaType: "text/plain",
              content: bad.map(({ line, reason }) => `line ${line}: ${reason}\n`).join(""),
              encoding: "utf8",
              altText: "The rows left out, each with its line and the reason",
            },
          ],
        }),
    cautions: [],
    audience,
  };
}

const ASKED = {
  kind: "question",
  isMistake: false,
  title: "Bringing a table in",
  body: [],
  cautions: [],
  audience: "asker",
} as const;
