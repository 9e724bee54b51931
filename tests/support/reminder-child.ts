/** A process that does nothing but make plans fall due and send the reminders, until it is killed. */

import { reminderPoster } from "../../src/discord/send-reminder.ts";
import { createClockwork } from "../../src/reminders/clockwork.ts";
import { openStore } from "../../src/sqlite/index.ts";

export interface ChildOrder {
  readonly file: string;
  readonly apiUrl: string;
  readonly token: string;
  /** By how much the platform's clock is ahead of the machine's, ms. */
  readonly aheadMs: number;
}

process.on("message", async ({ file, apiUrl, token, aheadMs }: ChildOrder) => {
  const clock = (): number => Date.now() + aheadMs;
  const { records, reminders } = openStore(file, new Date(clock()).toISOString());
  let keys = 0;
  const clockwork = createClockwork({
    records,
    reminders,
    poster: reminderPoster({ apiUrl, token, clock }),
    clock,
    newKey: () => `c${process.pid}-${keys++}`,
    log: () => undefined,
  });
  for (;;) {
    await clockwork.tick();
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
});
process.send?.("ready");
