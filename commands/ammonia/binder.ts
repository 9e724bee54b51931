import { BINDERS, type BinderReagent, binderDose } from "../../src/core/dosing/ammonia-binder.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  fills,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showGrams } from "../dose/shared.ts";
import { ammonia } from "./shared.ts";

const TITLE = "Binding ammonia";
const REAGENTS = Object.keys(BINDERS) as BinderReagent[];

export default defineCommand({
  name: "binder",
  summary: "How much of a pure binding reagent matches the ammonia in the water",
  options: {
    reading: ammonia("Total ammonia as the kit prints it"),
    reagent: optional(choice("Which reagent, as the label names it", REAGENTS)),
    purity: optional(quantity.fraction("As the label states it; pure if left out", "98 %")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/ammonia binder reading:1 mg/L as TAN reagent:sodium hydroxymethanesulfonate volume:2700 L"],
  run(input, context) {
    if (input.reagent === undefined)
      return askFor(
        context,
        { name: "reagent", example: REAGENTS[0] ?? "" },
        {
          title: TITLE,
          text: "Which reagent is it? (For a bottled product without a named reagent, its own label says the dose.)",
          choices: REAGENTS.map((each) => fills(each, "reagent", each)),
        },
      );
    const known = knownFigures(input.tank, input.volume, context);
    const volume = known.volume(input.volume);
    if (volume === undefined) return known.ask("volume", TITLE);
    if (input.purity === undefined) known.assume({ name: "purity", from: "not said", readAs: "100 %" });
    const answer = binderDose({
      reagent: input.reagent,
      purity: input.purity ?? exactly(as<Fraction>(1)),
      ammonia: input.reading.asNitrogen,
      systemVolume: volume,
    });
    return answerReply(answer, context, {
      title: known.titled(
        `${showEstimate(input.reading.reading, "mg/L")} of ammonia as ${input.reading.form} in ${showVolume(volume)}`,
      ),
      headline: ({ mass }) => `${showGrams(mass)} of ${input.reagent}`,
      body: () => [
        "That just matches the ammonia there now; the filter still has to take it up. /ammonia retest says when a test means something again.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
