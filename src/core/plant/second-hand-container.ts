import { type Answer, caution } from "../result.ts";

/** What to look at and what to do, in order; worded elsewhere. */
export const CONTAINER_ADVICE = [
  "ask-its-history",
  "refuse-what-held-poison",
  "refuse-cracked-or-crazed",
  "refuse-sun-aged-plastic",
  "look-at-every-joint",
  "have-a-maker-look",
  "support-the-whole-floor",
  "test-fill-outside",
  "fill-in-steps",
  "leave-it-full",
  "keep-a-way-out",
] as const;

export type ContainerAdvice = (typeof CONTAINER_ADVICE)[number];

export interface SecondHandContainer {
  /** Whether it will hold is never said from a description. */
  readonly judged: false;
  readonly advice: readonly ContainerAdvice[];
}

/** What to do before trusting a used container: advice in order, and no judgement. */
export function secondHandContainer(): Answer<SecondHandContainer> {
  return {
    kind: "answer",
    value: { judged: false, advice: CONTAINER_ADVICE },
    method: "A list of what to look at; no description can show whether a container will hold",
    working: ["nothing is computed: strength hangs on flaws, age and joints, which only inspection shows"],
    constants: [],
    sources: ["common-practice"],
    assumptions: [],
    cautions: [
      caution("second-hand-container", {}, "danger"),
      caution("leak-test-outside", {}, "danger"),
      caution("ask-a-tank-maker", {}, "danger"),
    ],
  };
}
