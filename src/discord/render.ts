import {
  ActionRowBuilder,
  type APIEmbed,
  AttachmentBuilder,
  ButtonBuilder,
  ButtonStyle,
  type MessageActionRowComponentBuilder,
  StringSelectMenuBuilder,
} from "discord.js";
import type { Picture } from "../kit/chart.ts";
import type { Outcome, Question, Reply, ReplyCaution, ReplyTable, Working } from "../kit/reply.ts";
import { buttonId } from "./button-id.ts";

/** What is sent, whatever the way: a first response, an edit or a follow-up. */
export interface Message {
  readonly embeds: APIEmbed[];
  readonly components: ActionRowBuilder<MessageActionRowComponentBuilder>[];
  readonly files: AttachmentBuilder[];
  readonly allowedMentions: { readonly parse: [] };
}

/** The platform's limits for one embed (title, description) and all its text together. */
const LONGEST_TITLE = 256;
const LONGEST_DESCRIPTION = 4096;
const LONGEST_CHOICE_LABEL = 80;
const LONGEST_ALT_TEXT = 1024;
/** Buttons in one row; more choices go into a menu. */
const MOST_BUTTONS = 4;
const MOST_MENU_ENTRIES = 25;

const DEEP_WATER = 0x1f5f6b;
const CALM_SAND = 0xc2a878;
const BRICK = 0xa8452f;

/** A reply with a chart shows its picture, or says in words what it would show. */
export function renderOutcome(outcome: Outcome, id: string, isPrivate: boolean, picture?: Picture): Message {
  return outcome.kind === "reply"
    ? renderReply(outcome, id, isPrivate, picture)
    : renderQuestion(outcome, id);
}

const CHART_NAME = "chart.png";

function renderReply(reply: Reply, id: string, isPrivate: boolean, drawn: Picture | undefined): Message {
  const chart = reply.chart ?? reply.picture;
  const files = (reply.files ?? []).map(
    (file) =>
      new AttachmentBuilder(Buffer.from(file.content, file.encoding), {
        name: file.name,
        description: clipped(file.altText, LONGEST_ALT_TEXT),
      }),
  );
  if (chart !== undefined && drawn !== undefined)
    files.push(
      new AttachmentBuilder(Buffer.from(drawn.png), {
        name: CHART_NAME,
        description: clipped(chart.altText, LONGEST_ALT_TEXT),
      }),
    );
  const picture =
    chart !== undefined && drawn !== undefined
      ? CHART_NAME
      : reply.files?.find(({ mediaType }) => mediaType === "image/png")?.name;
  const buttons: ButtonBuilder[] = [];
  if (reply.working !== undefined)
    buttons.push(button(buttonId("working", id), "Show the working", ButtonStyle.Secondary));
  if (isPrivate && reply.ok)
    buttons.push(button(buttonId("post", id), "Post to the channel", ButtonStyle.Secondary));
  return {
    embeds: [
      {
        title: clipped(plain(reply.title), LONGEST_TITLE),
        description: description({
          top: reply.headline === undefined ? "" : `# ${plain(reply.headline)}`,
          body: [
            ...reply.body.map(plain),
            ...(reply.table === undefined ? [] : [tableBlock(reply.table)]),
            ...(chart === undefined || drawn !== undefined ? [] : [plain(`Chart: ${chart.altText}`)]),
          ],
          cautions: reply.cautions,
          foot: reply.basis === undefined ? "" : `-# Basis: ${plain(reply.basis)}.`,
        }),
        color: colour(reply.cautions, reply.ok),
        ...(picture === undefined ? {} : { image: { url: `attachment://${picture}` } }),
      },
    ],
    components: rows(buttons),
    files,
    allowedMentions: { parse: [] },
  };
}

function renderQuestion(question: Question, id: string): Message {
  const { choices, typed } = question;
  const isMenu = choices.length > MOST_BUTTONS;
  const buttons = isMenu
    ? []
    : choices.map(({ label, tone }, index) =>
        button(
          buttonId("choose", id, index),
          label,
          tone === "go" ? ButtonStyle.Success : tone === "stop" ? ButtonStyle.Danger : ButtonStyle.Primary,
        ),
      );
  if (typed !== undefined)
    buttons.push(
      button(
        buttonId("fill", id),
        choices.length === 0 ? "Type it" : "Type something else",
        ButtonStyle.Secondary,
      ),
    );
  const menu = new StringSelectMenuBuilder()
    .setCustomId(buttonId("menu", id))
    .setPlaceholder("Choose one")
    .addOptions(
      choices
        .slice(0, MOST_MENU_ENTRIES)
        .map(({ label }, index) => ({ label: clipped(label, 100), value: String(index) })),
    );
  return {
    embeds: [
      {
        title: clipped(plain(question.title), LONGEST_TITLE),
        description: description({
          top: `**${plain(question.text)}**`,
          body: question.body.map(plain),
          cautions: question.cautions,
          foot: "",
        }),
        color: colour(question.cautions, !question.isMistake),
      },
    ],
    components: [
      ...(isMenu ? [new ActionRowBuilder<MessageActionRowComponentBuilder>().addComponents(menu)] : []),
      ...rows(buttons),
    ],
    files: [],
    allowedMentions: { parse: [] },
  };
}

