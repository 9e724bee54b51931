import { z } from "zod";

/** A list of every setting that cannot be used, one sentence each. */
export class BadConfig extends Error {
  override readonly name = "BadConfig";
}

const emptyIsAbsent = (value: unknown): unknown => (value === "" ? undefined : value);

const schema = z.object({
  DISCORD_TOKEN: z.preprocess(
    emptyIsAbsent,
    z
      .string()
      .regex(/^\S{10,200}$/, "is not a bot token: it has no spaces and is some 70 characters long")
      .optional(),
  ),
  DISCORD_API_URL: z.preprocess(
    emptyIsAbsent,
    z
      .url({ protocol: /^https?$/, error: "is not an address: try https://discord.com/api" })
      .default("https://discord.com/api"),
  ),
  DISCORD_GUILD_ID: z.preprocess(
    emptyIsAbsent,
    z
      .string()
      .regex(/^\d{17,20}$/, "is not a server's id: it is a number of 17 to 20 digits")
      .optional(),
  ),
  DISCORD_FILE_HOSTS: z.preprocess(
    emptyIsAbsent,
    z.string().default("cdn.discordapp.com,media.discordapp.net"),
  ),
  DATABASE_FILE: z.preprocess(emptyIsAbsent, z.string().default("data/local/standpipe.sqlite")),
});

export interface Config {
  readonly token: string | undefined;
  readonly apiUrl: string;
  /** Commands are registered for this server alone; for all when absent. */
  readonly guildId: string | undefined;
  /** Hosts that attached files are fetched from, beside the API's own. */
  readonly fileHosts: readonly string[];
  readonly databaseFile: string;
}

/** Whether an attached file may be fetched from there. */
export function isFileHost({ apiUrl, fileHosts }: Config, url: URL): boolean {
  return url.host === new URL(apiUrl).host || (url.protocol === "https:" && fileHosts.includes(url.host));
}

/** Reads the settings once, at the start. Throws: BadConfig naming every bad one. */
export function readConfig(environment: NodeJS.ProcessEnv): Config {
  const read = schema.safeParse(environment);
  if (!read.success)
    throw new BadConfig(
      read.error.issues.map(({ path, message }) => `${path.join(".")} ${message}.`).join("\n"),
    );
  return {
    token: read.data.DISCORD_TOKEN,
    apiUrl: read.data.DISCORD_API_URL.replace(/\/$/, ""),
    guildId: read.data.DISCORD_GUILD_ID,
    fileHosts: read.data.DISCORD_FILE_HOSTS.split(",").map((host) => host.trim()),
    databaseFile: read.data.DATABASE_FILE,
  };
}
