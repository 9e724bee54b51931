import {
  type AutocompleteInteraction,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  Client,
  DiscordAPIError,
  Events,
  GatewayIntentBits,
  type Interaction,
  ModalBuilder,
  type ModalSubmitInteraction,
  Options,
  Partials,
  REST,
  Routes,
  type StringSelectMenuInteraction,
  TextInputBuilder,
  TextInputStyle,
} from "discord.js";
import type { App, Told } from "../app.ts";
import type { DrawChart } from "../kit/chart.ts";
import { findCommand } from "../kit/command.ts";
import type { Request } from "../kit/request.ts";
import { UserError } from "../kit/user-error.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import { buttonId, readButtonId, readDutyButtonId } from "./button-id.ts";
import { readCaseId, readOpenFormId } from "./case-ids.ts";
import {
  caseFilled,
  isBareOpen,
  messageCommands,
  openFilled,
  openFromMessage,
  pressCase,
  raiseUnanswered,
  showOpenForm,
} from "./cases.ts";
import { withFiles } from "./files.ts";
import { answerBelow, questionOf } from "./mention.ts";
import { registrationOf } from "./registration.ts";
import { renderRemark, renderWorking } from "./render.ts";
import { memberOf, requestOf } from "./request.ts";
import { type Answerable, isPastAnswering, respond, type Shown, tell } from "./respond.ts";
import { type ThreadKeeper, threadKeeper } from "./threads.ts";

export interface DiscordParts {
  readonly app: App;
  /** Left out, charts are told in words alone. */
  readonly draw?: DrawChart;
  readonly token: string;
  readonly apiUrl: string;
  readonly guildId: string | undefined;
  /** Whether an attached file's address is the platform's own; nothing is fetched from elsewhere. */
  readonly isOwnHost: (url: URL) => boolean;
  /** True the first time an event's id is seen: the platform may deliver one twice. */
  readonly isNews: (eventId: string) => boolean;
  readonly log: (line: string, error?: unknown) => void;
}

/** The parts of a bot that is online. */
interface LiveParts extends DiscordParts {
  readonly threads: ThreadKeeper;
}

export interface RunningBot {
  stop(): Promise<void>;
  /** Looks now for help cases nobody has answered, as it does by itself every minute. */
  raise(): Promise<void>;
}

/** The token was refused: nobody can go online with it. */
export class TokenRefused extends Error {
  override readonly name = "TokenRefused";
}

const GONE =
  "That answer is too old: its working has been cleared away. Type the command again for a fresh one.";

const NOT_THEIRS =
  "Only the one who asked can open this, and only for a while. Ask it yourself with /ask, and I look into your record.";

/** Goes online, registers the commands and answers. Throws: TokenRefused; network errors as they come. */
export async function startDiscord(parts: DiscordParts): Promise<RunningBot> {
  const { token, apiUrl, log } = parts;
  const client = new Client({
    // None of these needs leave: the text is handed over where the bot is named, and in direct messages.
    intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
    // A direct conversation is not known before its first message.
    partials: [Partials.Channel],
    rest: { api: apiUrl },
    allowedMentions: { parse: [] },
    // Nothing is read from the caches: keep them empty.
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      GuildMemberManager: { maxSize: 0, keepOverLimit: (member) => member.id === member.client.user.id },
      UserManager: { maxSize: 0, keepOverLimit: (user) => user.id === user.client.user.id },
      PresenceManager: 0,
      ReactionManager: 0,
    }),
  });
  const threads = threadKeeper({ app: parts.app, rest: client.rest, log });
  const raising = raiseUnanswered({ app: parts.app, threads, log });
  client.on(Events.InteractionCreate, (interaction) => {
    if (!parts.isNews(interaction.id)) return;
    handle(interaction, { ...parts, threads }).catch((error: unknown) => {
      if (isPastAnswering(error)) log(`too late to answer interaction ${interaction.id}`);
      else log(`could not answer interaction ${interaction.id}`, error);
    });
  });
  client.on(Events.MessageCreate, (message) => {
    // Beside a plain answer in a channel people talk of other things too: only a thread counts.
    if (message.channel.isThread() && !message.author.bot && message.webhookId === null)
      parts.app.heard(message.channelId, `discord:${message.author.id}` as MemberId);
    const request = questionOf(message, client.user?.id ?? "");
    if (request === undefined || !parts.isNews(message.id)) return;
    shown(parts.app.answer(request), parts)
      .then((told) => answerBelow(message, told))
      .catch((error: unknown) => log(`could not answer message ${message.id}`, error));
  });
  client.on(Events.Error, (error) => log("connection error", error));
  client.on(Events.ShardReconnecting, () => log("connection lost, reconnecting"));
  client.on(Events.ShardResume, () => log("connection resumed"));
  const ready = new Promise<void>((resolve, reject) => {
    client.once(Events.ClientReady, () => resolve());
    client.once(Events.Invalidated, () => reject(new TokenRefused()));
  });
  try {
    await client.login(token);
    await ready;
    await registerCommands(parts, client.application?.id ?? "");
  } catch (error) {
    await client.destroy();
    throw isTokenError(error) ? new TokenRefused(undefined, { cause: error }) : error;
  }
  log(`online as ${client.user?.tag ?? "?"}, ${parts.app.commands.length} commands registered`);
  return {
    async stop() {
      raising.stop();
      await client.destroy();
    },
    raise: () => raising.tick(),
  };
}

