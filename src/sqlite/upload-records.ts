import type { Database } from "better-sqlite3";
import { z } from "zod";
import type { MemberId } from "../records/ids.ts";
import type { Upload, UploadRecords } from "../records/upload.ts";

/** Files one member may have waiting; an older one makes room. */
const MOST_UPLOADS = 3;

const row = z.object({ id: z.string(), name: z.string(), content: z.string() });

export class SqliteUploadRecords implements UploadRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  keep(owner: MemberId, { id, name, content }: Upload, now: string): void {
    this.#db
      .transaction(() => {
        this.#db.prepare("INSERT INTO member (id) VALUES (?) ON CONFLICT DO NOTHING").run(owner);
        this.#db
          .prepare("INSERT INTO upload (id, member_id, name, content, at) VALUES (?, ?, ?, ?, ?)")
          .run(id, owner, name, content, now);
        this.#db
          .prepare(
            `DELETE FROM upload WHERE member_id = ? AND id NOT IN
               (SELECT id FROM upload WHERE member_id = ? ORDER BY at DESC, rowid DESC LIMIT ?)`,
          )
          .run(owner, owner, MOST_UPLOADS);
      })
      .immediate();
  }

  find(owner: MemberId, id: string): Upload | undefined {
    const found = this.#db
      .prepare("SELECT id, name, content FROM upload WHERE id = ? AND member_id = ?")
      .get(id, owner);
    return found === undefined ? undefined : row.parse(found);
  }

  drop(owner: MemberId, id: string): void {
    this.#db.prepare("DELETE FROM upload WHERE id = ? AND member_id = ?").run(id, owner);
  }
}
