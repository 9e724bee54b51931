import type { Database, Statement } from "better-sqlite3";
import { z } from "zod";
import { UserError } from "../kit/user-error.ts";
import type { MemberId } from "../records/ids.ts";
import type { LogLine, LogRecords, NewEvent, NewReading, Reading, TankEvent } from "../records/log.ts";

/** A bound of a reading beyond its chart may be open: infinite. */
const bound = z.custom<number>((value) => typeof value === "number" && !Number.isNaN(value));

const readingRow = z.object({
  id: z.number(),
  batch_id: z.number(),
  tank_id: z.number(),
  parameter: z.string(),
  best: z.number(),
  low: bound,
  high: bound,
  censored: z.enum(["below", "above"]).nullable(),
  typed: z.string(),
  read_as: z.string(),
  instrument: z.string().nullable(),
  at: z.string(),
});
const eventRow = z.object({
  id: z.number(),
  batch_id: z.number(),
  tank_id: z.number(),
  event: z.string(),
  amount: z.number().nullable(),
  unit: z.string().nullable(),
  text: z.string(),
  typed: z.string(),
  read_as: z.string(),
  at: z.string(),
});

const OWNED = "tank_id = (SELECT id FROM tank WHERE id = ? AND member_id = ?) AND gone_at IS NULL";
const OWN_READING =
  "SELECT reading.* FROM reading JOIN tank ON tank.id = reading.tank_id WHERE reading.id = ? AND tank.member_id = ? AND gone_at IS NULL";
const NEWEST = "ORDER BY at DESC, id DESC LIMIT ?";

export class SqliteLogRecords implements LogRecords {
  readonly #db: Database;
  readonly #readingInsert: Statement;

