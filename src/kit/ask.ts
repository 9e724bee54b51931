import type { Context } from "./context.ts";
import type { Question, QuestionChoice } from "./reply.ts";

/** One question for an option that turned out to be needed; the command runs again with the answer. */
export function askFor(
  context: Context,
  option: { readonly name: string; readonly example: string },
  words: { readonly title: string; readonly text: string; readonly choices?: readonly QuestionChoice[] },
): Question {
  return {
    kind: "question",
    isMistake: false,
    title: words.title,
    text: words.text,
    body: [],
    cautions: [],
    choices: words.choices ?? [],
    typed: { option: option.name, label: option.name, example: option.example },
    audience: context.audience === "channel" ? "channel" : "asker",
  };
}

/** A choice that fills one option with a text. */
export function fills(label: string, option: string, text: string): QuestionChoice {
  return { label, settle: { options: { [option]: text } } };
}
