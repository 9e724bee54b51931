import type { Database } from "better-sqlite3";
import type { ExchangeRecords } from "../kit/exchange.ts";
import type { Records } from "../records/index.ts";
import type { ReminderRecords } from "../records/plan.ts";
import { SqliteBreedingRecords } from "./breeding-records.ts";
import { SqliteExchangeRecords } from "./exchange-records.ts";
import { SqliteHelpRecords } from "./help-records.ts";
import { SqliteInstrumentRecords } from "./instrument-records.ts";
import { SqliteLogRecords } from "./log-records.ts";
import { SqliteMemberRecords } from "./member-records.ts";
import { openDatabase } from "./open.ts";
import { SqlitePlanRecords } from "./plan-records.ts";
import { SqliteReminderRecords } from "./reminder-records.ts";
import { SqliteSaltProductRecords } from "./salt-product-records.ts";
import { SqliteTankRecords } from "./tank-records.ts";
import { SqliteTargetRecords } from "./target-records.ts";
import { SqliteUploadRecords } from "./upload-records.ts";

export { DatabaseProblem } from "./open.ts";

export interface Store {
  readonly records: Records;
  readonly exchanges: ExchangeRecords;
  readonly reminders: ReminderRecords;
  /** True the first time an event's id is given, whichever process asks. */
  isNews(eventId: string, now: string): boolean;
  /** Clears away exchanges, seen events and uploads older than this. */
  clearBefore(at: string): void;
  close(): void;
}

/** Opens the file and puts every kind of record on it. Throws: DatabaseProblem. */
export function openStore(file: string, now: string): Store {
  const db: Database = openDatabase(file, now);
  const exchanges = new SqliteExchangeRecords(db);
  const see = db.prepare("INSERT INTO seen_event (id, at) VALUES (?, ?) ON CONFLICT DO NOTHING");
  return {
    records: {
      members: new SqliteMemberRecords(db),
      tanks: new SqliteTankRecords(db),
      log: new SqliteLogRecords(db),
      instruments: new SqliteInstrumentRecords(db),
      saltProducts: new SqliteSaltProductRecords(db),
      targets: new SqliteTargetRecords(db),
      uploads: new SqliteUploadRecords(db),
      breeding: new SqliteBreedingRecords(db),
      plans: new SqlitePlanRecords(db),
      help: new SqliteHelpRecords(db),
    },
    exchanges,
    reminders: new SqliteReminderRecords(db),
    isNews: (eventId, now) => see.run(eventId, now).changes === 1,
    clearBefore(at) {
      exchanges.clearBefore(at);
      db.prepare("DELETE FROM seen_event WHERE at < ?").run(at);
      db.prepare("DELETE FROM upload WHERE at < ?").run(at);
      db.prepare("DELETE FROM letter WHERE state IN ('sent', 'refused') AND created_at < ?").run(at);
    },
    close: () => db.close(),
  };
}
