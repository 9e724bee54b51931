import { assemble } from "./assemble.ts";
import { type Config, isFileHost } from "./config.ts";
import { type RunningBot, startDiscord, TokenRefused } from "./discord/index.ts";
import { reminderPoster } from "./discord/send-reminder.ts";

/** Longest pause between two tries to reach the platform, ms. */
const LONGEST_PAUSE_MS = 60_000;

/** Runs the bot until it is told to stop; the exit code is 77 when the token is refused. */
export async function runBot(config: Config, token: string): Promise<number> {
  const { app, draw, isNews, clockwork, close } = assemble(config.databaseFile);
  const reminders = clockwork(reminderPoster({ token, apiUrl: config.apiUrl, clock: Date.now }));
  const stopped = new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  const log = (line: string, error?: unknown): void => {
    console.log(`${new Date().toISOString()} ${line}`);
    if (error !== undefined) console.error(error);
  };
  const start = () =>
    startDiscord({
      app,
      draw,
      token,
      apiUrl: config.apiUrl,
      guildId: config.guildId,
      isOwnHost: (url) => isFileHost(config, url),
      isNews,
      log,
    });
  try {
    const bot = await untilReached(start, stopped, log);
    if (bot !== undefined) {
      reminders.start();
      await stopped;
      await reminders.stop();
      await bot.stop();
    }
    return 0;
  } catch (error) {
    if (!(error instanceof TokenRefused)) throw error;
    process.stderr.write(
      "The bot token was refused. Put a valid one into DISCORD_TOKEN (the developer portal issues it), or leave it empty for the terminal chat.\n",
    );
    return 77;
  } finally {
    await close();
  }
}

/** Tries again, at growing pauses, while the platform cannot be reached. */
async function untilReached(
  start: () => Promise<RunningBot>,
  stopped: Promise<void>,
  log: (line: string) => void,
): Promise<RunningBot | undefined> {
  let isStopped = false;
  stopped.then(() => {
    isStopped = true;
  });
  for (let pauseMs = 1_000; !isStopped; pauseMs = Math.min(pauseMs * 2, LONGEST_PAUSE_MS)) {
    try {
      return await start();
    } catch (error) {
      if (error instanceof TokenRefused || !isUnreachable(error)) throw error;
      log(`the chat platform cannot be reached (${messageOf(error)}); trying again in ${pauseMs / 1000} s`);
      await Promise.race([stopped, new Promise((resolve) => setTimeout(resolve, pauseMs))]);
    }
  }
  return undefined;
}

/** A failing network or server, as against a fault of ours. */
function isUnreachable(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = "code" in error ? String(error.code) : "";
  const status = "status" in error ? Number(error.status) : 0;
  return (
    status >= 500 ||
    /^(E[A-Z]+|UND_ERR_\w+)$/.test(code) ||
    (error.cause !== undefined && isUnreachable(error.cause))
  );
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