/** Publishes the commands, to one server or to all. */
export async function registerCommands(
  { app, token, apiUrl, guildId }: Pick<DiscordParts, "app" | "token" | "apiUrl" | "guildId">,
  applicationId: string,
): Promise<void> {
  const rest = new REST({ api: apiUrl, version: "10" }).setToken(token);
  const body = [...registrationOf(app.commands), ...messageCommands];
  if (guildId === undefined) {
    await rest.put(Routes.applicationCommands(applicationId), { body });
    return;
  }
  // Where a command may be used beside servers is told of commands for all servers only.
  const forOne = body.map(({ contexts: _, integration_types: __, ...command }) => command);
  await rest.put(Routes.applicationGuildCommands(applicationId, guildId), { body: forOne });
}

function isTokenError(error: unknown): boolean {
  return (
    (error instanceof Error && "code" in error && error.code === "TokenInvalid") ||
    (error instanceof DiscordAPIError && error.status === 401)
  );
}

async function handle(interaction: Interaction, parts: LiveParts): Promise<void> {
  const { app } = parts;
  if (interaction.isAutocomplete()) return complete(interaction, app);
  if (interaction.isMessageContextMenuCommand()) return openFromMessage(interaction, parts);
  if (interaction.isChatInputCommand()) {
    if (isBareOpen(interaction)) return showOpenForm(interaction);
    const request = requestOf(interaction);
    const command = findCommand(app.commands, request.path);
    const expected = request.audience ?? command?.audience ?? "asker";
    return respond(
      interaction,
      here(interaction, answered(interaction, request, parts), parts),
      expected,
      command?.isSlow ?? false,
    );
  }
  if (interaction.isButton()) return press(interaction, parts);
  if (interaction.isStringSelectMenu()) return pick(interaction, parts);
  if (interaction.isModalSubmit()) return fillIn(interaction, parts);
}

/** Hands attached files over before the command runs. */
async function answered(
  interaction: ChatInputCommandInteraction,
  request: Request,
  { app, isOwnHost }: DiscordParts,
): Promise<Told> {
  const keep = (name: string, content: string): string => app.keepFile(request.member, name, content);
  try {
    return await app.answer(await withFiles(interaction, request, keep, isOwnHost));
  } catch (error) {
    if (error instanceof UserError) return app.decline(request, error.message);
    throw error;
  }
}

async function complete(interaction: AutocompleteInteraction, app: App): Promise<void> {
  const { name, value } = interaction.options.getFocused(true);
  const texts = app.suggest(requestOf(interaction), name, String(value));
  await interaction.respond(
    texts.filter((text) => text !== "" && text.length <= 100).map((text) => ({ name: text, value: text })),
  );
}

