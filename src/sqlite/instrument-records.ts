import type { Database } from "better-sqlite3";
import { z } from "zod";
import { UserError } from "../kit/user-error.ts";
import type { MemberId } from "../records/ids.ts";
import type { Instrument, InstrumentRecords } from "../records/log.ts";
import { nameKey } from "./tank-records.ts";

const MOST_INSTRUMENTS = 100;

const row = z.object({
  name: z.string(),
  parameter: z.string(),
  steps: z.string(),
  error: z.number().nullable(),
  gravity: z.string().nullable(),
});

const gravityScale = z.object({ sampleC: z.number(), referenceC: z.number() });

export class SqliteInstrumentRecords implements InstrumentRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  of(member: MemberId): readonly Instrument[] {
    return z
      .array(row)
      .parse(
        this.#db.prepare("SELECT * FROM instrument WHERE member_id = ? ORDER BY parameter, name").all(member),
      )
      .map(({ name, parameter, steps, error, gravity }) => ({
        name,
        parameter,
        steps: z.array(z.number()).parse(JSON.parse(steps)),
        ...(error === null ? {} : { error }),
        ...(gravity === null ? {} : { gravity: gravityScale.parse(JSON.parse(gravity)) }),
      }));
  }

  put(member: MemberId, { name, parameter, steps, error, gravity }: Instrument): void {
    this.#db
      .transaction(() => {
        const others = this.of(member).filter((other) => nameKey(other.name) !== nameKey(name));
        if (others.length >= MOST_INSTRUMENTS)
          throw new UserError(
            "not-now",
            `You already keep ${others.length} instruments here, the most there may be.`,
          );
        this.#db
          .prepare(
            `INSERT INTO instrument (member_id, key, name, parameter, steps, error, gravity) VALUES (?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (member_id, key) DO UPDATE SET name = excluded.name, parameter = excluded.parameter,
               steps = excluded.steps, error = excluded.error, gravity = excluded.gravity`,
          )
          .run(
            member,
            nameKey(name),
            name,
            parameter,
            JSON.stringify(steps),
            error ?? null,
            gravity === undefined ? null : JSON.stringify(gravity),
          );
      })
      .immediate();
  }

  drop(member: MemberId, name: string): boolean {
    return (
      this.#db.prepare("DELETE FROM instrument WHERE member_id = ? AND key = ?").run(member, nameKey(name))
        .changes === 1
    );
  }
}
