import {
  ActionRowBuilder,
  type APIEmbed,
  type APIMessage,
  ButtonBuilder,
  ButtonStyle,
  DefaultRestOptions,
  DiscordAPIError,
  REST,
  type RESTOptions,
  Routes,
} from "discord.js";
import type { Letter } from "../records/plan.ts";
import { letterText } from "../reminders/letter-text.ts";
import type { Posted, Poster } from "../reminders/poster.ts";
import { dutyButtonId } from "./button-id.ts";
import { clipped, plain } from "./render.ts";

const PREFIX = "discord:";
/** Of the platform's 50 a second for the whole bot some are left to everything else. */
const REQUESTS_PER_SECOND = 40;
/** The platform counts its ids from here. Source: Discord's documentation, page API Reference, Snowflakes. */
const PLATFORM_EPOCH_MS = 1_420_070_400_000;
/** A clock may have been set to the wrong day when a letter was tried: the search begins so much earlier. */
const CLOCK_SLACK_MS = 26 * 3_600_000;
/** Messages on one page of a channel's past, and pages turned in search of one letter. */
const PAGE = 100;
const MOST_PAGES = 50;
/** Rows of a message that hold the buttons of one reminder each; one more is for all. */
const MOST_ROWS = 4;
const LONGEST_DESCRIPTION = 4096;
/**
 * What means that nothing was posted there, and nothing will be: unknown channel or user, no access, no
 * permission, direct messages refused, a locked thread, a forum. Source: page Opcodes and Status Codes.
 */
const NOT_THERE = new Set([10003, 10013, 50001, 50007, 50013, 50035, 50083, 40058, 50278]);

/** A sender of reminders with a connection of its own: answers to members never wait behind it. */
export function reminderPoster(parts: {
  readonly token: string;
  readonly apiUrl: string;
  readonly clock: () => number;
  readonly requestsPerSecond?: number;
  /** How a request leaves; evenly spaced if left out. */
  readonly makeRequest?: RESTOptions["makeRequest"];
}): Poster {
  const requestsPerSecond = parts.requestsPerSecond ?? REQUESTS_PER_SECOND;
  const rest = new REST({
    api: parts.apiUrl,
    version: "10",
    globalRequestsPerSecond: requestsPerSecond,
    makeRequest: parts.makeRequest ?? evenlySpaced(requestsPerSecond),
  }).setToken(parts.token);
  const directChannels = new Map<string, string>();

  async function directChannel(userId: string): Promise<string> {
    const known = directChannels.get(userId);
    if (known !== undefined) return known;
    const opened = await rest.post(Routes.userChannels(), { body: { recipient_id: userId } });
    const id = idOf(opened);
    directChannels.set(userId, id);
    return id;
  }

  /** The places to try, in order; a direct channel is opened when its turn comes. */
  function placesOf({ owner, wishes }: Letter): readonly (() => Promise<string>)[] {
    const userId = owner.slice(PREFIX.length);
    const direct = () => directChannel(userId);
    const to = (id: string) => async () => id;
    const { place, fallback } = wishes;
    const first = place === "dm" ? direct : to(place);
    const second = place === "dm" ? (fallback === undefined ? [] : [to(fallback)]) : [direct];
    return [first, ...second];
  }

  /**
   * The letter where an earlier attempt may have put it: among the newest messages, whatever our clock said
   * then, and among all since the first attempt: the second or the tenth may have got it through.
   */
  async function found(letter: Letter, channelId: string): Promise<string | undefined> {
    const page = async (query: Record<string, string>): Promise<readonly APIMessage[]> =>
      (await rest.get(Routes.channelMessages(channelId), {
        query: new URLSearchParams({ limit: String(PAGE), ...query }),
      })) as APIMessage[];
    const isIt = ({ components }: APIMessage): boolean =>
      JSON.stringify(components ?? []).includes(`:${letter.key}"`);
    const newest = await page({});
    const hit = newest.find(isIt);
    if (hit !== undefined || newest.length < PAGE) return hit?.id;
    const since = Date.parse(letter.firstTriedAt ?? letter.createdAt) - CLOCK_SLACK_MS - PLATFORM_EPOCH_MS;
    let after = String(BigInt(Math.max(0, since)) << 22n);
    for (let turned = 0; turned < MOST_PAGES; turned++) {
      const messages = await page({ after });
      const found = messages.find(isIt);
      const [last] = messages;
      if (found !== undefined || last === undefined || messages.length < PAGE) return found?.id;
      after = last.id;
    }
    return undefined;
  }

  async function tryPlace(letter: Letter, place: () => Promise<string>, wasTried: boolean): Promise<Posted> {
    try {
      const channelId = await place();
      const earlier = wasTried ? await orNothing(found(letter, channelId)) : undefined;
      const messageId =
        earlier ??
        idOf(await rest.post(Routes.channelMessages(channelId), { body: messageOf(letter, parts.clock()) }));
      return { kind: "sent", place: channelId, messageId };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return error instanceof DiscordAPIError && NOT_THERE.has(Number(error.code))
        ? { kind: "refused", why }
        : { kind: "uncertain", why };
    }
  }

  return {
    prefix: PREFIX,
    async post(letter) {
      let last: Posted = { kind: "refused", why: "there is no place to send it to" };
      for (const place of placesOf(letter)) {
        last = await tryPlace(letter, place, letter.attempts > 0);
        if (last.kind !== "refused") return last;
      }
      return last;
    },
  };
}

