import type { MgNPerL } from "../../src/core/nitrogen/nitrogen-units.ts";
import {
  type AmmoniaState,
  type UnionisedAmmonia,
  unionisedAmmonia,
} from "../../src/core/nitrogen/unionised-ammonia.ts";
import { type Estimate, exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { ammonia, hasLoggedBinder, phOf, phOptions } from "./shared.ts";

const TITLE = "Ammonia";
/** Readings older than this are not taken along: ammonia and pH move within days. */
const MOST_DAYS = 2;

const SAID: Readonly<Record<AmmoniaState, string>> = {
  normal: "in order",
  raised: "raised",
  "act today": "harmful, act today",
  emergency: "emergency",
};

export default defineCommand({
  name: "check",
  summary: "How much of the ammonia is the harmful form, and what brings it under the limit",
  options: {
    reading: optional(ammonia("Total ammonia as the kit prints it; your last logged one if left out")),
    ...phOptions,
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    limit: optional(quantity.concentration("NH₃ to get under; 0.035 mg/L if left out", "0.02 mg/L")),
    "new-ammonia": optional(ammonia("Ammonia in the water you would change with; none if left out")),
    "new-ph": optional(quantity.ph("pH of the water you would change with; the tank's if left out", "8.1")),
    binder: optional(
      choice("Whether an ammonia binder went in within two days; your log is looked at", ["no", "yes"]),
    ),
    tank: optional(tankOption()),
  },
  examples: [
    "/ammonia check reading:0.5 mg/L as NH4 ph:8.2 temperature:26 °C salinity:34 ppt",
    "/ammonia check reading:0.25-0.5 mg/L as TAN ph:8.2 measured:meter, ordinary buffers tank:Lagoon",
  ],
  run(input, context) {
    const known = knownFigures(input.tank, undefined, context);
    const logged = input.reading === undefined ? known.logged("ammonia", MOST_DAYS) : undefined;
    const total =
      input.reading ?? (logged === undefined ? undefined : { reading: logged, form: "TAN" as const });
    if (total === undefined)
      return askFor(
        context,
        { name: "reading", example: "0.5 mg/L as NH4" },
        { title: TITLE, text: "What does the ammonia kit read, and as what: nitrogen (TAN), NH3 or NH4?" },
      );
    const pH = phOf(input, known, MOST_DAYS);
    if (pH === undefined)
      return askFor(
        context,
        { name: "ph", example: "8.2" },
        { title: TITLE, text: "What is the pH? It decides how much is harmful." },
      );
    const temperatureC = known.temperature(input.temperature);
    if (temperatureC === undefined) return known.ask("temperature", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const answer = unionisedAmmonia({
      reading: total.reading,
      form: total.form,
      pH: pH.doubted,
      scale: pH.isTotalScale ? "total" : "buffers",
      temperatureC,
      salinity,
      ...(input.limit === undefined ? {} : { limitNh3: input.limit.estimate.best }),
      ...(input["new-ammonia"] === undefined && input["new-ph"] === undefined
        ? {}
        : {
            source: {
              tan: input["new-ammonia"]?.asNitrogen ?? NO_AMMONIA,
              ...(input["new-ph"] === undefined ? {} : { pH: input["new-ph"] }),
            },
          }),
      binderUsed: input.binder === "yes" || (input.binder === undefined && hasLoggedBinder(known, context)),
    });
    return answerReply(answer, context, {
      title: known.titled(
        `${showEstimate(total.reading, "mg/L")} of ammonia as ${total.form} at pH ${showEstimate(pH.read, "")}`,
      ),
      headline: (it) => `${showEstimate(it.nh3MgPerL, "mg/L NH₃", { significant: 2 })}: ${SAID[it.state]}`,
      body: (it) => [
        `${showEstimate(
          mapEstimate(it.nh3Share, (share) => share * 100),
          "%",
          { significant: 3 },
        )} of it is NH₃, the harmful form.`,
        ...(it.stateAtWorst === it.state ? [] : [`At the high end of the range: ${SAID[it.stateAtWorst]}.`]),
        ...remedyLines(it),
      ],
      table: (it) => ({
        columns: ["level", "mg/L NH₃", "reached at ammonia N, mg/L", "you are at, times"],
        rows: it.levels.map((level) => [
          level.name,
          showNumber(level.nh3MgPerL, 3),
          showEstimate(level.tan, "", { significant: 2 }),
          showEstimate(level.times, "", { significant: 2 }),
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

/** How far down, by water and by food. */
function remedyLines({ limitNh3, nh3MgPerL, remedy }: UnionisedAmmonia): readonly string[] {
  const limit = `${showNumber(limitNh3, 3)} mg/L NH₃`;
  if (remedy === undefined)
    return [
      nh3MgPerL.high > limitNh3
        ? `Most likely under the limit of ${limit}, but it may be over.`
        : `That is under the limit of ${limit}.`,
    ];
  const percent = (share: Estimate) =>
    showEstimate(
      mapEstimate(share, (part) => part * 100),
      "%",
      { significant: 2 },
    );
  return [
    ...(remedy.waterChange === undefined
      ? []
      : [`Change ${percent(remedy.waterChange)} of the water to get to ${limit}.`]),
    `Then feed at most ${percent(remedy.foodShare)} of the usual until the filter keeps up.`,
  ];
}

const NO_AMMONIA = exactly(as<MgNPerL>(0));
