import { type Answer, type Caution, caution } from "../result.ts";
import { CLOUDY_FINDINGS, type CloudyFinding, FIRST_TESTS, URGENT_ACTIONS } from "./findings.ts";
import { type CloudyAnswers, isMet, isUrgent } from "./questions.ts";

export interface CloudyTriage {
  /** Animals in trouble: what to do before reading on; empty when all are as usual. */
  readonly urgent: readonly string[];
  /** Most pressing first. */
  readonly findings: readonly CloudyFinding[];
  /** What to test, each once. */
  readonly tests: readonly string[];
  /** What is safe to do, each once. */
  readonly actions: readonly string[];
}

/**
 * What cloudy water most likely is by the answers given, what to test and what is safe to do. A triage, no
 * diagnosis. Source: each finding names its own; the order is common-practice.
 */
export function cloudyTriage(answers: CloudyAnswers): Answer<CloudyTriage> {
  const findings = CLOUDY_FINDINGS.filter(({ when }) => isMet(when, answers));
  const urgent = isUrgent(answers) ? URGENT_ACTIONS : [];
  return {
    kind: "answer",
    value: {
      urgent,
      findings,
      tests: [...new Set([...FIRST_TESTS, ...findings.flatMap(({ tests }) => tests)])],
      actions: [...new Set(findings.flatMap(({ actions }) => actions))],
    },
    method: "A list of questions in a fixed order: a triage, no diagnosis",
    working: [
      ...Object.entries(answers).flatMap(([question, answer]) =>
        answer === undefined ? [] : [`${question}: ${answer}`],
      ),
      ...findings.map(({ name, when }) => `${name}: because of ${Object.keys(when).join(", ")}`),
    ],
    constants: [],
    sources: [...new Set([...findings.map(({ source }) => source), "common-practice" as const])],
    assumptions: ["what you answered is what is there: nothing was measured"],
    cautions: [
      ...(isUrgent(answers)
        ? [caution("animals-in-distress", {}, "danger"), caution("mains-near-water", {}, "danger")]
        : []),
      ...findings.flatMap((finding): readonly Caution[] =>
        finding.caution === undefined ? [] : [caution(finding.caution[0], {}, finding.caution[1])],
      ),
      ...(isUrgent(answers) && answers.lately !== "medicine or another chemical"
        ? [caution("medicine-is-for-a-vet", {})]
        : []),
      caution("triage-is-no-diagnosis", {}, "note"),
    ],
  };
}
