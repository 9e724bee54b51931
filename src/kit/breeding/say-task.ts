import { sayCount } from "../../core/breeding/read-count.ts";
import type { Task } from "../../core/breeding/tonight.ts";
import { type Group, nameOf, sayDay } from "./group.ts";

/** One line of tonight's card. */
export function sayTask(task: Task, group: Group): string {
  switch (task.kind) {
    case "watch hatch":
      return `${task.batch.tank}: ${task.batch.species} eggs of ${task.batch.id} may hatch (${sayDay(task.from)} to ${sayDay(task.until)}); look after lights out.`;
    case "feed larvae":
      return `${task.batch.tank}: feed the larvae of ${task.batch.id}, day ${task.daysPostHatch} after hatching; count what is left first (/culture feed).`;
    case "look after":
      return `${task.batch.tank}: ${task.batch.id}, ${task.batch.species}, ${task.batch.stage}${task.batch.alive === undefined ? "" : `, ${sayCount(task.batch.alive)}`}: feed, take out the dead, count them.`;
    case "count culture":
      return `${task.culture}: count it${task.daysOld === undefined ? ", it never was" : `, the last time was ${task.daysOld} days ago`}.`;
    case "save culture":
      return `${task.culture} is shrinking: harvest nothing, start the back-up${task.backupKeeper === undefined ? "" : ` (${nameOf(group, task.backupKeeper)} keeps it)`}.`;
    case "alert":
      return `${task.water}: alert since ${sayDay(task.day)}; last of all, with its own nets, nothing leaves it.`;
    case "quarantine":
      return `${task.tank}: in quarantine until ${sayDay(task.until)}; after all others, with its own nets.`;
    case "confirm transfer":
      return `Transfer ${task.transfer} waits for a side to confirm: /juveniles confirm transfer:${task.transfer}.`;
  }
}
