import { PARAMETERS, type Parameter, parameterNamed } from "../src/core/log/parameters.ts";
import { readFigure } from "../src/core/log/read-figure.ts";
import type { Read } from "../src/core/quantity/read.ts";
import {
  type Context,
  defineCommand,
  type Option,
  optional,
  quoted,
  type Reply,
  reading,
  tankInMind,
  tankOption,
  UserError,
} from "../src/kit/index.ts";
import { parameterOption } from "../src/kit/parameter-option.ts";
import { showRange, wantedRange } from "../src/kit/wanted-range.ts";
import type { Tank } from "../src/records/tank.ts";
import { ownOnly } from "./tank/shared.ts";

const EXAMPLE = "8-9 dKH";
const USUAL = /^(?:usual|none|default|reset|clear)$/i;

interface Range {
  /** Both absent: back to what is usual. */
  readonly low?: number;
  readonly high?: number;
  readonly typed: string;
}

/** "8-9 dKH", "under 20", "above 400 mg/L": read as the parameter it stands beside is read. */
const range: Option<Range, true> = reading(
  "From–to, “under 20”, “above 400”; “usual” goes back to what is common",
  EXAMPLE,
  (text, { habits, request }): Read<Range> => {
    if (USUAL.test(text)) return { kind: "read", value: { typed: text }, readAs: "what is usual" };
    const word = request.options["of"] ?? "";
    const subject = parameterNamed(word);
    if (subject === undefined)
      return { kind: "unreadable", message: "Say what the range is for, e.g. of:alkalinity." };
    const read = readFigure(subject, word, text, habits);
    if (read.kind === "impossible") return { kind: "unreadable", message: read.message };
    if (read.kind !== "read") return read;
    const { estimate, censored } = read.value;
    if (censored === "below") return asRead({ high: estimate.high, typed: text }, subject);
    if (censored === "above") return asRead({ low: estimate.low, typed: text }, subject);
    return estimate.low < estimate.high
      ? asRead({ low: estimate.low, high: estimate.high, typed: text }, subject)
      : {
          kind: "unreadable",
          message: `${quoted(text)} is one figure; a range has two ends. Try “${EXAMPLE}” or “under 20”.`,
        };
  },
);

function asRead(value: Range, subject: Parameter): Read<Range> {
  return { kind: "read", value, readAs: showRange(value, subject) };
}

export default defineCommand({
  name: "target",
  summary: "Where you want a tank's water to be; shows the ranges in use",
  options: {
    of: optional(parameterOption()),
    range: optional(range),
    tank: optional(tankOption()),
  },
  examples: [
    "/target",
    "/target of:alkalinity range:8-9 dKH",
    "/target of:nitrate range:under 20 tank:Lagoon",
    "/target of:nitrate range:usual",
  ],
  run(input, context): Reply {
    const tank = tankInMind(input.tank, undefined, context);
    if (tank === undefined)
      throw new UserError("not-found", "You keep no tank here yet. Describe one with /tank add.");
    const { of, range: wish } = input;
    if (wish !== undefined) {
      if (of === undefined)
        throw new UserError("bad-input", "Say what the range is for, e.g. of:alkalinity.");
      keep(of, wish, ownOnly(tank, context), context);
    }
    return shown(tank, of, context);
  },
});

function keep({ id }: Parameter, { low, high, typed }: Range, tank: Tank, { records }: Context): void {
  if (low === undefined && high === undefined) {
    records.targets.drop(tank.owner, tank.id, id);
    return;
  }
  const ends = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
  records.targets.put(tank.owner, tank.id, { parameter: id, ...ends, typed });
}

function shown(tank: Tank, only: Parameter | undefined, context: Context): Reply {
  const rows = (only === undefined ? PARAMETERS : [only]).flatMap((subject) => {
    const wanted = wantedRange(subject, tank, context);
    return wanted === undefined ? [] : [[subject.name, showRange(wanted, subject), wanted.from]];
  });
  const { title, audience } = { title: `${tank.name}: wanted ranges`, audience: context.audience };
  return {
    kind: "reply",
    ok: true,
    title,
    body:
      rows.length === 0
        ? [`No range is usual for ${only?.name ?? "it"} in ${tank.kind} tanks, and none was set.`]
        : [
            "/trend, /digest and their charts measure by these. Usual ranges are habits of the trade, not limits of nature.",
          ],
    ...(rows.length === 0 ? {} : { table: { columns: ["what", "range", "from"], rows } }),
    cautions: [],
    audience,
  };
}
