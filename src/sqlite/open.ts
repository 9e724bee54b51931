import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import SqliteDatabase, { type Database } from "better-sqlite3";
import { ForeignDatabase, migrate, NewerDatabase, stepsTaken } from "./migrate.ts";

/** The database cannot be used; the message says why in a sentence, and nothing was touched. */
export class DatabaseProblem extends Error {
  override readonly name = "DatabaseProblem";
}

/** How long to wait for another process to finish its writing, ms. */
const BUSY_MS = 2_000;

/**
 * Opens the database file (":memory:" for one that is forgotten) and brings it up to date.
 * Throws: DatabaseProblem when it is locked, unreadable, no database, or newer than this program.
 */
export function openDatabase(file: string, now: string): Database {
  let db: Database | undefined;
  try {
    if (file !== ":memory:") mkdirSync(dirname(file), { recursive: true });
    db = new SqliteDatabase(file, { timeout: BUSY_MS });
    db.pragma("foreign_keys = ON");
    db.pragma("secure_delete = ON");
    // A file that is no database, or not this program's, is found out before anything is written.
    const taken = stepsTaken(db);
    db.pragma("journal_mode = WAL");
    db.pragma("synchronous = NORMAL");
    migrate(db, now, taken);
    return db;
  } catch (error) {
    db?.close();
    throw new DatabaseProblem(sentence(file, error), { cause: error });
  }
}

function sentence(file: string, error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (error instanceof NewerDatabase)
    return `The database ${file} was written by a newer version (it has “${error.message}”). Update this program, or point DATABASE_FILE at another file.`;
  if (error instanceof ForeignDatabase)
    return `${file} is the database of another program. It was left as it is: point DATABASE_FILE at another file.`;
  if (code === "SQLITE_NOTADB")
    return `${file} is not a database this program can read. It was left as it is.`;
  if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED"))
    return `The database ${file} is locked by another program. Close that one, or point DATABASE_FILE at another file. Nothing was changed.`;
  if (code.startsWith("SQLITE_READONLY") || code === "EACCES" || code === "EPERM" || code === "EROFS")
    return `The database ${file} may not be written by this user. Nothing was changed.`;
  if (code.startsWith("SQLITE_CANTOPEN") || code === "EEXIST" || code === "ENOTDIR" || code === "EISDIR")
    return `The database ${file} cannot be opened: check that the path is a file in a folder this user may write to.`;
  if (code.startsWith("SQLITE_CORRUPT"))
    return `The database ${file} is damaged. It was left as it is: restore it from a copy.`;
  return `The database ${file} cannot be used (${error instanceof Error ? error.message : String(error)}).`;
}
