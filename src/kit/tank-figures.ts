import { DateTime } from "luxon";
import type { Estimate } from "../core/quantity/estimate.ts";
import { isRead } from "../core/quantity/read.ts";
import { readSalinity } from "../core/quantity/salinity.ts";
import { showEstimate, showVolume } from "../core/quantity/show.ts";
import { readTemperature } from "../core/quantity/temperature.ts";
import { as, type DegreesC, type Litres, type PracticalSalinity } from "../core/quantity/units.ts";
import type { Caution } from "../core/result.ts";
import { netVolume } from "../core/tank/net-volume.ts";
import type { Reading } from "../records/log.ts";
import type { Tank } from "../records/tank.ts";
import { sayRefusal } from "../wording/index.ts";
import type { TakenFigure } from "./answer-reply.ts";
import type { Context } from "./context.ts";
import { UserError } from "./user-error.ts";

/** What reading a tank's figures takes: a command's context, or that of a plan falling due. */
export type FigureContext = Pick<Context, "records" | "member" | "now">;

/** A figure with where it came from, to be named in the answer. */
export interface Taken<Q extends number> {
  readonly estimate: Estimate<Q>;
  readonly taken: TakenFigure;
  /** Doubts about the figure itself, to go along with whatever is computed from it. */
  readonly cautions: readonly Caution[];
}

/** The net water of a saved tank. Throws: UserError when its description cannot hold water. */
export function tankVolume(tank: Tank, context: FigureContext): Taken<Litres> {
  const net = netVolume(tank.containers);
  if (net.kind === "no-answer") throw new UserError("bad-input", `${tank.name}: ${sayRefusal(net.reason)}`);
  return {
    estimate: net.value.totalL,
    taken: {
      name: "net volume",
      from: `${tank.name}, ${tank.containers.length === 1 ? "1 container" : `${tank.containers.length} containers`}`,
      readAs: showVolume(net.value.totalL, context.member.habits),
    },
    cautions: net.cautions,
  };
}

/** The tank's salinity: its newest reading, else the value it is usually kept at. */
export function tankSalinity(tank: Tank, context: FigureContext): Taken<PracticalSalinity> | undefined {
  const reading = context.records.log.latest(tank.owner, tank.id, "salinity");
  if (reading !== undefined) return logged<PracticalSalinity>("salinity", "ppt", tank, reading, context);
  const typed = tank.notes.salinity;
  const read = typed === undefined ? undefined : readSalinity(typed, context.member.habits);
  if (read === undefined || !isRead(read)) return tank.kind === "fresh" ? freshWater(tank) : undefined;
  return usual("salinity", tank, read.value.salinity, read.readAs);
}

/** The tank's temperature: its newest reading, else the value it is usually kept at. */
export function tankTemperature(tank: Tank, context: FigureContext): Taken<DegreesC> | undefined {
  const reading = context.records.log.latest(tank.owner, tank.id, "temperature");
  if (reading !== undefined) return logged<DegreesC>("temperature", "°C", tank, reading, context);
  const typed = tank.notes.temperature;
  const read = typed === undefined ? undefined : readTemperature(typed, context.member.habits);
  if (read === undefined || !isRead(read)) return undefined;
  return usual("temperature", tank, read.value.estimate, read.readAs);
}

function logged<Q extends PracticalSalinity | DegreesC>(
  name: string,
  unit: string,
  tank: Tank,
  reading: Reading,
  { now }: FigureContext,
): Taken<Q> {
  const estimate = { best: as<Q>(reading.best), low: as<Q>(reading.low), high: as<Q>(reading.high) };
  return {
    estimate,
    taken: {
      name,
      from: `${tank.name}, logged ${ago(reading.at, now)}`,
      readAs: showEstimate(estimate, unit),
    },
    cautions: [],
  };
}

function usual<Q extends PracticalSalinity | DegreesC>(
  name: string,
  tank: Tank,
  estimate: Estimate<Q>,
  readAs: string,
): Taken<Q> {
  return { estimate, taken: { name, from: `${tank.name}, as usually kept`, readAs }, cautions: [] };
}

function freshWater(tank: Tank): Taken<PracticalSalinity> {
  const none = as<PracticalSalinity>(0);
  return {
    estimate: { best: none, low: none, high: as<PracticalSalinity>(0.5) },
    taken: { name: "salinity", from: `${tank.name} is a freshwater tank`, readAs: "under 0.5 ppt" },
    cautions: [],
  };
}

/** "3 days ago", as a member would say it. */
export function ago(at: string, now: number): string {
  const then = DateTime.fromISO(at, { zone: "utc" });
  if (Math.abs(then.toMillis() - now) < 60_000) return "just now";
  return then.toRelative({ base: DateTime.fromMillis(now, { zone: "utc" }), locale: "en" }) ?? at;
}
