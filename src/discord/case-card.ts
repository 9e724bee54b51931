import {
  ActionRowBuilder,
  ButtonBuilder,
  ButtonStyle,
  ChannelType,
  LabelBuilder,
  type MessageActionRowComponentBuilder,
  ModalBuilder,
  StringSelectMenuBuilder,
  TextInputBuilder,
  TextInputStyle,
} from "discord.js";
import type { HelpCaseNote } from "../kit/reply.ts";
import { type CaseDeed, caseButtonId, caseFormId, openFormId } from "./case-ids.ts";
import { clipped, type Message, renderOutcome } from "./render.ts";

const LONGEST_LABEL = 45;
const LONGEST_PLACEHOLDER = 100;
const LONGEST_TEXT = 1500;

/** The card of a case as it stands in its thread, with its buttons. */
export function renderCard({ face, number, isOpen, next }: HelpCaseNote): Message {
  const { embeds, allowedMentions } = renderOutcome(
    { kind: "reply", ok: true, ...face, audience: "channel" },
    "",
    false,
  );
  const button = (deed: CaseDeed, label: string, style: ButtonStyle): ButtonBuilder =>
    new ButtonBuilder().setCustomId(caseButtonId(deed, number)).setLabel(label).setStyle(style);
  const buttons = [
    ...(isOpen
      ? [
          button("add", next === undefined ? "Add reading" : "Answer, or add reading", ButtonStyle.Primary),
          button("correct", "Correct", ButtonStyle.Secondary),
          button("did", "I did this", ButtonStyle.Success),
        ]
      : []),
    button("working", "Show the working", ButtonStyle.Secondary),
  ];
  return {
    embeds,
    components: [new ActionRowBuilder<MessageActionRowComponentBuilder>().addComponents(...buttons)],
    files: [],
    allowedMentions,
  };
}

/** What takes the place of a card that was deleted with its case. */
export function renderGoneCard(): Message {
  return renderOutcome(
    {
      kind: "reply",
      ok: true,
      title: "Help case",
      body: ["What stood here was deleted at the wish of the one it belonged to."],
      cautions: [],
      audience: "channel",
    },
    "",
    false,
  );
}

/** The short form: five places, because a form holds no more; all may stay empty. */
const OPEN_FIELDS = [
  ["worry", "What worries you?", "the fish hide all day", TextInputStyle.Paragraph],
  ["trouble", "Anything gasping, lying down, or dead?", "no, all swim and eat", TextInputStyle.Short],
  ["tank", "Tank: size, fresh or salt, how long running?", "60 L fresh water, 5 weeks", TextInputStyle.Short],
  ["animals", "Which animals, and since when?", "6 neon tetras since 2 weeks, 1 betta", TextInputStyle.Short],
  [
    "readings",
    "Test results, and the last water change",
    "ammonia 0.5, pH 7.6, 25 °C; water change 20 % on Sunday",
    TextInputStyle.Paragraph,
  ],
] as const;

export function openForm(starter: string | undefined, worry: string): ModalBuilder {
  return new ModalBuilder()
    .setCustomId(openFormId(starter))
    .setTitle("Help: all of it is optional")
    .addLabelComponents(
      ...OPEN_FIELDS.map(([id, label, example, style]) =>
        labelled(label, textInput(id, example, style, id === "worry" ? worry : "", false)),
      ),
    );
}

/** The texts of a filled form, empty ones left out. */
export function openFormTexts(textOf: (id: string) => string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    OPEN_FIELDS.map(([id]) => [id, textOf(id).trim()] as const).filter(([, text]) => text !== ""),
  );
}

const CORRECTABLE = [
  ["readings", "a reading"],
  ["tank", "the tank: size, kind, age"],
  ["animals", "the animals"],
  ["change", "the last water change"],
  ["trouble", "how the animals are"],
  ["worry", "the worry"],
] as const;

/** One field: the answer to what is asked next, a correction, or what was done. */
export function caseForm(
  deed: "add" | "correct" | "did",
  caseNumber: string,
  next: HelpCaseNote["next"],
): ModalBuilder {
  const modal = new ModalBuilder().setTitle(clipped(FORM_TITLE[deed], LONGEST_LABEL));
  switch (deed) {
    case "add":
      modal.setCustomId(caseFormId(deed, caseNumber, next?.field ?? "readings"));
      if (next !== undefined && next.field !== "readings")
        modal.addLabelComponents(
          labelled(next.text, textInput("text", next.example, TextInputStyle.Short, "", false)),
        );
      return modal.addLabelComponents(
        labelled(
          next?.field === "readings" ? next.text : "Readings, in any units",
          textInput(
            "readings",
            next?.field === "readings" ? next.example : "ammonia 0.5, pH 7.6",
            TextInputStyle.Short,
            "",
            false,
          ),
        ),
      );
    case "correct":
      return modal
        .setCustomId(caseFormId(deed, caseNumber, ""))
        .addLabelComponents(
          new LabelBuilder()
            .setLabel("What is to be put right?")
            .setStringSelectMenuComponent(
              new StringSelectMenuBuilder()
                .setCustomId("field")
                .addOptions(CORRECTABLE.map(([value, label]) => ({ value, label }))),
            ),
          labelled("As it should be", textInput("text", "pH 7.4", TextInputStyle.Paragraph, "", true)),
        );
    case "did":
      return modal
        .setCustomId(caseFormId(deed, caseNumber, ""))
        .addLabelComponents(
          labelled(
            "What you did, or the number of a step",
            textInput("text", "changed 30 % of the water", TextInputStyle.Short, "", true),
          ),
        );
  }
}

const FORM_TITLE = { add: "Add to the case", correct: "Correct the case", did: "I did this" } as const;

function textInput(
  id: string,
  example: string,
  style: TextInputStyle,
  value: string,
  isNeeded: boolean,
): TextInputBuilder {
  const input = new TextInputBuilder()
    .setCustomId(id)
    .setStyle(style)
    .setPlaceholder(clipped(example, LONGEST_PLACEHOLDER))
    .setMaxLength(LONGEST_TEXT)
    .setRequired(isNeeded);
  return value === "" ? input : input.setValue(clipped(value, LONGEST_TEXT));
}

/** A label holds few letters; a longer question goes below it. */
function labelled(text: string, input: TextInputBuilder): LabelBuilder {
  const label = new LabelBuilder().setTextInputComponent(input);
  return text.length <= LONGEST_LABEL
    ? label.setLabel(text)
    : label.setLabel("Your answer").setDescription(clipped(text, 100));
}

/** Where a thread can be begun; a thread holds no threads of its own. */
export function isThreadType(type: ChannelType): boolean {
  return (
    type === ChannelType.PublicThread ||
    type === ChannelType.PrivateThread ||
    type === ChannelType.AnnouncementThread
  );
}
