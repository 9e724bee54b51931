import type { Database } from "better-sqlite3";
import type { ExchangeRecords } from "../kit/exchange.ts";
import type { Records } from "../records/index.ts";
import { SqliteExchangeRecords } from "./exchange-records.ts";
import { SqliteInstrumentRecords } from "./instrument-records.ts";
import { SqliteLogRecords } from "./log-records.ts";
import { SqliteMemberRecords } from "./member-records.ts";
import { openDatabase } from "./open.ts";
import { SqliteTankRecords } from "./tank-records.ts";

export { DatabaseProblem } from "./open.ts";

export interface Store {
  readonly records: Records;
  readonly exchanges: ExchangeRecords;
  close(): void;
}

/** Opens the file and puts every kind of record on it. Throws: DatabaseProblem. */
export function openStore(file: string, now: string): Store {
  const db: Database = openDatabase(file, now);
  return {
    records: {
      members: new SqliteMemberRecords(db),
      tanks: new SqliteTankRecords(db),
      log: new SqliteLogRecords(db),
      instruments: new SqliteInstrumentRecords(db),
    },
    exchanges: new SqliteExchangeRecords(db),
    close: () => db.close(),
  };
}
