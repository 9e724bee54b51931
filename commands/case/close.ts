import { readReadings } from "../../src/core/help/read-readings.ts";
import { readLivestock } from "../../src/core/nitrogen/read-livestock.ts";
import { readContainers } from "../../src/core/tank/read-containers.ts";
import {
  askFor,
  type Context,
  choice,
  defineCommand,
  fills,
  type Outcome,
  optional,
  UserError,
  words,
} from "../../src/kit/index.ts";
import type { HelpCase } from "../../src/records/help.ts";
import type { NewReading } from "../../src/records/log.ts";
import { cardReply, caseInMind, caseOption, type Gathered, gather } from "./shared.ts";

export default defineCommand({
  name: "close",
  summary: "Close a help case: what worked, and, if you agree, your first tank record from it",
  options: {
    worked: optional(words("What worked", "smaller meals and three water changes", 500)),
    keep: optional(choice("Make the facts your first tank record", ["yes", "no"])),
    name: optional(words("What to call the tank", "First tank", 40)),
    case: caseOption(),
  },
  examples: ["/case close", "/case close worked:smaller meals keep:yes name:First tank"],
  run({ worked, keep, name, case: given }, context): Outcome {
    const helped = caseInMind(given, context);
    const { help } = context.records;
    const title = `Close case ${helped.id}`;
    if (worked === undefined && helped.worked === undefined)
      return askFor(
        context,
        { name: "worked", example: "smaller meals and three water changes" },
        {
          title,
          text: "What worked? One line helps the next newcomer.",
          choices: [
            fills("Nothing yet", "worked", "nothing yet"),
            fills("I would rather not say", "worked", "not said"),
          ],
        },
      );
    const gathered = gather(helped, context);
    const isOwner = helped.owner === context.member.id;
    const canKeep = isOwner && helped.tankId === undefined && gathered.facts.volumeL !== undefined;
    if (canKeep && keep === undefined)
      return askFor(
        context,
        { name: "keep", example: "yes" },
        {
          title,
          text: "Shall the facts become your first tank record? It is private, and /tank remove deletes it.",
          choices: [fills("Yes, keep them", "keep", "yes"), fills("No", "keep", "no")],
        },
      );
    if (keep === "yes" && !isOwner)
      throw new UserError("not-yours", "Only the one who opened the case can turn it into a tank record.");
    const made = keep === "yes" && canKeep ? record(helped, gathered, name, context) : undefined;
    help.close(helped.id, worked, new Date(context.now).toISOString());
    const closed = help.find({ member: context.member.id, club: helped.club }, helped.id) ?? helped;
    return cardReply(closed, context, {
      remark: `Closed. ${made ?? (keep === "yes" ? "No tank record was made: its litres were never told. /tank add makes one." : "No tank record was made.")}`,
    });
  },
});

/** Turns the facts into a tank of the newcomer's own, with its readings at the times they were told. */
function record(
  helped: HelpCase,
  { facts, entries }: Gathered,
  name: string | undefined,
  context: Context,
): string {
  const { records, member, now } = context;
  const volume = facts.volumeL;
  if (volume === undefined) throw new UserError("bad-input", "The tank's litres are not told yet.");
  const typed = `tank ${Number(volume.best.toPrecision(3))} L measured`;
  const read = readContainers(typed, member.habits);
  if (read.kind !== "read") throw new UserError("bad-input", "The litres told are no size of a tank.");
  const at = new Date(now).toISOString();
  const tank = records.tanks.create({
    owner: helped.owner,
    name: name ?? `Tank of case ${helped.id}`,
    kind: facts.water ?? "fresh",
    containers: read.value,
    containersTyped: typed,
    now: at,
  });
  const livestock = entries.findLast(({ field }) => field === "animals")?.text;
  if (livestock !== undefined && readLivestock(livestock, member.habits).kind === "read")
    records.tanks.setNotes(helped.owner, tank.id, { livestock });
  const readings = entries
    .filter(({ kind }) => kind === "fact")
    .flatMap(({ text, at: toldAt }) =>
      readReadings(text, member.habits)
        .readings.filter(({ isUnclear }) => !isUnclear)
        .map(
          ({ parameter, estimate: { best, low, high }, typed: asTyped, readAs }): NewReading => ({
            parameter,
            best,
            low,
            high,
            typed: asTyped,
            readAs,
            at: toldAt,
          }),
        ),
    );
  if (readings.length > 0)
    records.log.add({
      owner: helped.owner,
      tankId: tank.id,
      line: `from help case ${helped.id}`,
      readings,
      events: [],
      now: at,
    });
  records.help.setTank(helped.id, tank.id);
  return `${tank.name} is now your tank here, with ${readings.length} readings; only you see it. /tank show tells what is kept.`;
}
