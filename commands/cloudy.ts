import { type CloudyTriage, cloudyTriage } from "../src/core/cloudy/cloudy-triage.ts";
import { CLOUDY_QUESTIONS, nextCloudyQuestion } from "../src/core/cloudy/questions.ts";
import { SOURCES } from "../src/core/sources.ts";
import { answerReply, askFor, choice, defineCommand, fills, listed, optional } from "../src/kit/index.ts";

const TITLE = "Cloudy water";
const ASKED = CLOUDY_QUESTIONS;

export default defineCommand({
  name: "cloudy",
  summary: "Cloudy water, one question at a time: what to test and what is safe to do",
  options: {
    animals: optional(choice(ASKED.animals.text, ASKED.animals.answers)),
    look: optional(choice(ASKED.look.text, ASKED.look.answers)),
    smell: optional(choice(ASKED.smell.text, ASKED.smell.answers)),
    age: optional(choice(ASKED.age.text, ASKED.age.answers)),
    feeding: optional(choice(ASKED.feeding.text, ASKED.feeding.answers)),
    lately: optional(choice(ASKED.lately.text, ASKED.lately.answers)),
    light: optional(choice(ASKED.light.text, ASKED.light.answers)),
  },
  examples: ["/cloudy", "/cloudy animals:all as usual look:green", "/cloudy animals:gasping at the surface"],
  run(answers, context) {
    const next = nextCloudyQuestion(answers);
    if (next !== undefined) {
      const question = ASKED[next];
      return askFor(
        context,
        { name: next, example: question.answers[0] },
        {
          title: TITLE,
          text: question.text,
          choices: question.answers.map((each) => fills(each, next, each)),
        },
      );
    }
    return answerReply(cloudyTriage(answers), context, {
      title: TITLE,
      headline: headlineOf,
      body: ({ urgent, findings, tests, actions }) => [
        ...urgent.map((action, at) => `${at + 1}. ${action}`),
        ...findings.map(({ name, says, source }) => `${name}: ${says} (${standingOf(source)})`),
        ...(urgent.length > 0
          ? ["When they breathe easily, ask again with animals:all as usual, to find out why it is cloudy."]
          : [`Test: ${listed(tests)}.`]),
        ...actions.map((action) => `Do: ${action}`),
      ],
    });
  },
});

function headlineOf({ urgent, findings }: CloudyTriage): string {
  if (urgent.length > 0) return "Do this now, in this order";
  const [first] = findings;
  return first === undefined
    ? "Nothing on the list fits: test first"
    : `Most likely: ${first.name.toLowerCase()}`;
}

/** A published finding by its work; anything else by how firmly it is known. */
function standingOf(source: keyof typeof SOURCES): string {
  const { citation, standing } = SOURCES[source];
  const [work = citation] = /^.*?\d{4}/.exec(citation) ?? [];
  return source === "common-practice" ? standing : `${work}, ${standing}`;
}
