/** What is asked, one thing at a time, in this order; a question that the answers before it rule out is left out. */
export const CLOUDY_QUESTIONS = {
  animals: {
    text: "First the animals: how are they?",
    answers: ["all as usual", "gasping at the surface", "lying or listless", "some dead"],
  },
  look: {
    text: "What does the water look like?",
    answers: [
      "white or grey haze",
      "green",
      "brown or yellow but clear",
      "specks that settle",
      "fine bubbles",
    ],
  },
  smell: {
    text: "What does it smell of?",
    answers: ["nothing, or earth", "foul", "rotten eggs", "chlorine"],
  },
  age: {
    text: "How long ago was it set up?",
    answers: ["under 6 weeks", "6 weeks to 6 months", "over 6 months"],
    askedWhen: { look: ["white or grey haze", "green"] },
  },
  feeding: {
    text: "How was it fed lately?",
    answers: ["as usual", "more than usual", "food or an animal was left to rot"],
    askedWhen: { look: ["white or grey haze", "green", "brown or yellow but clear", "specks that settle"] },
  },
  lately: {
    text: "What was done to it in the last few days?",
    answers: [
      "nothing",
      "new sand or rock",
      "filter cleaned, changed or off",
      "carbon source dosed",
      "alkalinity or calcium dosed",
      "medicine or another chemical",
    ],
    askedWhen: { look: ["white or grey haze", "specks that settle", "fine bubbles"] },
  },
  light: {
    text: "What light does it get?",
    answers: ["as usual", "longer or brighter than before", "sunlight falls on it"],
    askedWhen: { look: ["green"] },
  },
} as const satisfies Readonly<Record<string, CloudyQuestion>>;

interface CloudyQuestion {
  readonly text: string;
  readonly answers: readonly string[];
  /** Answers without which it is left out. */
  readonly askedWhen?: Readonly<Record<string, readonly string[]>>;
}

export type CloudyQuestionId = keyof typeof CLOUDY_QUESTIONS;
export type CloudyAnswerTo<Id extends CloudyQuestionId> = (typeof CLOUDY_QUESTIONS)[Id]["answers"][number];

/** What has been answered so far. */
export type CloudyAnswers = { readonly [Id in CloudyQuestionId]?: CloudyAnswerTo<Id> | undefined };

/** Answers that must all hold: one of the list for each question named. */
export type CloudyWhen = { readonly [Id in CloudyQuestionId]?: readonly CloudyAnswerTo<Id>[] };

/** Whether the answers given so far meet every condition. */
export function isMet(when: CloudyWhen | undefined, answers: CloudyAnswers): boolean {
  return Object.entries(when ?? {}).every(([id, allowed]) => {
    const given: string | undefined = answers[id as CloudyQuestionId];
    return given !== undefined && (allowed as readonly string[]).includes(given);
  });
}

/** Animals in trouble come before every other question. */
export function isUrgent({ animals }: CloudyAnswers): boolean {
  return animals !== undefined && animals !== "all as usual";
}

/** The next question, as an id; undefined when there is nothing left to ask, or something to do first. */
export function nextCloudyQuestion(answers: CloudyAnswers): CloudyQuestionId | undefined {
  if (isUrgent(answers)) return undefined;
  const ids = Object.keys(CLOUDY_QUESTIONS) as CloudyQuestionId[];
  return ids.find((id) => {
    const question: CloudyQuestion = CLOUDY_QUESTIONS[id];
    return answers[id] === undefined && isMet(question.askedWhen, answers);
  });
}
