import { parameterNamed } from "../../src/core/log/parameters.ts";
import { readFigure } from "../../src/core/log/read-figure.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import type { Read } from "../../src/core/quantity/read.ts";
import {
  defineCommand,
  type Option,
  type Outcome,
  optional,
  quantity,
  reading,
  tankInMind,
  tankOption,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { parameterOption } from "../../src/kit/parameter-option.ts";
import { trendRecord } from "../../src/kit/trend-record.ts";
import { wantedRange } from "../../src/kit/wanted-range.ts";
import { balanceReply } from "./balance.ts";
import { effectReply, eventMeant } from "./effect.ts";
import { plainReply } from "./plain.ts";
import { BALANCED } from "./words.ts";

const USUAL_DAYS = 14;
const MOST_DAYS = 180;

/** A level of whatever the command is asked about, in its own unit. */
function levelOf(description: string, example: string): Option<Estimate, true> {
  return reading(description, example, (text, { habits, request }): Read<Estimate> => {
    const word = request.options["of"] ?? "";
    const subject = parameterNamed(word);
    if (subject === undefined)
      return { kind: "unreadable", message: `Say first what it is about, e.g. of:nitrate.` };
    const read = readFigure(subject, word, text, habits);
    if (read.kind === "impossible") return { kind: "unreadable", message: read.message };
    return read.kind === "read" ? { ...read, value: read.value.estimate } : read;
  });
}

export default defineCommand({
  name: "trend",
  summary: "Which way a tank's water is going, why, and what keeps it in bounds",
  options: {
    of: parameterOption(),
    limit: optional(levelOf("A level not to be passed; the top of the wanted range if left out", "20 mg/L")),
    since: optional(words("A logged change to weigh: its words or its day, e.g. harvest", "harvest", 60)),
    days: optional(quantity.span("How far to look ahead; 14 days if left out", "30 days")),
    source: optional(levelOf("The level in the new water of your changes; none if left out", "5 mg/L")),
    tank: optional(tankOption()),
  },
  examples: [
    "/trend of:nitrate",
    "/trend of:nitrate limit:20 mg/L tank:Lagoon",
    "/trend of:nitrate since:harvest",
  ],
  run(input, context): Outcome | Promise<Outcome> {
    const tank = tankInMind(input.tank, undefined, context);
    if (tank === undefined)
      throw new UserError("not-found", "You keep no tank here yet. Describe one with /tank add.");
    const record = trendRecord(input.of, tank, input.source?.best ?? 0, context);
    const wish = {
      title: `${tank.name}: ${input.of.name}`,
      wanted: wantedRange(input.of, tank, context),
      limit: input.limit,
      aheadDays: Math.min(
        MOST_DAYS,
        Math.max(1, Math.round((input.days?.estimate.best ?? USUAL_DAYS * 24) / 24)),
      ),
    };
    const isBalanced = BALANCED.has(input.of.id);
    if (input.since !== undefined) {
      if (!isBalanced)
        throw new UserError(
          "not-now",
          `What one change did can be weighed for nitrate and phosphate, which a tank makes day by day. For ${input.of.name}, /trend without since: tells a jump and what was logged at it.`,
        );
      return effectReply(record, eventMeant(input.since, record, context), wish, context);
    }
    return isBalanced ? balanceReply(record, wish, context) : plainReply(record, wish, context);
  },
});
