import { reminderPoster } from "../../src/discord/send-reminder.ts";
import { type Clockwork, createClockwork } from "../../src/reminders/clockwork.ts";
import type { Club } from "./club.ts";
import { type DiscordClub, openDiscordClub } from "./discord-club.ts";
import type { Message, Platform } from "./loopback/index.ts";

/** Every story begins at ten on a Wednesday, UTC, whatever the hour it is told at. */
const MORNING = Date.UTC(2027, 2, 3, 10);

/** The club on the chat platform with its reminders, on one clock: the platform's. */
export interface ReminderClub extends DiscordClub {
  readonly clockwork: Clockwork;
  readonly reminderLog: string[];
  /** Lets time pass and the clockwork look. */
  pass(ms: number): Promise<void>;
}

export async function openReminderClub(): Promise<ReminderClub> {
  const here = await openDiscordClub();
  const { platform, club } = here;
  platform.advance(MORNING - platform.world.now());
  club.now = platform.world.now();
  const reminderLog: string[] = [];
  const clockwork = discordClockwork(platform, club, reminderLog);
  return {
    ...here,
    clockwork,
    reminderLog,
    async pass(ms) {
      platform.advance(ms);
      club.now = platform.world.now();
      await clockwork.tick();
    },
  };
}

let keys = 0;

export function discordClockwork(
  platform: Platform,
  { store: { records, reminders } }: Pick<Club, "store">,
  log: string[] = [],
): Clockwork {
  return createClockwork({
    records,
    reminders,
    poster: reminderPoster({
      token: platform.token,
      apiUrl: platform.apiUrl,
      clock: () => platform.world.now(),
    }),
    clock: () => platform.world.now(),
    newKey: () => `key-${process.pid}-${keys++}`,
    log: (line, error) => log.push(error === undefined ? line : `${line}: ${String(error)}`),
  });
}

/** Everything the bot has sent to that member by itself, oldest first. */
export function directMessages(platform: Platform, name: string): readonly Message[] {
  return [...platform.world.dmWithBot(platform.user(name)).messages.values()].filter(
    ({ author, origin }) => author === platform.world.bot && origin === undefined,
  );
}
