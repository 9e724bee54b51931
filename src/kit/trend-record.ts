import type { EventKind } from "../core/log/entry.ts";
import type { Parameter } from "../core/log/parameters.ts";
import { netVolume } from "../core/tank/net-volume.ts";
import { chartFactors, stepsAsKept } from "../core/trends/chart-unit.ts";
import { meterFor } from "../core/trends/meter-error.ts";
import {
  type Instrument,
  isAtBottom,
  isAtTop,
  looks,
  type TrendEvent,
  type TrendReading,
} from "../core/trends/readings.ts";
import type { Reading, TankEvent } from "../records/log.ts";
import type { Tank } from "../records/tank.ts";
import type { ChartMark, ChartSeries } from "./chart.ts";
import type { Context } from "./context.ts";
import { counted } from "./text.ts";

const DAY_MS = 86_400_000;
/** More than anyone reads off in the years a trend looks at. */
const MOST_READINGS = 3_000;
const MOST_EVENTS = 5_000;
/** What happens at least this often is part of how the tank runs, and no event to be weighed. Assumption. */
const ROUTINE_FROM = 6;
/** Never weighed unless asked about. */
const UNWEIGHED: ReadonlySet<EventKind> = new Set(["feeding", "note"]);
const UNNAMED = "tests with no kit named";

/** A logged event with its moment, in days since 1970, and what the engine makes of it. */
export interface DatedEvent {
  readonly at: number;
  readonly kind: EventKind;
  readonly readAs: string;
  readonly event: TrendEvent;
}

/** One parameter of a tank, as the trend engine reads it. Days are counted since 1970, UTC. */
export interface TrendRecord {
  readonly parameter: Parameter;
  readonly readings: readonly TrendReading[];
  readonly events: readonly TrendEvent[];
  readonly dated: readonly DatedEvent[];
  readonly now: number;
  /** The same readings as marks, one series for each instrument. */
  readonly series: readonly ChartSeries[];
  /** Which instrument stands behind which series name. */
  readonly instruments: readonly string[];
  /** What could not be taken as it was logged. */
  readonly remarks: readonly string[];
}

export function dayOf(iso: string): number {
  return Date.parse(iso) / DAY_MS;
}

export function momentOf(day: number): number {
  return Math.round(day * DAY_MS);
}

/** All that was done to a tank, newest first. */
export function tankEvents(tank: Tank, { records }: Context): readonly TankEvent[] {
  return records.log.events(tank.owner, tank.id, MOST_EVENTS);
}

/** Reads a tank's log of one parameter; `newWater` is the level in the water that changes bring in. */
export function trendRecord(
  parameter: Parameter,
  tank: Tank,
  newWater: number,
  context: Context,
  events: readonly TankEvent[] = tankEvents(tank, context),
): TrendRecord {
  const { records, now } = context;
  const kept = records.log.readings(tank.owner, tank.id, parameter.id, MOST_READINGS);
  const instruments = instrumentsOf(kept, parameter, tank, context);
  const { dated, remarks } = datedEvents(events, tank, newWater);
  const readings = kept.map((each) => trendReading(each, instruments)).filter(saysSomething);
  const isUnnamed =
    parameter.notDetectedBelow !== undefined && kept.some(({ instrument }) => instrument === undefined);
  return {
    parameter,
    readings,
    events: withoutRoutine(dated).map(({ event }) => event),
    dated,
    now: now / DAY_MS,
    ...seriesOf(kept, readings),
    remarks: [
      ...remarks,
      ...(isUnnamed
        ? [
            "Some tests name no kit: tell its colour steps or its error with /instrument add, and the range gets truer.",
          ]
        : []),
    ],
  };
}

function instrumentsOf(
  kept: readonly Reading[],
  parameter: Parameter,
  tank: Tank,
  { records }: Context,
): ReadonlyMap<string, Instrument> {
  const own = records.instruments.of(tank.owner).filter((each) => each.parameter === parameter.id);
  const names = new Set(kept.map(({ instrument }) => instrument ?? UNNAMED));
  return new Map(
    [...names].map((name) => {
      const known = own.find((each) => each.name.toLowerCase() === name.toLowerCase());
      if (known === undefined || known.steps.length < 2)
        return [name, meterFor(name, parameter, known?.error)];
      const values = kept.filter(({ instrument }) => instrument === name).map(({ best }) => best);
      return [
        name,
        { id: name, kind: "chart", steps: stepsAsKept(known.steps, values, chartFactors(parameter.id)) },
      ];
    }),
  );
}

