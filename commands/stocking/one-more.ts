import { type Added, oneMoreAnimal } from "../../src/core/nitrogen/one-more-animal.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";
import { livestock, situationOf, situationOptions, used } from "./shared.ts";

const TITLE = "One more animal";

export default defineCommand({
  name: "add",
  summary: "What one more animal would change, now and when it is grown",
  options: {
    animal: livestock("The newcomer, e.g. 1 picasso triggerfish 12 cm"),
    livestock: optional(livestock("The animals there now; your tank's if left out")),
    ...situationOptions,
  },
  examples: ["/stocking add animal:1 picasso triggerfish 12 cm tank:Lagoon"],
  run(input, context): Outcome {
    const [newcomer, ...others] = input.animal;
    if (newcomer === undefined || others.length > 0 || newcomer.count > 1)
      throw new UserError("bad-input", "Name one animal at a time, e.g. “1 picasso triggerfish 12 cm”.");
    const ready = situationOf(input, context, TITLE);
    if ("kind" in ready) return ready;
    const { situation, tank, taken, cautions } = ready;
    return answerReply(oneMoreAnimal(situation, { animal: newcomer }), context, {
      title: `${tank === undefined || input.volume !== undefined ? "" : `${tank.name}: `}one more ${newcomer.label}`,
      headline: ({ now, grown }) =>
        `+${showEstimate(now.tanGPerDay, "g", { significant: 2 })} ammonia nitrogen a day now${grown === undefined ? "" : `, +${showEstimate(grown.tanGPerDay, "g", { significant: 2 })} when grown`}`,
      body: ({ before, now, grown }) => [
        limits("Today", before.uses[0]),
        limits("With it", now.load.uses[0]),
        ...(grown === undefined ? [] : [limits("When it is grown", grown.load.uses[0])]),
      ],
      table: ({ now, grown }) => ({
        columns: ["it adds", "now", ...(grown === undefined ? [] : ["when grown"])],
        rows: ROWS.map(([name, unit, pick]) => [
          name,
          ...[now, ...(grown === undefined ? [] : [grown])].map((each) =>
            showEstimate(pick(each), unit, { significant: 2 }),
          ),
        ]),
      }),
      taken,
      cautions,
    });
  },
});

const ROWS: readonly (readonly [string, string, (added: Added) => Parameters<typeof showEstimate>[0]])[] = [
  ["body mass", "g", (added) => added.massG],
  ["ammonia nitrogen a day", "g", (added) => added.tanGPerDay],
  ["oxygen a day after a meal", "g", (added) => added.oxygenAfterMealGPerDay],
  ["nitrifying surface", "m²", (added) => added.areaAverageM2],
  ["nitrate a week", "mg/L", (added) => added.nitratePerWeekMgPerL],
];

function limits(when: string, use: Added["load"]["uses"][number] | undefined): string {
  return use === undefined
    ? `${when}: nothing is known about what limits the system.`
    : `${when}, first to give out: ${use.factor}, ${used(use.used)}.`;
}
