import { randomBytes } from "node:crypto";
import { existsSync } from "node:fs";
import { dirname, isAbsolute, join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands } from "../commands/index.ts";
import { type App, createApp } from "./app.ts";
import { openChartRoom } from "./charts/index.ts";
import { type Config, readConfig } from "./config.ts";
import type { DrawChart } from "./kit/chart.ts";
import { dueNow } from "./kit/due-lines.ts";
import type { MemberId } from "./records/ids.ts";
import { type Clockwork, createClockwork } from "./reminders/clockwork.ts";
import type { Poster } from "./reminders/poster.ts";
import { openStore } from "./sqlite/index.ts";

/** The folder that holds package.json, whether running from source or built. */
export const ROOT = rootAbove(dirname(fileURLToPath(import.meta.url)));

function rootAbove(folder: string): string {
  return existsSync(join(folder, "package.json")) ? folder : rootAbove(dirname(folder));
}

/** How long old answers keep their buttons, days. */
const KEPT_DAYS = 30;
const DAY_MS = 86_400_000;

export interface Assembled {
  readonly app: App;
  readonly draw: DrawChart;
  isNews(eventId: string): boolean;
  /** What makes plans fall due; with a poster it sends the reminders too. */
  clockwork(poster?: Poster): Clockwork;
  /** What one member has to do now, in plain lines. */
  due(member: MemberId): readonly string[];
  close(): Promise<void>;
}

/** Settings from the environment and, where it stands, the .env file. Throws: BadConfig. */
export function loadConfig(): Config {
  const file = join(ROOT, ".env");
  if (existsSync(file)) process.loadEnvFile(file);
  return readConfig(process.env);
}

/** Puts the rooms together on one database file; the demo brings a clock of its own. Throws: DatabaseProblem. */
export function assemble(databaseFile: string, clock: () => number = Date.now): Assembled {
  const file =
    databaseFile === ":memory:" || isAbsolute(databaseFile) ? databaseFile : join(ROOT, databaseFile);
  const store = openStore(file, new Date(clock()).toISOString());
  const tidy = (): void => store.clearBefore(new Date(clock() - KEPT_DAYS * DAY_MS).toISOString());
  tidy();
  const daily = setInterval(tidy, DAY_MS);
  daily.unref();
  const charts = openChartRoom({
    fontFile: join(ROOT, "data/fonts/NotoSans-Regular.ttf"),
    report: (error) => console.error("[chart]", error),
  });
  const app = createApp({
    commands,
    records: store.records,
    exchanges: store.exchanges,
    clock,
    newId: () => randomBytes(12).toString("base64url"),
    report: (reference, error) => console.error(`[${reference}]`, error),
  });
  return {
    app,
    draw: charts.draw,
    isNews: (eventId) => store.isNews(eventId, new Date(clock()).toISOString()),
    clockwork: (poster) =>
      createClockwork({
        records: store.records,
        reminders: store.reminders,
        ...(poster === undefined ? {} : { poster }),
        clock,
        newKey: () => randomBytes(15).toString("base64url"),
        log: (line, error) => console.error(`[reminder] ${line}`, ...(error === undefined ? [] : [error])),
      }),
    due: (id) =>
      dueNow({ records: store.records, member: store.records.members.member(id, undefined), now: clock() }),
    async close() {
      clearInterval(daily);
      store.close();
      await charts.close();
    },
  };
}
