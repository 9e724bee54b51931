import { readLogLine } from "../src/core/log/read-log-line.ts";
import { defineCommand, type Reply, quantity, UserError, words } from "../src/kit/index.ts";
import { instrumentFor, isReading, newReading } from "./log/entries.ts";

export default defineCommand({
  name: "correct",
  summary: "Correct one reading; the old value is kept aside, and /undo brings it back",
  options: {
    reading: quantity.count("Its number, as /readings shows it", "12"),
    to: words("What it should be, as you would log it", "no3 20"),
  },
  examples: ["/correct reading:12 to:no3 20"],
  run({ reading: number, to }, context): Reply {
    const { records, member, now, audience } = context;
    const old = records.log.find(member.id, number.best);
    if (old === undefined)
      throw new UserError("not-found", `There is no reading ${number.best} of yours. /readings shows their numbers.`);
    const read = readLogLine(to, member.habits);
    if (read.kind !== "read") throw new UserError("bad-input", read.kind === "ask" ? read.question : read.message);
    const [entry, ...others] = read.value;
    if (entry === undefined || !isReading(entry) || others.length > 0 || entry.parameter !== old.parameter)
      throw new UserError("bad-input", `Reading ${old.id} is “${old.readAs}”: give one ${old.parameter} value in its place.`);
    const corrected = records.log.correct(
      member.id,
      old.id,
      newReading(entry, old.at, old.instrument ?? instrumentFor(entry, undefined, context)),
      new Date(now).toISOString(),
    );
    return {
      kind: "reply",
      ok: true,
      title: "Corrected",
      headline: corrected.readAs,
      body: [`It was “${old.readAs}”. /undo brings that back.`],
      cautions: [],
      audience,
    };
  },
});
