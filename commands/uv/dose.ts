import type { MilliWattsPerCm2 } from "../../src/core/plant/plant-units.ts";
import { type UvInputs, uvAtFlow } from "../../src/core/plant/uv-dose.ts";
import { UV_TARGETS, type UvTarget } from "../../src/core/plant/uv-targets.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { readPlainNumber } from "../../src/core/quantity/plain-number.ts";
import { readPower } from "../../src/core/quantity/power.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  optional,
  quantity,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";

const TITLE = "Ultraviolet dose";
const TARGETS = Object.keys(UV_TARGETS) as UvTarget[];

export default defineCommand({
  name: "dose",
  summary: "Dose a UV unit gives at a flow, and the most flow for a target",
  options: {
    lit: quantity.volume("Water inside the lit chamber", "1.6 L"),
    flow: optional(quantity.flow("Flow through the unit; your tank's if left out", "2000 L/h")),
    intensity: optional(
      reading("Mean intensity in the chamber, lamp new, mW/cm²", "18 mW/cm2", (text, { habits }) =>
        readPlainNumber(text.replace(/ ?mW ?\/ ?cm(?:2|²|\^2)$/i, ""), habits),
      ),
    ),
    lamp: optional(
      reading("Or the lamp's watts, with length, sleeve, chamber and clarity", "55 W", (text, { habits }) =>
        readPower(text, habits),
      ),
    ),
    length: optional(quantity.length("Lit length of the lamp", "80 cm")),
    sleeve: optional(quantity.length("Outside diameter of the sleeve", "2.5 cm")),
    chamber: optional(quantity.length("Inside diameter of the chamber", "8 cm")),
    clarity: optional(quantity.fraction("Share of UV left after 1 cm of your water", "90 %")),
    target: optional(choice("What it is meant for", TARGETS)),
    volume: optional(quantity.volume("Water of the whole system, for passes a day", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: [
    "/uv dose lit:1.6 L intensity:18 mW/cm2 flow:2000 L/h target:Cryptocaryon irritans theront, lethal in vitro",
    "/uv dose lit:3.6 L lamp:55 W length:80 cm sleeve:2.5 cm chamber:8 cm clarity:90 % flow:2000 L/h",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.volume, context);
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    const { intensity, lamp, length, sleeve, chamber, clarity } = input;
    const light: UvInputs["light"] | undefined =
      intensity !== undefined
        ? { kind: "intensity", mean: mapEstimate(intensity.estimate, (value) => as<MilliWattsPerCm2>(value)) }
        : lamp === undefined ||
            length === undefined ||
            sleeve === undefined ||
            chamber === undefined ||
            clarity === undefined
          ? undefined
          : {
              kind: "chamber",
              lampW: lamp.estimate,
              lampCm: length.estimate,
              sleeveDiameterCm: sleeve.estimate,
              chamberDiameterCm: chamber.estimate,
              transmittance: clarity,
            };
    if (light === undefined) {
      const missing =
        lamp === undefined
          ? "intensity"
          : length === undefined
            ? "length"
            : sleeve === undefined
              ? "sleeve"
              : chamber === undefined
                ? "chamber"
                : "clarity";
      return askFor(
        context,
        { name: missing, example: EXAMPLES[missing] },
        {
          title: TITLE,
          text:
            missing === "intensity"
              ? "How strong is the light in the chamber? Or give lamp:, length:, sleeve:, chamber: and clarity:."
              : `The lamp's light needs its ${missing} as well: how much?`,
        },
      );
    }
    const system = input.volume?.estimate ?? (known.tank === undefined ? undefined : known.volume(undefined));
    const answer = uvAtFlow({
      light,
      contactL: input.lit.estimate,
      flow,
      ...(input.target === undefined ? {} : { target: input.target }),
      ...(system === undefined ? {} : { systemL: system }),
    });
    return answerReply(answer, context, {
      title: known.titled(`${TITLE} at ${showEstimate(flow, "L/h", { significant: 3 })}`),
      headline: ({ doseMJPerCm2 }) => showEstimate(doseMJPerCm2, "mJ/cm²", { significant: 2 }),
      body: ({ target, passesPerDay }) => [
        ...(target === undefined
          ? ["Say target: to hold it against a published dose."]
          : [
              `${target.name}: ${showEstimate(target.doseMJPerCm2, "mJ/cm²")} published; counted twice over, ${target.isReached ? "it is reached" : "it is not surely reached"}.`,
              `The most flow for it: ${showEstimate(target.mostFlowLPerH, "L/h", { significant: 2 })}.`,
            ]),
        ...(passesPerDay === undefined
          ? []
          : [`The whole water passes ${showEstimate(passesPerDay, "times a day", { significant: 2 })}.`]),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

const EXAMPLES = {
  intensity: "18 mW/cm2",
  length: "80 cm",
  sleeve: "2.5 cm",
  chamber: "8 cm",
  clarity: "90 %",
} as const;