/** One request after the other at an even pace: no second ever sees more of them than the platform takes. */
function evenlySpaced(requestsPerSecond: number): RESTOptions["makeRequest"] {
  let nextAt = 0;
  return async (url, init) => {
    const now = performance.now();
    nextAt = Math.max(now, nextAt + 1000 / requestsPerSecond);
    await new Promise((resolve) => setTimeout(resolve, nextAt - now));
    return DefaultRestOptions.makeRequest(url, init);
  };
}

/** Where the past may not be read, the platform's own memory of the nonce has to do. */
async function orNothing<T>(work: Promise<T | undefined>): Promise<T | undefined> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof DiscordAPIError && [50001, 50013].includes(Number(error.code))) return undefined;
    throw error;
  }
}

function messageOf(letter: Letter, now: number) {
  const { title, paragraphs, cautions, answerable } = letterText(letter, now);
  const warnings = cautions.map((text) => `🔶 ${plain(text)}`).join("\n");
  const rest = answerable.length - MOST_ROWS;
  const foot = rest > 0 ? `-# ${rest} more can be answered with /plan due.` : "";
  const fixed = [warnings, foot].filter(Boolean).join("\n\n");
  const userId = letter.owner.slice(PREFIX.length);
  const body = clipped(
    [`For <@${userId}>`, ...paragraphs.map(plain)].join("\n\n"),
    Math.max(0, LONGEST_DESCRIPTION - fixed.length - 4),
  );
  const embed: APIEmbed = {
    title: clipped(plain(title), 256),
    description: clipped([body, fixed].filter(Boolean).join("\n\n"), LONGEST_DESCRIPTION),
    color: 0x1f5f6b,
  };
  const button = (customId: string, label: string, style: ButtonStyle) =>
    new ButtonBuilder().setCustomId(customId).setLabel(clipped(label, 80)).setStyle(style);
  const rows = answerable
    .slice(0, MOST_ROWS)
    .map(({ dutyId, title: what, mayBeSkipped }) =>
      new ActionRowBuilder<ButtonBuilder>().addComponents(
        button(
          dutyButtonId("done", dutyId, letter.key),
          answerable.length === 1 ? "Done" : `Done: ${what}`,
          ButtonStyle.Success,
        ),
        button(dutyButtonId("later", dutyId, letter.key), "Later", ButtonStyle.Secondary),
        ...(mayBeSkipped
          ? [button(dutyButtonId("skip", dutyId, letter.key), "Skip", ButtonStyle.Secondary)]
          : []),
      ),
    );
  const all = new ActionRowBuilder<ButtonBuilder>().addComponents(
    button(dutyButtonId("due", 0, letter.key), "What is due", ButtonStyle.Secondary),
  );
  return {
    embeds: [embed],
    components: [...rows, all].map((row) => row.toJSON()),
    allowed_mentions: { parse: [] },
    // Within a few minutes the platform itself keeps a letter from being posted twice.
    nonce: letter.key,
    enforce_nonce: true,
  };
}

function idOf(answer: unknown): string {
  return (answer as { readonly id: string }).id;
}