async function press(interaction: ButtonInteraction, parts: LiveParts): Promise<void> {
  const { app } = parts;
  const ofCase = readCaseId(interaction.customId);
  if (ofCase !== undefined) return pressCase(interaction, ofCase, parts);
  const duty = readDutyButtonId(interaction.customId);
  if (duty !== undefined)
    return respond(interaction, here(interaction, answerDuty(interaction, duty, app), parts), "asker", false);
  const pressed = readButtonId(interaction.customId);
  const member = memberOf(interaction);
  if (pressed === undefined) return tell(interaction, renderRemark(GONE), true);
  const { deed, exchangeId, index } = pressed;
  switch (deed) {
    case "choose":
      return respond(
        interaction,
        here(interaction, app.choose(exchangeId, member, index), parts),
        "asker",
        false,
      );
    case "fill":
      return openForm(interaction, app, exchangeId);
    case "working": {
      const outcome = app.recall(exchangeId, member)?.outcome;
      return outcome?.kind === "reply" && outcome.working !== undefined
        ? tell(interaction, renderWorking(outcome.title, outcome.working), true)
        : tell(interaction, renderRemark(GONE), true);
    }
    case "post": {
      const exchange = app.publish(exchangeId, member);
      if (exchange === undefined) return tell(interaction, renderRemark(GONE), true);
      const told: Told = { id: exchange.id, outcome: { ...exchange.outcome, audience: "channel" } };
      return respond(interaction, shown(Promise.resolve(told), parts), "channel", false);
    }
    case "show": {
      const exchange = app.recall(exchangeId, member);
      return exchange === undefined
        ? tell(interaction, renderRemark(NOT_THEIRS), true)
        : respond(interaction, shown(Promise.resolve(exchange), parts), "asker", false);
    }
    default:
      return tell(interaction, renderRemark(GONE), true);
  }
}

/** A reminder's button does what the command of its name does. */
function answerDuty(
  interaction: ButtonInteraction,
  { deed, dutyId }: NonNullable<ReturnType<typeof readDutyButtonId>>,
  app: App,
): Promise<Told> {
  return app.answer({
    member: memberOf(interaction),
    ...(interaction.guildId === null ? {} : { club: `discord:${interaction.guildId}` as ClubId }),
    isSteward: false,
    path: `plan ${deed}`,
    options: deed === "due" ? {} : { task: dutyId },
    answers: {},
    audience: "asker",
  });
}

async function openForm(interaction: ButtonInteraction, app: App, exchangeId: string): Promise<void> {
  const exchange = app.recall(exchangeId, memberOf(interaction));
  const typed = exchange?.outcome.kind === "question" ? exchange.outcome.typed : undefined;
  if (exchange === undefined || typed === undefined) return tell(interaction, renderRemark(GONE), true);
  const before = exchange.request.options[typed.option]?.slice(0, 2000);
  const input = new TextInputBuilder()
    .setCustomId("text")
    .setStyle(TextInputStyle.Short)
    .setPlaceholder(typed.example.slice(0, 100))
    .setMaxLength(2000)
    .setRequired(true);
  if (before !== undefined && before !== "") input.setValue(before);
  await interaction.showModal(
    new ModalBuilder()
      .setCustomId(buttonId("form", exchangeId))
      .setTitle(exchange.outcome.title.slice(0, 45))
      .addLabelComponents((label) => label.setLabel(typed.label.slice(0, 45)).setTextInputComponent(input)),
  );
}

async function pick(interaction: StringSelectMenuInteraction, parts: LiveParts): Promise<void> {
  const picked = readButtonId(interaction.customId);
  if (picked === undefined) return tell(interaction, renderRemark(GONE), true);
  const index = Number(interaction.values[0] ?? "-1");
  const told = parts.app.choose(picked.exchangeId, memberOf(interaction), index);
  return respond(interaction, here(interaction, told, parts), "asker", false);
}

async function fillIn(interaction: ModalSubmitInteraction, parts: LiveParts): Promise<void> {
  const opening = readOpenFormId(interaction.customId);
  if (opening !== undefined) return openFilled(interaction, opening, parts);
  const ofCase = readCaseId(interaction.customId);
  if (ofCase !== undefined) return caseFilled(interaction, ofCase, parts);
  const form = readButtonId(interaction.customId);
  if (form === undefined) return tell(interaction, renderRemark(GONE), true);
  const text = interaction.fields.getTextInputValue("text");
  const told = parts.app.fill(form.exchangeId, memberOf(interaction), text);
  return respond(interaction, here(interaction, told, parts), "asker", false);
}

/** What was said, and where it is about a help case, its thread brought up to date. */
async function here(interaction: Answerable, work: Promise<Told>, parts: LiveParts): Promise<Shown> {
  return parts.threads.keep(interaction, await shown(work, parts));
}

/** What was said, with its chart drawn where there is one. */
async function shown(work: Promise<Told>, { draw }: DiscordParts): Promise<Shown> {
  const told = await work;
  const chart = told.outcome.kind === "reply" ? (told.outcome.chart ?? told.outcome.picture) : undefined;
  return chart === undefined ? told : { ...told, picture: await draw?.(chart) };
}
