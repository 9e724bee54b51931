import type { EventKind } from "../core/log/entry.ts";
import type { ParameterId } from "../core/log/parameters.ts";
import type { TankLog } from "../core/plans/regimens.ts";
import type { Seen } from "../core/plans/until.ts";
import type { Records } from "../records/index.ts";
import type { TankEvent } from "../records/log.ts";
import type { Tank } from "../records/tank.ts";

/** Entries looked back at: what lies further back decides nothing today. */
const MOST_READINGS = 60;
const MOST_EVENTS = 400;

/** What a tank's record says since a time, as plans are judged by it. Reads nothing until asked. */
export function tankLogOf(tank: Tank, since: string, records: Records): TankLog {
  let all: readonly TankEvent[] | undefined;
  const events = (): readonly TankEvent[] => {
    all ??= records.log.events(tank.owner, tank.id, MOST_EVENTS);
    return all;
  };
  return {
    readings: (parameter) => readingsSince(tank, parameter, since, records),
    events: (event) =>
      events()
        .filter((each) => each.event === event && each.at >= since)
        .map(({ at, text }) => ({ at: Date.parse(at), text })),
    get off() {
      return devicesOff(tank, events(), records);
    },
  };
}

/** Newest first. */
export function readingsSince(
  tank: Pick<Tank, "owner" | "id">,
  parameter: ParameterId,
  since: string,
  records: Records,
): readonly Seen[] {
  return records.log
    .readings(tank.owner, tank.id, parameter, MOST_READINGS)
    .filter(({ at }) => at >= since)
    .map(({ best, low, high, at }) => ({ best, low, high, at: Date.parse(at) }));
}

/** When events of one kind were logged, in milliseconds since 1970. */
export function eventTimes(
  tank: Pick<Tank, "owner" | "id">,
  kind: EventKind,
  records: Records,
): readonly number[] {
  return records.log
    .events(tank.owner, tank.id, MOST_EVENTS)
    .filter(({ event }) => event === kind)
    .map(({ at }) => Date.parse(at));
}

/** What the plans or the log say is off. `events` newest first. */
function devicesOff(tank: Tank, events: readonly TankEvent[], records: Records): readonly string[] {
  const said = new Map<string, boolean>();
  for (const { event, text } of events) {
    const device = text.toLowerCase();
    if ((event === "equipment on" || event === "equipment off") && !said.has(device))
      said.set(device, event === "equipment off");
  }
  for (const { off } of records.plans.switchedOff(tank.id))
    said.set((off.words.device ?? "").toLowerCase(), true);
  return [...said].filter(([, isOff]) => isOff).map(([device]) => device);
}
