import { vetDose } from "../../src/core/dosing/vet-dose.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankInMind,
  tankOption,
  words,
} from "../../src/kit/index.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";
import { showGrams, showPour, strength } from "./shared.ts";

const TITLE = "A dose that a vet wrote";

export default defineCommand({
  name: "vet",
  summary: "Only the arithmetic of a dose that a vet has written for you",
  options: {
    medicine: words("Its name, as on the vet's note", "the name on the note", 80),
    dose: quantity.concentration("The dose the vet wrote, in the water", "0.5 mg/L"),
    strength: strength("The strength on the label", "10 mg/mL"),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "200 L")),
    tank: optional(tankOption()),
  },
  examples: ["/dose vet medicine:as on the note dose:0.5 mg/L strength:10 mg/mL volume:200 L"],
  run(input, context): Outcome {
    const { answers } = context.request;
    const tank = tankInMind(input.tank, input.volume, context);
    const water = input.volume === undefined && tank !== undefined ? tankVolume(tank, context) : undefined;
    const netVolume = input.volume?.estimate ?? water?.estimate;
    if (netVolume === undefined)
      return askFor(
        context,
        { name: "volume", example: "200 L" },
        { title: TITLE, text: "How much water, net, shall be treated?" },
      );
    if (answers["wrote"] === undefined)
      return {
        ...confirmation("Did a vet write this dose, for these animals?"),
        choices: [
          { label: "Yes, I have it in writing", settle: { answers: { wrote: "yes" } }, tone: "go" },
          { label: "No", settle: { answers: { wrote: "no" } }, tone: "stop" },
        ],
      };
    const answer = vetDose({
      vetWrote: answers["wrote"] === "yes",
      medicine: input.medicine,
      netVolume,
      dose: input.dose.estimate,
      strength: input.strength,
    });
    const figures = [
      `medicine: ${input.medicine}`,
      `dose: ${showEstimate(input.dose.estimate, "mg/L")}`,
      `strength on the label: ${showEstimate(input.strength.value, input.strength.kind)}`,
      `net volume: ${showVolume(netVolume)}${water === undefined ? "" : ` (${water.taken.from})`}`,
    ];
    const digest = figures.join("; ");
    if (answers["figures"] === "stop")
      return {
        kind: "reply",
        ok: false,
        title: TITLE,
        body: ["Stopped: nothing was worked out. Put the figure right and ask again."],
        cautions: [],
        audience: context.audience,
      };
    if (answer.kind === "answer" && answers["figures"] !== digest)
      return {
        ...confirmation("Read each figure against the vet's note and the label. Are all of them right?"),
        body: figures,
        choices: [
          { label: "Yes, every figure", settle: { answers: { figures: digest } }, tone: "go" },
          { label: "No, stop", settle: { answers: { figures: "stop" } }, tone: "stop" },
        ],
      };
    return answerReply(answer, context, {
      title: TITLE,
      headline: (it) => `${showPour(it.product)} of ${input.medicine}`,
      body: (it) => [
        `That is ${showGrams(it.active)} of the active substance. Confirmed by you: ${digest}.`,
        "Nothing here checks whether it suits the animals: that was the vet's part.",
      ],
      taken: water === undefined ? [] : [water.taken],
      cautions: water?.cautions ?? [],
    });
  },
});

function confirmation(text: string) {
  return {
    kind: "question",
    isMistake: false,
    title: TITLE,
    text,
    body: [],
    cautions: [
      {
        level: "danger",
        text: "Medicine for animals is a vet's decision. Without a vet's written dose, nothing goes in.",
      },
    ],
    audience: "asker",
  } as const;
}
