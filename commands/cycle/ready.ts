import type { Proof, Trial } from "../../src/core/nitrogen/cycling-proof.ts";
import { filterProof } from "../../src/core/nitrogen/filter-proof.ts";
import type { MgNPerL } from "../../src/core/nitrogen/nitrogen-units.ts";
import { readNitrite } from "../../src/core/nitrogen/read-nitrogen.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  type Option,
  type Outcome,
  optional,
  quantity,
  reading,
} from "../../src/kit/index.ts";
import { ammonia } from "../ammonia/shared.ts";

const TITLE = "Is the filter ready?";

const SAID: Readonly<Record<Proof["state"], string>> = {
  ready: "Ready: it has proven itself twice",
  "one more": "Nearly: once more tomorrow, with the same dose",
  "not yet": "Not yet",
  "cannot tell": "These figures cannot tell",
};

const NEXT: Readonly<Record<Proof["state"], string>> = {
  ready: "Change most of the water, then add animals a few at a time, and test ammonia daily at first.",
  "one more": "Dose the same again now, and test ammonia and nitrite after 24 h.",
  "not yet": "Let ammonia and nitrite go to nearly nothing, then try again.",
  "cannot tell": "Dose the full amount, test ammonia and nitrite after 24 h, with a kit that shows 0.1 mg/L.",
};

const nitrite = (description: string): Option<Estimate<MgNPerL>, true> =>
  reading(description, "0.1 mg/L", (text, { habits }) => readNitrite(text, habits));

export default defineCommand({
  name: "ready",
  summary: "Whether a new filter has proven itself: a dose gone within a day, twice running",
  options: {
    dose: ammonia("Ammonia given for the trial, as your kit prints it"),
    ammonia: ammonia("Ammonia left at the test, as your kit prints it"),
    nitrite: nitrite("Nitrite left at the same test"),
    after: quantity.span("How long after the dose the test was", "24 h"),
    "ammonia-before": optional(ammonia("Ammonia left in the trial before, if there was one")),
    "nitrite-before": optional(nitrite("Nitrite left in the trial before")),
    "after-before": optional(
      quantity.span("How long after its dose that test was; as long if left out", "24 h"),
    ),
  },
  examples: [
    "/cycle ready dose:2 mg/L as TAN ammonia:0.05 mg/L as TAN nitrite:0.1 mg/L after:24 h ammonia-before:0.05 mg/L as TAN nitrite-before:0.2 mg/L",
  ],
  audience: "channel",
  run(input, context): Outcome {
    const first = input["ammonia-before"];
    const firstNitrite = input["nitrite-before"];
    if (first !== undefined && firstNitrite === undefined)
      return askFor(
        context,
        { name: "nitrite-before", example: "0.1 mg/L" },
        { title: TITLE, text: "And how much nitrite was left in the trial before?" },
      );
    const dose = input.dose.asNitrogen.best;
    const hours = input.after.estimate.best;
    const trials: readonly Trial[] = [
      ...(first === undefined || firstNitrite === undefined
        ? []
        : [
            {
              day: 0,
              dose,
              hours: input["after-before"]?.estimate.best ?? hours,
              ammonia: first.asNitrogen,
              nitrite: firstNitrite,
            },
          ]),
      { day: 1, dose, hours, ammonia: input.ammonia.asNitrogen, nitrite: input.nitrite },
    ];
    return answerReply(filterProof(trials, dose), context, {
      title: TITLE,
      headline: ({ state }) => SAID[state],
      body: ({ state, results }) => [
        `Trials: ${results.join(", then ")}. A trial is passed when ammonia and nitrite, both as nitrogen, are under 0.1 mg/L within a day.`,
        NEXT[state],
      ],
    });
  },
});
