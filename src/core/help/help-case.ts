import { type Answer, caution } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { type AdviceStep, type Contradiction, contradictions } from "./advice.ts";
import { type DoNow, doNow } from "./do-now.ts";
import type { HelpFacts } from "./facts.ts";
import { type Finding, findingsOf } from "./findings.ts";
import { type HelpQuestion, openQuestions } from "./next-question.ts";
import { short, type Urgency, urgencyOf } from "./urgency.ts";

export interface HelpCard {
  readonly urgency: Urgency;
  /** Absent when nothing presses. */
  readonly doNow?: DoNow;
  readonly findings: readonly Finding[];
  /** What to ask, most useful first. */
  readonly questions: readonly HelpQuestion[];
  readonly contradictions: readonly Contradiction[];
}

/** A case in one view: what to do now, what the facts say, and what to ask next. A sorting, no diagnosis. */
export function helpCase(facts: HelpFacts, steps: readonly AdviceStep[]): Answer<HelpCard> {
  const urgency = urgencyOf(facts);
  const now = doNow(facts, urgency);
  const findings = findingsOf(facts, urgency);
  const questions = openQuestions(facts, urgency);
  const ammonia = urgency.ammonia?.answer;
  const isAmmoniaUsed = ammonia !== undefined && ammonia.value.tan.best > 0;
  const grounds: readonly SourceId[] = [
    ...urgency.alarms.map(({ source }) => source),
    ...findings.map(({ source }) => source),
    ...(isAmmoniaUsed ? ammonia.sources : []),
    "common-practice",
    "assumption",
  ];
  return {
    kind: "answer",
    value: {
      urgency,
      ...(now === undefined ? {} : { doNow: now }),
      findings,
      questions,
      contradictions: contradictions(steps),
    },
    method: "Signs and readings against fixed limits, each with its source: a sorting, no diagnosis",
    working: [
      ...urgency.alarms.map(({ code, because }) => `${code}: ${because}`),
      ...[...facts.readings.values()].map(
        ({ parameter, typed, readAs }) => `${parameter}: “${typed}” read as ${readAs}`,
      ),
      ...(facts.volumeL === undefined ? [] : [`water: ${short(facts.volumeL.best)} L`]),
      ...(facts.ageDays === undefined ? [] : [`age: about ${Math.round(facts.ageDays.best)} days`]),
      ...(isAmmoniaUsed ? ammonia.working : []),
      ...(now?.change === undefined
        ? []
        : [
            `water change: ${now.change.times} × ${Math.round(100 * now.change.share)} %, because ${now.change.because}`,
          ]),
      ...questions.slice(0, 3).map(({ id, why }, at) => `question ${at + 1}, ${id}: ${why}`),
    ],
    constants: isAmmoniaUsed ? ammonia.constants : [],
    sources: [...new Set(grounds)],
    assumptions: [
      "what was typed is what is there: nobody here has seen the tank",
      ...(urgency.ammonia?.assumed ?? []).map(
        (name) => `${name} is taken as usual for such water until it is told`,
      ),
      ...(isAmmoniaUsed ? ammonia.assumptions : []),
    ],
    cautions: [
      ...(now?.cautions ?? []),
      ...(facts.asksForMedicine && now === undefined
        ? [caution("help-no-medicine", {}), caution("help-call-a-vet", {})]
        : []),
      caution("help-is-no-diagnosis", {}, "note"),
    ],
    driver: undefined,
  };
}