function trendReading(
  { at, best, low, high, censored, instrument = UNNAMED }: Reading,
  instruments: ReadonlyMap<string, Instrument>,
): TrendReading {
  const known = instruments.get(instrument);
  if (known === undefined) throw new RangeError(`no instrument ${instrument}`);
  const base = { at: dayOf(at), instrument: known };
  // Less than nothing is nothing.
  if (censored === "below" && high > 0) return { ...base, value: high, bound: "below" };
  return censored === "above" ? { ...base, value: low, bound: "at least" } : { ...base, value: best };
}

/** "At least" the lowest colour is true of any water. */
function saysSomething(reading: TrendReading): boolean {
  return looks([reading]).some((look) => !isAtTop(look) || !isAtBottom(look));
}

function seriesOf(
  kept: readonly Reading[],
  readings: readonly TrendReading[],
): Pick<TrendRecord, "series" | "instruments"> {
  const instruments = [...new Set(readings.map(({ instrument }) => instrument.id))];
  const typedRange = new Map(
    kept.flatMap(({ at, low, high, censored }) =>
      censored === undefined && low < high ? [[dayOf(at), { low, high }] as const] : [],
    ),
  );
  return {
    instruments,
    series: instruments.map((id, index) => ({
      name: instruments.length === 1 ? "readings" : `kit ${index + 1}`,
      marks: looks(readings.filter(({ instrument }) => instrument.id === id)).map((look): ChartMark => {
        const at = momentOf(look.at);
        if (isAtTop(look)) return { kind: "at least", at, low: look.low };
        if (isAtBottom(look)) return { kind: "below", at, high: look.high };
        const { low, high } = look.low < look.high ? look : (typedRange.get(look.at) ?? look);
        return low < high ? { kind: "interval", at, low, high } : { kind: "point", at, value: look.value };
      }),
    })),
  };
}

/** Every event with what the engine makes of it, newest first, and what could not be taken. */
function datedEvents(
  events: readonly TankEvent[],
  tank: Tank,
  newWater: number,
): { readonly dated: readonly DatedEvent[]; readonly remarks: readonly string[] } {
  const net = netVolume(tank.containers);
  const volumeL = net.kind === "answer" ? net.value.totalL.best : undefined;
  let unsized = 0;
  const dated = events.flatMap((each): DatedEvent[] => {
    const at = dayOf(each.at);
    const kind = each.event as EventKind;
    const base = { at, kind, readAs: each.readAs };
    if (kind !== "water change") return [{ ...base, event: { kind: "other", at, what: each.readAs } }];
    const fraction = fractionOf(each, volumeL);
    if (fraction !== undefined) return [{ ...base, event: { kind: "water change", at, fraction, newWater } }];
    unsized += 1;
    return [{ ...base, event: { kind: "other", at, what: "a water change of unknown size" } }];
  });
  return {
    dated,
    remarks:
      unsized === 0
        ? []
        : [
            `${counted(unsized, "water change has", "water changes have")} no size in the log and could not be counted: say “wc 30 %” next time.`,
          ],
  };
}

/** Share of the water a logged change replaced. */
function fractionOf({ amount, unit }: TankEvent, volumeL: number | undefined): number | undefined {
  if (amount === undefined) return undefined;
  if (unit === "fraction") return Math.min(1, amount);
  return unit === "L" && volumeL !== undefined ? Math.min(1, amount / volumeL) : undefined;
}

function withoutRoutine(dated: readonly DatedEvent[]): readonly DatedEvent[] {
  const counts = new Map<EventKind, number>();
  for (const { kind } of dated) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return dated.filter(
    ({ event, kind }) =>
      event.kind !== "other" || (!UNWEIGHED.has(kind) && (counts.get(kind) ?? 0) < ROUTINE_FROM),
  );
}
