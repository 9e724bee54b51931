import {
  ApplicationCommandType,
  ApplicationIntegrationType,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  InteractionContextType,
  type MessageContextMenuCommandInteraction,
  type ModalSubmitInteraction,
  PermissionFlagsBits,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from "discord.js";
import type { App, Told } from "../app.ts";
import type { HelpCaseNote } from "../kit/reply.ts";
import type { Request } from "../kit/request.ts";
import { cleaned } from "../kit/text.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import { caseForm, openForm, openFormTexts } from "./case-card.ts";
import type { CaseId } from "./case-ids.ts";
import { renderRemark, renderWorking } from "./render.ts";
import { memberOf } from "./request.ts";
import { respond, type Shown, tell } from "./respond.ts";
import type { ThreadKeeper } from "./threads.ts";

/** Under “Apps” in the menu of any message. */
export const OPEN_FROM_MESSAGE = "Open a help thread";
const LONGEST_WORRY = 1500;

export const messageCommands: readonly RESTPostAPIContextMenuApplicationCommandsJSONBody[] = [
  {
    type: ApplicationCommandType.Message,
    name: OPEN_FROM_MESSAGE,
    integration_types: [ApplicationIntegrationType.GuildInstall],
    contexts: [InteractionContextType.Guild],
  },
];

type Here =
  | ButtonInteraction
  | ModalSubmitInteraction
  | MessageContextMenuCommandInteraction
  | ChatInputCommandInteraction;

interface Parts {
  readonly app: App;
  readonly threads: ThreadKeeper;
}

function requestAs(
  interaction: Here,
  path: string,
  options: Readonly<Record<string, string>>,
  member = memberOf(interaction),
): Request {
  return {
    member,
    ...(interaction.guildId === null ? {} : { club: `discord:${interaction.guildId}` as ClubId }),
    ...(interaction.guildId === null || interaction.channelId === null
      ? {}
      : { place: interaction.channelId }),
    isSteward: interaction.memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false,
    path,
    options: Object.fromEntries(
      Object.entries(options).flatMap(([name, text]) => {
        const clean = cleaned(text);
        return clean === "" ? [] : [[name, clean]];
      }),
    ),
    answers: {},
  };
}

async function kept(
  interaction: Here,
  work: Promise<Told>,
  { threads }: Parts,
  starter?: string,
): Promise<Shown> {
  return threads.keep(interaction, await work, starter);
}

/** With nothing typed the form opens. */
export function isBareOpen(interaction: ChatInputCommandInteraction): boolean {
  const [first] = interaction.options.data;
  return interaction.commandName === "case" && first?.name === "open" && (first.options ?? []).length === 0;
}

export async function showOpenForm(interaction: ChatInputCommandInteraction): Promise<void> {
  await interaction.showModal(openForm(undefined, ""));
}

/**
 * From the menu of a message: its author gets the form with their words in it. Where somebody else asks for
 * it, the case is the author's all the same, and begins with what they wrote.
 */
export async function openFromMessage(
  interaction: MessageContextMenuCommandInteraction,
  parts: Parts,
): Promise<void> {
  const { targetMessage: message } = interaction;
  const { author } = message;
  if (author.bot || message.webhookId !== null || message.system)
    return tell(
      interaction,
      renderRemark("That was not written by a member. Choose the message of the one who needs help."),
      true,
    );
  const worry = cleaned(message.content).slice(0, LONGEST_WORRY);
  if (author.id === interaction.user.id) {
    await interaction.showModal(openForm(message.id, worry));
    return;
  }
  const request: Request = {
    ...requestAs(interaction, "case open", { worry }, `discord:${author.id}` as MemberId),
    isSteward: false,
    name: cleaned(author.displayName).slice(0, 40),
    // Nothing of the author's own record may show to the one who asked.
    audience: "channel",
  };
  return respond(
    interaction,
    kept(interaction, parts.app.answer(request), parts, message.id),
    "channel",
    false,
  );
}

/** A filled form that opens a case. */
export async function openFilled(
  interaction: ModalSubmitInteraction,
  { starter }: { readonly starter: string | undefined },
  parts: Parts,
): Promise<void> {
  const texts = openFormTexts((id) => interaction.fields.getTextInputValue(id));
  const told = parts.app.answer(requestAs(interaction, "case open", texts));
  return respond(interaction, kept(interaction, told, parts, starter), "asker", false);
}

/** A button under a card. */
export async function pressCase(
  interaction: ButtonInteraction,
  { deed, caseNumber }: CaseId,
  parts: Parts,
): Promise<void> {
  const { outcome } = await parts.app.answer(requestAs(interaction, "case show", { case: caseNumber }));
  if (outcome.kind !== "reply" || outcome.helpCase === undefined)
    return tell(
      interaction,
      renderRemark(
        "That case is gone: it was deleted by the one it belonged to. /case open starts a new one.",
      ),
      true,
    );
  const note: HelpCaseNote = outcome.helpCase;
  if (deed === "working" || deed === "show")
    return outcome.working === undefined
      ? tell(interaction, renderRemark(note.remark), true)
      : tell(interaction, renderWorking(outcome.title, outcome.working), true);
  if (!note.isOpen)
    return tell(interaction, renderRemark("That case is closed. /case open starts a new one."), true);
  await interaction.showModal(caseForm(deed, caseNumber, note.next));
}

/** A form that was opened from a card. */
export async function caseFilled(
  interaction: ModalSubmitInteraction,
  { deed, caseNumber, field }: CaseId,
  parts: Parts,
): Promise<void> {
  const text = (id: string): string => {
    const found = interaction.fields.fields.get(id);
    return found !== undefined && "value" in found && typeof found.value === "string" ? found.value : "";
  };
  const options: Record<string, string> = { case: caseNumber };
  if (deed === "did") options["what"] = text("text");
  else if (deed === "correct")
    options[interaction.fields.getStringSelectValues("field")[0] ?? "readings"] = text("text");
  else {
    options["readings"] = text("readings");
    if (field !== "" && field !== "readings") options[field] = text("text");
  }
  const isEmpty = Object.values(options).filter((value) => value.trim() !== "").length < 2;
  if (isEmpty) return tell(interaction, renderRemark("Nothing was typed, so nothing was changed."), true);
  const told = parts.app.answer(requestAs(interaction, `case ${deed}`, options));
  return respond(interaction, kept(interaction, told, parts), "asker", false);
}

const RAISE_LOOK_MS = 60_000;

export interface Raising {
  /** Tells helpers on duty of what nobody has answered, and threads of steps to look at again. */
  tick(): Promise<void>;
  stop(): void;
}

/** Looks once a minute for cases that nobody has answered for 12 hours. */
export function raiseUnanswered({
  app,
  threads,
  log,
}: Parts & { readonly log: (line: string, error?: unknown) => void }): Raising {
  async function tick(): Promise<void> {
    for (const { caseNumber, step, card } of app.followUps()) {
      if (card === undefined) continue;
      await threads.writeAt(
        card.place,
        renderRemark(
          `Time to look at step ${step} of case ${caseNumber} again: how is it now? “I did this” or “Add reading” tells the card.`,
        ),
      );
    }
    for (const { caseNumber, helper, card } of app.raises()) {
      const where = card === undefined ? "" : `\nIts thread: <#${card.place}>`;
      const said = `Help case ${caseNumber} has waited 12 hours, and no person has answered yet.`;
      const message = renderRemark(said);
      const withLink = {
        ...message,
        embeds: message.embeds.map((embed) => ({
          ...embed,
          description: `${embed.description ?? ""}${where}`,
        })),
      };
      const isTold = await threads.writeTo(helper.replace(/^discord:/, ""), withLink);
      if (!isTold && card !== undefined)
        await threads.writeAt(
          card.place,
          renderRemark("Nobody has answered here for 12 hours. Could a helper look in?"),
        );
    }
  }
  const timer = setInterval(() => {
    tick().catch((error: unknown) => log("a look at unanswered help cases failed", error));
  }, RAISE_LOOK_MS);
  timer.unref();
  return { tick, stop: () => clearInterval(timer) };
}