  constructor(db: Database) {
    this.#db = db;
    this.#readingInsert = db.prepare(
      `INSERT INTO reading (batch_id, tank_id, parameter, best, low, high, censored, typed, read_as, instrument, at)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    );
  }

  add(entry: Parameters<LogRecords["add"]>[0]): number {
    return this.#db
      .transaction(() => {
        this.#mustOwn(entry.owner, entry.tankId);
        const { lastInsertRowid } = this.#db
          .prepare("INSERT INTO batch (tank_id, line, entered_at) VALUES (?, ?, ?)")
          .run(entry.tankId, entry.line, entry.now);
        const batch = Number(lastInsertRowid);
        for (const reading of entry.readings) this.#insertReading(batch, entry.tankId, reading);
        for (const event of entry.events) this.#insertEvent(batch, entry.tankId, event);
        return batch;
      })
      .immediate();
  }

  recent(owner: MemberId, tankId: number, limit: number, parameter?: string): readonly LogLine[] {
    const readings = this.#readings(
      `SELECT * FROM reading WHERE ${OWNED} ${parameter === undefined ? "" : "AND parameter = ?"} ${NEWEST}`,
      parameter === undefined ? [tankId, owner, limit] : [tankId, owner, parameter, limit],
    ).map(({ reading, batch }): LogLine => ({ kind: "reading", reading, batch }));
    if (parameter !== undefined) return readings;
    const events = this.#events(tankId, owner, limit).map(
      (row): LogLine => ({ kind: "event", event: eventOf(row), batch: row.batch_id }),
    );
    return [...readings, ...events].sort(newestFirst).slice(0, limit);
  }

  everything(
    owner: MemberId,
    tankId: number,
  ): { readonly readings: readonly Reading[]; readonly events: readonly TankEvent[] } {
    const oldest = (table: string): string => `SELECT * FROM ${table} WHERE ${OWNED} ORDER BY at, id`;
    return {
      readings: this.#readings(oldest("reading"), [tankId, owner]).map(({ reading }) => reading),
      events: z
        .array(eventRow)
        .parse(this.#db.prepare(oldest("event")).all(tankId, owner))
        .map(eventOf),
    };
  }

  readings(owner: MemberId, tankId: number, parameter: string, limit: number): readonly Reading[] {
    return this.#readings(`SELECT * FROM reading WHERE ${OWNED} AND parameter = ? ${NEWEST}`, [
      tankId,
      owner,
      parameter,
      limit,
    ]).map(({ reading }) => reading);
  }

  events(owner: MemberId, tankId: number, limit: number): readonly TankEvent[] {
    return this.#events(tankId, owner, limit).map(eventOf);
  }

  find(owner: MemberId, readingId: number): Reading | undefined {
    return this.#readings(OWN_READING, [readingId, owner])[0]?.reading;
  }

  latest(owner: MemberId, tankId: number, parameter: string): Reading | undefined {
    return this.readings(owner, tankId, parameter, 1)[0];
  }

  undoLast(
    owner: MemberId,
    tankId: number,
    now: string,
  ): { readonly line: string; readonly count: number } | undefined {
    return this.#db
      .transaction(() => {
        this.#mustOwn(owner, tankId);
        const found = this.#db
          .prepare(
            "SELECT id, line FROM batch WHERE tank_id = ? AND undone_at IS NULL ORDER BY id DESC LIMIT 1",
          )
          .get(tankId);
        if (found === undefined) return undefined;
        const { id, line } = z.object({ id: z.number(), line: z.string() }).parse(found);
        this.#db.prepare("UPDATE batch SET undone_at = ? WHERE id = ?").run(now, id);
        // A reading that replaced another gives its place back.
        this.#db
          .prepare(
            `UPDATE reading SET gone_at = NULL, replaced_by = NULL
             WHERE replaced_by IN (SELECT id FROM reading WHERE batch_id = ?)`,
          )
          .run(id);
        const readings = this.#db
          .prepare("UPDATE reading SET gone_at = ? WHERE batch_id = ? AND gone_at IS NULL")
          .run(now, id);
        const events = this.#db
          .prepare("UPDATE event SET gone_at = ? WHERE batch_id = ? AND gone_at IS NULL")
          .run(now, id);
        return { line, count: readings.changes + events.changes };
      })
      .immediate();
  }

  correct(owner: MemberId, readingId: number, to: NewReading, now: string): Reading {
    return this.#db
      .transaction(() => {
        const old = this.#readings(OWN_READING, [readingId, owner])[0];
        if (old === undefined)
          throw new UserError("not-found", `There is no reading ${readingId} of yours to correct.`);
        const { tankId } = old.reading;
        const { lastInsertRowid } = this.#db
          .prepare("INSERT INTO batch (tank_id, line, entered_at) VALUES (?, ?, ?)")
          .run(tankId, to.typed, now);
        const id = this.#insertReading(Number(lastInsertRowid), tankId, to);
        this.#db
          .prepare("UPDATE reading SET gone_at = ?, replaced_by = ? WHERE id = ?")
          .run(now, id, readingId);
        return { ...to, id, tankId };
      })
      .immediate();
  }

  #insertReading(batch: number, tankId: number, reading: NewReading): number {
    const { lastInsertRowid } = this.#readingInsert.run(
      batch,
      tankId,
      reading.parameter,
      reading.best,
      reading.low,
      reading.high,
      reading.censored ?? null,
      reading.typed,
      reading.readAs,
      reading.instrument ?? null,
      reading.at,
    );
    return Number(lastInsertRowid);
  }

  #insertEvent(batch: number, tankId: number, event: NewEvent): void {
    this.#db
      .prepare(
        `INSERT INTO event (batch_id, tank_id, event, amount, unit, text, typed, read_as, at)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      )
      .run(
        batch,
        tankId,
        event.event,
        event.amount ?? null,
        event.unit ?? null,
        event.text,
        event.typed,
        event.readAs,
        event.at,
      );
  }

  #mustOwn(owner: MemberId, tankId: number): void {
    if (
      this.#db.prepare("SELECT 1 FROM tank WHERE id = ? AND member_id = ?").get(tankId, owner) === undefined
    )
      throw new UserError("not-yours", "That tank is not one of yours.");
  }

  #events(tankId: number, owner: MemberId, limit: number): readonly z.infer<typeof eventRow>[] {
    return z
      .array(eventRow)
      .parse(this.#db.prepare(`SELECT * FROM event WHERE ${OWNED} ${NEWEST}`).all(tankId, owner, limit));
  }

  #readings(
    sql: string,
    values: readonly (string | number)[],
  ): readonly { readonly reading: Reading; readonly batch: number }[] {
    return z
      .array(readingRow)
      .parse(this.#db.prepare(sql).all(...values))
      .map((row) => ({
        batch: row.batch_id,
        reading: {
          id: row.id,
          tankId: row.tank_id,
          parameter: row.parameter,
          best: row.best,
          low: row.low,
          high: row.high,
          ...(row.censored === null ? {} : { censored: row.censored }),
          typed: row.typed,
          readAs: row.read_as,
          ...(row.instrument === null ? {} : { instrument: row.instrument }),
          at: row.at,
        },
      }));
  }
}

function eventOf(row: z.infer<typeof eventRow>): TankEvent {
  return {
    id: row.id,
    tankId: row.tank_id,
    event: row.event,
    ...(row.amount === null ? {} : { amount: row.amount }),
    ...(row.unit === null ? {} : { unit: row.unit }),
    text: row.text,
    typed: row.typed,
    readAs: row.read_as,
    at: row.at,
  };
}

function whenOf(line: LogLine): string {
  return line.kind === "reading" ? line.reading.at : line.event.at;
}

/** By time; at one time the line entered last goes first, with its readings and then its events as typed. */
function newestFirst(a: LogLine, b: LogLine): number {
  const [then, now] = [whenOf(a), whenOf(b)];
  return then === now
    ? b.batch - a.batch || Number(a.kind === "event") - Number(b.kind === "event") || idOf(a) - idOf(b)
    : then < now
      ? 1
      : -1;
}

function idOf(line: LogLine): number {
  return line.kind === "reading" ? line.reading.id : line.event.id;
}
