import type { Database, Statement } from "better-sqlite3";
import { z } from "zod";
import type { Exchange, ExchangeRecords } from "../kit/exchange.ts";
import type { Outcome } from "../kit/reply.ts";
import type { Request } from "../kit/request.ts";
import type { MemberId } from "../records/ids.ts";

const row = z.object({ id: z.string(), request: z.string(), outcome: z.string(), at: z.string() });

export class SqliteExchangeRecords implements ExchangeRecords {
  readonly #db: Database;
  readonly #insert: Statement;

  constructor(db: Database) {
    this.#db = db;
    this.#insert = db.prepare(
      "INSERT INTO exchange (id, member_id, request, outcome, is_public, at) VALUES (?, ?, ?, ?, ?, ?)",
    );
  }

  keep({ id, request, outcome, at }: Exchange, isPublic: boolean): void {
    this.#insert.run(
      id,
      request.member,
      JSON.stringify(request),
      JSON.stringify(outcome),
      isPublic ? 1 : 0,
      at,
    );
  }

  find(id: string, member: MemberId): Exchange | undefined {
    return read(
      this.#db
        .prepare("SELECT id, request, outcome, at FROM exchange WHERE id = ? AND member_id = ?")
        .get(id, member),
    );
  }

  findPublic(id: string): Exchange | undefined {
    return read(
      this.#db
        .prepare("SELECT id, request, outcome, at FROM exchange WHERE id = ? AND is_public = 1")
        .get(id),
    );
  }

  publish(id: string, member: MemberId): boolean {
    return (
      this.#db.prepare("UPDATE exchange SET is_public = 1 WHERE id = ? AND member_id = ?").run(id, member)
        .changes === 1
    );
  }

  clearBefore(at: string): number {
    return this.#db.prepare("DELETE FROM exchange WHERE at < ?").run(at).changes;
  }
}

/** Written by `keep` alone, in the same shape: what is read is what was kept. */
function read(found: unknown): Exchange | undefined {
  if (found === undefined) return undefined;
  const { id, request, outcome, at } = row.parse(found);
  return { id, at, request: JSON.parse(request) as Request, outcome: JSON.parse(outcome) as Outcome };
}
