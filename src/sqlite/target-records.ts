import type { Database } from "better-sqlite3";
import { z } from "zod";
import { UserError } from "../kit/user-error.ts";
import type { MemberId } from "../records/ids.ts";
import type { Target, TargetRecords } from "../records/target.ts";

const row = z.object({
  parameter: z.string(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  typed: z.string(),
});

const OWNED = "tank_id = (SELECT id FROM tank WHERE id = ? AND member_id = ?)";

export class SqliteTargetRecords implements TargetRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  of(owner: MemberId, tankId: number): readonly Target[] {
    return z
      .array(row)
      .parse(
        this.#db.prepare(`SELECT parameter, low, high, typed FROM target WHERE ${OWNED}`).all(tankId, owner),
      )
      .map(({ parameter, low, high, typed }) => ({
        parameter,
        ...(low === null ? {} : { low }),
        ...(high === null ? {} : { high }),
        typed,
      }));
  }

  put(owner: MemberId, tankId: number, { parameter, low, high, typed }: Target): void {
    const { changes } = this.#db
      .prepare(
        `INSERT INTO target (tank_id, parameter, low, high, typed)
         SELECT id, ?, ?, ?, ? FROM tank WHERE id = ? AND member_id = ?
         ON CONFLICT (tank_id, parameter) DO UPDATE SET low = excluded.low, high = excluded.high, typed = excluded.typed`,
      )
      .run(parameter, low ?? null, high ?? null, typed, tankId, owner);
    if (changes === 0) throw new UserError("not-yours", "That tank is not one of yours.");
  }

  drop(owner: MemberId, tankId: number, parameter: string): boolean {
    return (
      this.#db.prepare(`DELETE FROM target WHERE ${OWNED} AND parameter = ?`).run(tankId, owner, parameter)
        .changes === 1
    );
  }
}
