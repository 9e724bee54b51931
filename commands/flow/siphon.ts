import type { Millimetres } from "../../src/core/plant/plant-units.ts";
import { siphonDrain } from "../../src/core/plant/siphon-drain.ts";
import { exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import { answerReply, askFor, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "A siphon drain and its standby";
/** Water allowed over a standby's rim, when it was not said. */
const USUAL_HEAD = exactly(as<Millimetres>(30));

export default defineCommand({
  name: "siphon",
  summary: "What a siphon drain carries, what is left once air gets in, and the standby it needs",
  options: {
    drain: optional(plantOption("drain", "The siphon: pipe, drop, length, fittings")),
    standby: optional(plantOption("standby", "The open pipe that takes over, and the water over its rim")),
    allowed: optional(quantity.length("How high the water may stand over a standby's rim", "30 mm")),
    flow: flowOption,
    surface: optional(plantOption("surface", "The display's surface, to tell how fast it rises")),
    tank,
  },
  examples: [
    "/flow siphon drain:siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry standby:2 in, water 30 mm flow:8000 L/h surface:260 x 100 cm",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const drain = known.plant("drain", input.drain);
    const siphon = drain?.find((element) => element.kind === "full siphon");
    if (drain === undefined) return known.askPlant("drain", TITLE);
    if (siphon === undefined)
      return askFor(
        context,
        { name: "drain", example: "siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry" },
        { title: TITLE, text: "None of these pieces is a siphon. Which pipe runs full?" },
      );
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    const standby = known.plant("standby", input.standby);
    const surfaceM2 = known.surface(input.surface);
    const allowed =
      input.allowed === undefined
        ? (standby?.headMm ?? USUAL_HEAD)
        : mapEstimate(input.allowed.estimate, (cm) => as<Millimetres>(cm * 10));
    if (input.allowed === undefined && standby === undefined)
      known.assume({ name: "water allowed over a standby's rim", from: "assumed", readAs: "30 mm" });
    const answer = siphonDrain({
      flow,
      siphon,
      headAllowedMm: allowed,
      ...(standby === undefined
        ? {}
        : { standby: { name: standby.name, boreMm: standby.diameterMm, headMm: standby.headMm } }),
      ...(surfaceM2 === undefined ? {} : { surfaceM2 }),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ primedLPerH, unprimedLPerH }) =>
        `${showFlow(primedLPerH)} full, ${showFlow(unprimedLPerH)} with air in it`,
      body: (it) => [
        `${showFlow(flow)} arrive: ${showFlow(it.leftOverLPerH)} would have to go elsewhere.`,
        ...(it.riseMmPerMin === undefined
          ? []
          : [
              `If nothing takes it, the display rises ${showEstimate(it.riseMmPerMin, "mm a minute", { significant: 2 })}.`,
            ]),
        ...(it.standbyLPerH === undefined
          ? []
          : [
              `The standby alone carries ${showFlow(it.standbyLPerH)}: ${it.isStandbyEnough === true ? "enough" : "not surely enough"} for all of it.`,
            ]),
        it.standbySize === undefined
          ? "No schedule 40 pipe up to 4 in takes the whole flow open at that head."
          : `Smallest standby for the whole flow: ${it.standbySize} in, schedule 40.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
