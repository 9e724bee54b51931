import { commands } from "../../commands/index.ts";
import { parseLine } from "../../src/console/parse-line.ts";
import { type RunningBot, startDiscord } from "../../src/discord/index.ts";
import { type Club, openClub } from "./club.ts";
import { type Exchange, type Message, type Platform, startPlatform } from "./loopback/index.ts";

/** The real app behind the real client library, on a chat platform of our own. */
export interface DiscordClub {
  readonly platform: Platform;
  readonly club: Club;
  readonly log: string[];
  /** Stops the bot and starts it anew on the same records, as after a restart. */
  restart(): Promise<void>;
  /** Looks for help cases that nobody has answered, as the bot does by itself every minute. */
  raise(): Promise<void>;
  close(): Promise<void>;
}

export async function openDiscordClub(): Promise<DiscordClub> {
  const platform = await startPlatform();
  const club = openClub();
  const log: string[] = [];
  const start = (): Promise<RunningBot> =>
    startDiscord({
      app: club.app,
      token: platform.token,
      apiUrl: platform.apiUrl,
      guildId: undefined,
      isOwnHost: (url) => url.host === new URL(platform.apiUrl).host,
      isNews: (id) => club.store.isNews(id, new Date(club.now).toISOString()),
      log: (line, error) => log.push(error === undefined ? line : `${line}: ${String(error)}`),
    });
  let bot = await start();
  return {
    platform,
    club,
    log,
    async restart() {
      await bot.stop();
      bot = await start();
    },
    raise: () => bot.raise(),
    async close() {
      await bot.stop();
      await platform.close();
      club.store.close();
    },
  };
}

type SlashCall = Parameters<Platform["slash"]>[0];

/** A typed line as a slash command of the platform. */
export function slashCall(line: string, user: string, extra: Partial<SlashCall> = {}): SlashCall {
  const { path, options, audience } = parseLine(line, commands);
  const show = audience === undefined ? {} : { show: audience === "channel" ? "everyone here" : "only me" };
  const [command = "", subcommand] = path.split(" ");
  return {
    user,
    command,
    ...(subcommand === undefined ? {} : { subcommand }),
    options: { ...options, ...show },
    ...extra,
  };
}

/** The button whose label begins so. Throws: Error when the message has none. */
export function buttonOf(message: Message, label: string): string {
  const found = message.buttons.find((each) => each.label.startsWith(label));
  if (found?.customId === undefined)
    throw new Error(`no button “${label}” among ${message.buttons.map((each) => each.label).join(", ")}`);
  return found.customId;
}

export async function saidIn(exchange: Exchange): Promise<string> {
  return (await exchange.final()).text;
}
