import { ApplicationCommandOptionType, type ChatInputCommandInteraction } from "discord.js";
import { LARGEST_FILE } from "../kit/file-option.ts";
import type { Request } from "../kit/request.ts";
import { quoted } from "../kit/text.ts";
import { UserError } from "../kit/user-error.ts";

/** How long a file may take to arrive, ms. */
const DOWNLOAD_MS = 20_000;

/**
 * The request with each attached file handed over in place of its id.
 * Throws: UserError when a file is too large, or comes from elsewhere than the platform's own hosts.
 */
export async function withFiles(
  interaction: ChatInputCommandInteraction,
  request: Request,
  keepFile: (name: string, content: string) => string,
  isOwnHost: (url: URL) => boolean,
): Promise<Request> {
  const [first] = interaction.options.data;
  const given =
    first?.type === ApplicationCommandOptionType.Subcommand
      ? (first.options ?? [])
      : interaction.options.data;
  const options: Record<string, string> = { ...request.options };
  for (const { name, attachment } of given) {
    if (attachment === undefined || attachment === null) continue;
    if (attachment.size > LARGEST_FILE)
      throw new UserError(
        "bad-input",
        `${quoted(attachment.name)} has ${Math.ceil(attachment.size / 1024 / 1024)} MB; at most ${LARGEST_FILE / 1024 / 1024} MB fit. Split it in two.`,
      );
    options[name] = keepFile(
      attachment.name,
      await download(new URL(attachment.url), attachment.name, isOwnHost),
    );
  }
  return { ...request, options };
}

async function download(url: URL, name: string, isOwnHost: (url: URL) => boolean): Promise<string> {
  if (!isOwnHost(url))
    throw new UserError("not-now", `${quoted(name)} comes from a place this bot does not fetch from.`);
  try {
    const response = await fetch(url, { signal: AbortSignal.timeout(DOWNLOAD_MS), redirect: "error" });
    if (!response.ok) throw new Error(`status ${response.status}`);
    const bytes = await response.arrayBuffer();
    if (bytes.byteLength > LARGEST_FILE) throw new Error("larger than announced");
    return new TextDecoder().decode(bytes);
  } catch (error) {
    throw new UserError("not-now", `${quoted(name)} could not be fetched. Please attach it again.`, {
      cause: error,
    });
  }
}
