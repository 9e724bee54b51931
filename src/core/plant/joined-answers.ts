import type { Answer, Caution } from "../result.ts";

/** One answer put together from several: the evidence of each goes along, said once. */
export function joined<T>(value: T, main: Answer<unknown>, others: readonly Answer<unknown>[]): Answer<T> {
  const all = [main, ...others];
  const cautions = new Map<string, Caution>();
  for (const caution of all.flatMap((answer) => answer.cautions)) {
    const key = `${caution.code} ${JSON.stringify(caution.figures)}`;
    cautions.set(key, cautions.get(key) ?? caution);
  }
  const constants = new Map(
    all.flatMap((answer) => answer.constants).map((each) => [`${each.name} ${each.value}`, each]),
  );
  return {
    kind: "answer",
    value,
    method: main.method,
    working: [...new Set(all.flatMap((answer) => answer.working))],
    constants: [...constants.values()],
    sources: [...new Set(all.flatMap((answer) => answer.sources))],
    assumptions: [...new Set(all.flatMap((answer) => answer.assumptions))],
    cautions: [...cautions.values()],
    driver: main.driver,
  };
}
