import type { Database } from "better-sqlite3";
import membersTanksLog from "./migrations/0001-members-tanks-log.ts";
import tankPlant from "./migrations/0002-tank-plant.ts";
import targets from "./migrations/0003-targets.ts";
import uploadsShares from "./migrations/0004-uploads-shares.ts";
import plans from "./migrations/0005-plans.ts";
import breeding from "./migrations/0006-breeding.ts";
import help from "./migrations/0007-help.ts";
import wayBack from "./migrations/0008-way-back.ts";

export interface Migration {
  readonly name: string;
  readonly sql: string;
}

/** In order; one that has shipped is never edited, the next corrects it. */
const MIGRATIONS: readonly Migration[] = [
  membersTanksLog,
  tankPlant,
  targets,
  uploadsShares,
  plans,
  breeding,
  help,
  wayBack,
];

/** The file was written by a later version than this one. */
export class NewerDatabase extends Error {
  override readonly name = "NewerDatabase";
}

/** The file holds tables, but none of this program's. */
export class ForeignDatabase extends Error {
  override readonly name = "ForeignDatabase";
}

/**
 * The steps that the database has already taken; none for an empty one. Writes nothing.
 * Throws: NewerDatabase, ForeignDatabase.
 */
export function stepsTaken(db: Database): ReadonlySet<string> {
  const tables = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all().map(String);
  if (tables.length === 0) return new Set();
  if (!tables.includes("migration")) throw new ForeignDatabase();
  const done = new Set(db.prepare("SELECT name FROM migration").pluck().all().map(String));
  const known = new Set(MIGRATIONS.map(({ name }) => name));
  const unknown = [...done].find((name) => !known.has(name));
  if (unknown !== undefined) throw new NewerDatabase(unknown);
  return done;
}

/** Brings the database up to date; each step and its ledger entry share one transaction. */
export function migrate(db: Database, now: string, taken: ReadonlySet<string>): void {
  for (const { name, sql } of MIGRATIONS) {
    if (taken.has(name)) continue;
    db.transaction(() => {
      // Looked up anew within the lock: another process may have taken the step meanwhile.
      if (stepsTaken(db).has(name)) return;
      db.exec("CREATE TABLE IF NOT EXISTS migration (name TEXT PRIMARY KEY, at TEXT NOT NULL) STRICT");
      db.exec(sql);
      db.prepare("INSERT INTO migration (name, at) VALUES (?, ?)").run(name, now);
    }).exclusive();
  }
}