export function renderWorking(title: string, working: Working): Message {
  const part = (name: string, lines: readonly string[]): string =>
    lines.length === 0 ? "" : `**${name}**\n${lines.map((line) => `• ${line}`).join("\n")}`;
  const text = [
    part(
      "As read",
      working.inputs.map(({ name, typed, readAs }) => plain(`${name}: ${typed} → ${readAs}`)),
    ),
    part("Steps", working.steps.map(plain)),
    part(
      "Constants",
      working.constants.map(({ name, value, source }) => plain(`${name} = ${value}. ${source}`)),
    ),
    part("Taken for granted", working.assumptions.map(plain)),
    part(
      "Sources",
      working.sources.map(
        ({ citation, standing, link }) =>
          `${plain(`${citation} (${standing})`)}${link === undefined ? "" : ` ${link}`}`,
      ),
    ),
  ].filter(Boolean);
  return {
    embeds: [
      {
        title: clipped(`Working: ${plain(title)}`, LONGEST_TITLE),
        description: clipped(text.join("\n\n"), LONGEST_DESCRIPTION),
        color: DEEP_WATER,
      },
    ],
    components: [],
    files: [],
    allowedMentions: { parse: [] },
  };
}

/** One remark, for those who press something that has gone. */
export function renderRemark(text: string): Message {
  return {
    embeds: [{ description: plain(text), color: CALM_SAND }],
    components: [],
    files: [],
    allowedMentions: { parse: [] },
  };
}

const MARK = { note: "▫️", warning: "🔶", danger: "🛑" } as const;

interface Parts {
  readonly top: string;
  readonly body: readonly string[];
  readonly cautions: readonly ReplyCaution[];
  readonly foot: string;
}

/** Joins the parts within the limit: the body gives way, a caution never. */
function description({ top, body, cautions, foot }: Parts): string {
  const warnings = cautions.map(({ level, text }) => `${MARK[level]} ${plain(text)}`).join("\n");
  const fixed = [top, warnings, foot].filter(Boolean).join("\n\n").length;
  const room = LONGEST_DESCRIPTION - fixed - 4;
  const kept = clipped(body.join("\n"), Math.max(0, room));
  return clipped([top, kept, warnings, foot].filter(Boolean).join("\n\n"), LONGEST_DESCRIPTION);
}

function colour(cautions: readonly ReplyCaution[], isFine: boolean): number {
  if (cautions.some(({ level }) => level === "danger")) return BRICK;
  return isFine ? DEEP_WATER : CALM_SAND;
}

function button(customId: string, label: string, style: ButtonStyle): ButtonBuilder {
  return new ButtonBuilder()
    .setCustomId(customId)
    .setLabel(clipped(label, LONGEST_CHOICE_LABEL))
    .setStyle(style);
}

function rows(buttons: readonly ButtonBuilder[]): ActionRowBuilder<MessageActionRowComponentBuilder>[] {
  return buttons.length === 0
    ? []
    : [new ActionRowBuilder<MessageActionRowComponentBuilder>().addComponents(...buttons)];
}

/** A monospaced block; the mark that would end it is replaced by its lookalike. */
function tableBlock({ columns, rows: body }: ReplyTable): string {
  const all = [columns, ...body];
  const widths = columns.map((_, column) => Math.max(...all.map((row) => [...(row[column] ?? "")].length)));
  const lines = all.map((row) =>
    row
      .map((cell, column) => cell + " ".repeat(Math.max(0, (widths[column] ?? 0) - [...cell].length)))
      .join("  ")
      .trimEnd(),
  );
  return `\`\`\`\n${lines.join("\n").replaceAll("`", "ˋ")}\n\`\`\``;
}

/** Text as it stands: none of it is read as markup, as a mention or as a time. One pass, linear in its length. */
export function plain(text: string): string {
  return text.replace(
    /[\\*_~`|<>[\]]|^(?:-?#+|[-+])(?=\s)|^(\d+)\.(?=\s)/gm,
    (mark, number: string | undefined) => (number === undefined ? `\\${mark}` : `${number}\\.`),
  );
}

export function clipped(text: string, longest: number): string {
  if (text.length <= longest) return text;
  const cut = text.slice(0, Math.max(0, longest - 1)).replace(/[\ud800-\udbff]$/, "");
  const open = (cut.match(/```/g) ?? []).length % 2 === 1;
  return open ? `${cut.slice(0, -5)}…\n\`\`\`` : `${cut}…`;
}
