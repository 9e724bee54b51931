import type { Answer, CautionCode, NoAnswer, RefusalCode } from "../../src/core/result.ts";

/** The answer, or a failed test that says why there was none. */
export function answered<T>(result: Answer<T> | NoAnswer): Answer<T> {
  if (result.kind === "no-answer") throw new Error(`refused: ${JSON.stringify(result.reason)}`);
  return result;
}

/** The code of the refusal, or a failed test when there was an answer. */
export function refused(result: Answer<unknown> | NoAnswer): RefusalCode {
  if (result.kind === "answer") throw new Error(`answered: ${JSON.stringify(result.value)}`);
  return result.reason.code;
}

/** The codes of all cautions raised. */
export function raised(result: Answer<unknown> | NoAnswer): readonly CautionCode[] {
  return result.cautions.map((caution) => caution.code);
}
