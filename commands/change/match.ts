import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { blendMatch } from "../../src/core/water/blend-match.ts";
import { answerReply, askFor, choice, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { tankSalinity, tankTemperature } from "../../src/kit/tank-figures.ts";
import { systemOf, systemOptions, WHICH_VOLUME } from "./shared.ts";

const TITLE = "Matching new water";

export default defineCommand({
  name: "match",
  summary: "How far new water moves the tank's salinity and temperature",
  options: {
    new: quantity.volume("How much new water", "600 L"),
    salinity: quantity.salinity("Salinity of the new water", "34 ppt"),
    temperature: quantity.temperature("Temperature of the new water", "21 °C"),
    "tank-salinity": optional(
      quantity.salinity("Salinity of the tank; your last reading if left out", "35 ppt"),
    ),
    "tank-temperature": optional(
      quantity.temperature("Temperature of the tank; your last reading if left out", "26 °C"),
    ),
    ph: optional(quantity.ph("pH of the new water", "8.2")),
    "tank-ph": optional(quantity.ph("pH of the tank", "8.0")),
    way: optional(choice("Old water out first, or new water on top", ["exchange", "on top"])),
    ...systemOptions,
  },
  examples: [
    "/change match new:600 L salinity:34 ppt temperature:21 °C tank-salinity:35 ppt tank-temperature:26 °C volume:2300 L",
  ],
  run(input, context) {
    const system = systemOf(input, context);
    if (system === undefined)
      return askFor(context, WHICH_VOLUME.option, { title: TITLE, text: WHICH_VOLUME.text });
    const { tank } = system;
    const keptSalinity =
      input["tank-salinity"] === undefined && tank !== undefined ? tankSalinity(tank, context) : undefined;
    const salinity = input["tank-salinity"]?.salinity ?? keptSalinity?.estimate;
    if (salinity === undefined)
      return askFor(
        context,
        { name: "tank-salinity", example: "35 ppt" },
        { title: TITLE, text: "What is the tank's salinity?" },
      );
    const keptTemperature =
      input["tank-temperature"] === undefined && tank !== undefined
        ? tankTemperature(tank, context)
        : undefined;
    const temperature = input["tank-temperature"]?.estimate ?? keptTemperature?.estimate;
    if (temperature === undefined)
      return askFor(
        context,
        { name: "tank-temperature", example: "26 °C" },
        { title: TITLE, text: "What is the tank's temperature?" },
      );
    const answer = blendMatch({
      tank: { volume: system.volume, salinity, temperature, pH: input["tank-ph"]?.best },
      added: {
        volume: input.new.estimate,
        salinity: input.salinity.salinity,
        temperature: input.temperature.estimate,
        pH: input.ph?.best,
      },
      isExchange: input.way !== "on top",
    });
    return answerReply(answer, context, {
      title: `${tank === undefined ? "" : `${tank.name}: `}${showVolume(input.new.estimate, input.new.typedUnit)} of new water`,
      headline: (it) =>
        `${showEstimate(it.salinity, "ppt", { significant: 3 })} and ${showEstimate(it.temperature, "°C", { significant: 3 })}`,
      body: (it) => [
        `The animals meet a step of ${signed(it.salinityStep, "ppt")} and ${signed(it.temperatureStep, "°C")}.`,
        `${input.way === "on top" ? "With the new water on top" : "As much old water out as new water in"}; the system then holds ${showVolume(it.volumeL, system.typedUnit)}.`,
      ],
      taken: [
        ...system.taken,
        ...[keptSalinity, keptTemperature].flatMap((each) => (each === undefined ? [] : [each.taken])),
      ],
      cautions: system.cautions,
    });
  },
});

function signed(step: Parameters<typeof showEstimate>[0], unit: string): string {
  return `${step.best > 0 ? "+" : ""}${showEstimate(step, unit, { significant: 2 })}`;
}
