import { type CarbonVerdict, carbonDioxideReading } from "../../src/core/carbonate/carbon-dioxide-reading.ts";
import { inDkh } from "../../src/core/carbonate/read-mineral-level.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type MilliequivPerL } from "../../src/core/quantity/units.ts";
import { answerReply, askFor, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { phOf, phOptions } from "../ammonia/shared.ts";
import { alkalinity } from "./shared.ts";

const TITLE = "Carbon dioxide in the water";
const MOST_DAYS = 7;

const SAID: Readonly<Record<CarbonVerdict, string>> = {
  "carbon dioxide": "Too much carbon dioxide, alkalinity in order",
  "low alkalinity": "Alkalinity is used up, carbon dioxide in order",
  both: "Too much carbon dioxide, and alkalinity used up",
  "in balance": "In balance with well-aired water",
  "short of carbon dioxide": "Short of carbon dioxide: the pH is high for this alkalinity",
};

export default defineCommand({
  name: "co2",
  summary: "Why the pH is what it is: the air in the room, or the alkalinity",
  options: {
    alkalinity: optional(
      alkalinity("E.g. 8 dKH, 2.9 meq/L or 143 ppm CaCO3; your last logged one if left out"),
    ),
    ...phOptions,
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    tank: optional(tankOption()),
  },
  examples: [
    "/minerals co2 alkalinity:8 dKH ph:7.8 measured:meter, ordinary buffers temperature:25 °C salinity:35 ppt",
  ],
  run(input, context) {
    const known = knownFigures(input.tank, undefined, context);
    const logged = input.alkalinity === undefined ? known.logged("alkalinity", MOST_DAYS) : undefined;
    const dkh =
      input.alkalinity ??
      (logged === undefined ? undefined : inDkh(mapEstimate(logged, (value) => as<MilliequivPerL>(value))));
    if (dkh === undefined)
      return askFor(
        context,
        { name: "alkalinity", example: "8 dKH" },
        { title: TITLE, text: "What is the alkalinity?" },
      );
    const pH = phOf(input, known, MOST_DAYS);
    if (pH === undefined)
      return askFor(context, { name: "ph", example: "7.9" }, { title: TITLE, text: "What is the pH?" });
    const temperature = known.temperature(input.temperature);
    if (temperature === undefined) return known.ask("temperature", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const answer = carbonDioxideReading({
      alkalinity: dkh,
      pH: pH.doubted,
      scale: pH.isTotalScale ? "total" : "NBS",
      salinity,
      temperature,
    });
    return answerReply(answer, context, {
      title: known.titled(`pH ${showEstimate(pH.read, "")} at ${showEstimate(dkh, "dKH")}`),
      headline: ({ verdict }) => SAID[verdict],
      body: ({ carbonDioxide, pHWhenAired }) => [
        `The water holds carbon dioxide for ${showEstimate(carbonDioxide, "µatm", { significant: 3 })}; outdoor air has about 420.`,
        `Well aired with outdoor air, the same water would read pH ${showEstimate(pHWhenAired, "", { significant: 3 })}.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
