import type { LogEntry } from "../src/core/log/entry.ts";
import { readLogLine } from "../src/core/log/read-log-line.ts";
import {
  type Context,
  defineCommand,
  type Option,
  type Outcome,
  quantity,
  reading,
  UserError,
} from "../src/kit/index.ts";
import type { Reading } from "../src/records/log.ts";
import type { Tank } from "../src/records/tank.ts";
import { habitsWith, instrumentFor, isReading, newReading } from "./log/entries.ts";
import { settleSlips } from "./log/slips.ts";

/** Read by the habits of the instrument that the old reading came from, when there is one. */
const replacement: Option<readonly LogEntry[], true> = reading(
  "What it should be, as you would log it",
  "no3 20",
  (text, context) => {
    const number = Number(context.request.options["reading"]);
    const old = Number.isInteger(number) ? context.records.log.find(context.member.id, number) : undefined;
    return readLogLine(text, habitsWith(old?.instrument, context));
  },
);

export default defineCommand({
  name: "correct",
  summary: "Correct one reading; the old value is kept aside, and /undo brings it back",
  options: {
    reading: quantity.count("Its number, as /readings shows it", "12"),
    to: replacement,
  },
  examples: ["/correct reading:12 to:no3 20"],
  run({ reading: number, to }, context): Outcome {
    const { records, member, now, audience } = context;
    const old = records.log.find(member.id, number.best);
    if (old === undefined)
      throw new UserError(
        "not-found",
        `There is no reading ${number.best} of yours. /readings shows their numbers.`,
      );
    const [typed, ...others] = to;
    if (typed === undefined || !isReading(typed) || others.length > 0 || typed.parameter !== old.parameter)
      throw new UserError(
        "bad-input",
        `Reading ${old.id} is “${old.readAs}”: give one ${old.parameter} value in its place.`,
      );
    const tank = tankOf(old, context);
    const settled = settleSlips([typed], tank, old.at, context, old.id);
    if (settled.kind === "question") return settled;
    const [entry = typed] = settled.entries.filter(isReading);
    const corrected = records.log.correct(
      member.id,
      old.id,
      newReading(entry, old.at, old.instrument ?? instrumentFor(entry, undefined, context)),
      new Date(now).toISOString(),
    );
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name}: corrected`,
      headline: corrected.readAs,
      body: [`It was “${old.readAs}”. /undo${tank.isDefault ? "" : ` tank:${tank.name}`} brings that back.`],
      cautions: [],
      audience,
    };
  },
});

/** Throws: UserError when the tank has gone meanwhile. */
function tankOf(old: Reading, { records, member }: Context): Tank {
  const tank = records.tanks.own(member.id).find(({ id }) => id === old.tankId);
  if (tank === undefined)
    throw new UserError("not-found", "The tank of that reading is no longer kept here.");
  return tank;
}
