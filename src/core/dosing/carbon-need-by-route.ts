import type { Answer, Caution, NoAnswer } from "../result.ts";
import { type CarbonNeed, carbonNeed } from "./carbon-need.ts";

type Question = Omit<Parameters<typeof carbonNeed>[0], "route">;

/**
 * The same nitrogen by both routes, side by side: bacteria skimmed out, and gas from a slow box.
 * A route that today's conditions or its oxygen forbid is left out; with neither left, the first refusal stands.
 */
export function carbonNeedByRoute(
  question: Question,
): Answer<{ readonly routes: readonly CarbonNeed[] }> | NoAnswer {
  const skimmed = carbonNeed({ ...question, route: "aerobic assimilation" });
  const gas = carbonNeed({ ...question, route: "anoxic denitrification" });
  if (skimmed.kind === "no-answer") return gas.kind === "no-answer" ? skimmed : alone(gas);
  if (gas.kind === "no-answer") return alone(skimmed);
  const both = <T>(pick: (answer: Answer<CarbonNeed>) => readonly T[]) => [
    ...new Set([...pick(skimmed), ...pick(gas)]),
  ];
  return {
    ...skimmed,
    value: { routes: [skimmed.value, gas.value] },
    method: "Ethanol for the same nitrogen by two routes: as bacteria skimmed out, and as gas",
    working: both(({ working }) => working),
    constants: both(({ constants }) => constants),
    sources: both(({ sources }) => sources),
    assumptions: both(({ assumptions }) => assumptions),
    cautions: withoutRepeats([...skimmed.cautions, ...gas.cautions]),
  };
}

function alone(answer: Answer<CarbonNeed>): Answer<{ readonly routes: readonly CarbonNeed[] }> {
  return { ...answer, value: { routes: [answer.value] } };
}

/** Both routes say much the same; a caution that differs in its figures only is kept at its worst, the first. */
function withoutRepeats(cautions: readonly Caution[]): readonly Caution[] {
  return cautions.filter((each, index) => cautions.findIndex(({ code }) => code === each.code) === index);
}
