import type { Database } from "better-sqlite3";
import { z } from "zod";
import { between } from "../core/quantity/estimate.ts";
import { as } from "../core/quantity/units.ts";
import type { YieldFactor } from "../core/water/salt-product.ts";
import { UserError } from "../kit/user-error.ts";
import type { MemberId } from "../records/ids.ts";
import type { SaltProduct, SaltProductRecords } from "../records/salt-product.ts";
import { nameKey } from "./tank-records.ts";

const MOST_PRODUCTS = 50;

const row = z.object({
  name: z.string(),
  yield_best: z.number(),
  yield_low: z.number(),
  yield_high: z.number(),
  at: z.string(),
});

export class SqliteSaltProductRecords implements SaltProductRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  of(member: MemberId): readonly SaltProduct[] {
    return z
      .array(row)
      .parse(
        this.#db.prepare("SELECT * FROM salt_product WHERE member_id = ? ORDER BY at DESC, key").all(member),
      )
      .map(({ name, yield_best, yield_low, yield_high, at }) => ({
        name,
        yieldFactor: between(
          as<YieldFactor>(yield_low),
          as<YieldFactor>(yield_high),
          as<YieldFactor>(yield_best),
        ),
        at,
      }));
  }

  put(member: MemberId, { name, yieldFactor, at }: SaltProduct): void {
    this.#db
      .transaction(() => {
        if (this.of(member).filter((other) => nameKey(other.name) !== nameKey(name)).length >= MOST_PRODUCTS)
          throw new UserError(
            "not-now",
            `You already keep ${MOST_PRODUCTS} salt mixes here, the most there may be.`,
          );
        this.#db
          .prepare(
            `INSERT INTO salt_product (member_id, key, name, yield_best, yield_low, yield_high, at)
             VALUES (?, ?, ?, ?, ?, ?, ?)
             ON CONFLICT (member_id, key) DO UPDATE SET name = excluded.name, yield_best = excluded.yield_best,
               yield_low = excluded.yield_low, yield_high = excluded.yield_high, at = excluded.at`,
          )
          .run(member, nameKey(name), name, yieldFactor.best, yieldFactor.low, yieldFactor.high, at);
      })
      .immediate();
  }
}
