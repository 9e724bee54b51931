import { containerLoad } from "../../src/core/plant/container-load.ts";
import { floorLoad } from "../../src/core/plant/floor-load.ts";
import { readFeet } from "../../src/core/plant/read-load.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type DegreesC, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import { seawaterDensity } from "../../src/core/water/density.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  optional,
  quantity,
  reading,
  tankOption,
  words,
} from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";

const TITLE = "Weight on the floor";
const USUAL = { salinity: as<PracticalSalinity>(35), temperature: as<DegreesC>(25) };

export default defineCommand({
  name: "check",
  summary: "What a filled tank weighs and how it presses on the floor, beside the residential figure",
  options: {
    water: optional(quantity.volume("Water to the brim, beside rock; from dimensions if left out", "1820 L")),
    footprint: optional(plantOption("footprint", "Floor it stands on")),
    rock: optional(quantity.mass("Dry mass of rock", "240 kg")),
    sand: optional(quantity.mass("Dry mass of sand", "60 kg")),
    masses: optional(plantOption("masses", "Stand, shell, equipment, people")),
    feet: optional(
      reading("Feet of the stand, and the area of each", "6 x 79 cm2", (text, { habits }) =>
        readFeet(text, habits),
      ),
    ),
    container: optional(words("Which container of the tank; its display if left out", "display", 60)),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out")),
    tank: optional(tankOption()),
  },
  examples: [
    "/weight check water:2030 L rock:240 kg masses:stand 160 kg; acrylic shell 244 kg footprint:2.6 m2 feet:6 x 79 cm2",
    "/weight check tank:Lagoon",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.water, context);
    const wanted = input.container?.toLowerCase();
    const container = known.tank?.containers.find((each) =>
      wanted === undefined ? each.role === "display" : each.name.toLowerCase() === wanted,
    );
    const described = container === undefined ? undefined : containerLoad(container);
    const waterL = input.water?.estimate ?? described?.waterL;
    if (waterL === undefined)
      return askFor(
        context,
        { name: "water", example: "1820 L" },
        { title: TITLE, text: "How much water does it hold to the brim, beside rock and sand?" },
      );
    if (input.water === undefined)
      known.measured(`water to the brim of ${container?.name ?? "the tank"}`, waterL, "L");
    const noted = known.plant("footprint", input.footprint);
    const footprintM2 = noted ?? (described === undefined ? undefined : exactly(described.footprintM2));
    if (footprintM2 === undefined) return known.askPlant("footprint", TITLE);
    if (noted === undefined) known.measured("footprint", footprintM2, "m²");
    const salinity = known.salinity(input.salinity) ?? exactly(USUAL.salinity);
    const temperature = known.temperature(input.temperature) ?? exactly(USUAL.temperature);
    const others = known.plant("masses", input.masses);
    if (others === undefined)
      known.assume({ name: "stand, shell and equipment", from: "not said", readAs: "0 kg" });
    const parts = [
      ...(input.rock === undefined
        ? (described?.parts.filter(({ name }) => name === "rock") ?? [])
        : [{ name: "rock", massKg: input.rock.estimate }]),
      ...(input.sand === undefined
        ? (described?.parts.filter(({ name }) => name === "sand") ?? [])
        : [{ name: "sand", massKg: input.sand.estimate }]),
      ...(others ?? []),
    ];
    const answer = floorLoad({
      waterL,
      density: exactly(seawaterDensity(salinity.best, temperature.best)),
      parts,
      footprintM2,
      ...(input.feet === undefined ? {} : { feet: input.feet }),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ massKg, pressureKPa, psf }) =>
        `${showEstimate(massKg, "kg", { significant: 3 })}: ${showEstimate(pressureKPa, "kPa", { significant: 3 })}, ${showEstimate(psf, "psf", { significant: 3 })}`,
      body: ({ timesLivingRoom, footMPa }) => [
        `${showEstimate(timesLivingRoom, "times", { significant: 2 })} the 40 psf that living rooms are designed for. Nearly every tank is above it: a reason to ask, not a verdict.`,
        ...(footMPa === undefined
          ? []
          : [
              `Under each foot ${showEstimate(footMPa, "MPa", { significant: 2 })}, were they to share evenly.`,
            ]),
        ...(parts.length === 0
          ? ["Nothing but water is counted."]
          : [
              `Counted with the water: ${parts.map(({ name, massKg }) => `${name} ${showEstimate(massKg, "kg")}`).join(", ")}.`,
            ]),
        ...(others === undefined
          ? ["Its own glass or acrylic, the stand and the equipment are not counted yet: say masses:."]
          : []),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
