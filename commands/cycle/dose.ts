import { ammoniumDose } from "../../src/core/dosing/ammonium-dose.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  fills,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { ammonia } from "../ammonia/shared.ts";
import { showGrams } from "../dose/shared.ts";

const TITLE = "Feeding a new filter";

export default defineCommand({
  name: "dose",
  summary: "Ammonium chloride to feed a new filter with, before any animal is in",
  options: {
    target: ammonia("Ammonia to bring the water to, as your kit prints it"),
    animals: optional(choice("Whether any animal is in the water", ["none", "some"])),
    purity: optional(quantity.fraction("Of the salt; pure if left out", "99 %")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/cycle dose target:2 mg/L as TAN animals:none volume:2700 L"],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    if (input.animals === undefined)
      return askFor(
        context,
        { name: "animals", example: "none" },
        {
          title: TITLE,
          text: "Is any animal in the water? Ammonia poisons them.",
          choices: [fills("No animal at all", "animals", "none"), fills("Yes, some", "animals", "some")],
        },
      );
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    if (input.purity === undefined) known.assume({ name: "purity", from: "not said", readAs: "100 %" });
    const { reading, form } = input.target;
    const answer = ammoniumDose({
      systemVolume,
      target: reading,
      form,
      purity: input.purity ?? exactly(as<Fraction>(1)),
      hasAnimals: input.animals === "some",
    });
    return answerReply(answer, context, {
      title: known.titled(
        `${showEstimate(reading, "mg/L")} of ammonia as ${form} in ${showVolume(systemVolume)}`,
      ),
      headline: ({ mass }) => `${showGrams(mass)} of ammonium chloride`,
      body: ({ asNitrogen }) => [
        `That is ${showEstimate(asNitrogen, "mg/L", { significant: 3 })} as nitrogen. Plain salt only: no scents, no soaps.`,
        "Test after an hour of mixing, write it down, and dose again only when it has nearly gone.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
