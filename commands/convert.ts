import type { ConversionQuestion } from "../src/core/quantity/conversion.ts";
import { kindsWith, readTarget, suggestTargets } from "../src/core/quantity/conversion-target.ts";
import { convertQuantity, missingFor, usesTemperature } from "../src/core/quantity/convert-quantity.ts";
import {
  CONVERTIBLE_KINDS,
  type ConvertibleKind,
  KIND_NOUNS,
  readConvertible,
} from "../src/core/quantity/convertible.ts";
import { isRead } from "../src/core/quantity/read.ts";
import { showEstimate } from "../src/core/quantity/show.ts";
import { readSolutionDensity } from "../src/core/quantity/solution-density.ts";
import { FORMS, type Substance } from "../src/core/quantity/substances.ts";
import {
  answerReply,
  askFor,
  type Context,
  capitalised,
  choice,
  defineCommand,
  fills,
  optional,
  type Question,
  quantity,
  quoted,
  reading,
} from "../src/kit/index.ts";
import { mixingTemperature } from "./salt/shared.ts";

const TITLE = "Converting";
const SUBSTANCES: readonly Substance[] = [...new Set(FORMS.map(({ substance }) => substance))];
const OF_WHAT = [...SUBSTANCES, "alkalinity"] as const;

export default defineCommand({
  name: "convert",
  summary: "Any quantity in another unit, or in all its usual units",
  options: {
    quantity: reading(
      "What you have, e.g. 55 US gal, 78 °F, 8 dKH, 35 ppt, nitrate 20 mg/L",
      "55 US gal",
      (text, context) => {
        const { to, kind, of } = context.request.options;
        const target = to === undefined ? undefined : readTarget(to, context.habits);
        return readConvertible(text, context.habits, {
          kind: CONVERTIBLE_KINDS.find((each) => each === kind),
          of: OF_WHAT.find((each) => each === of?.toLowerCase()),
          wanted:
            target !== undefined && isRead(target) ? kindsWith(target.value, context.habits) : undefined,
        });
      },
    ),
    to: optional(
      reading(
        "The unit you want, e.g. L, °F, SG 25/25, µmol/L, mg/kg; all usual ones if left out",
        "L",
        (text, { habits }) => readTarget(text, habits),
        suggestTargets,
      ),
    ),
    of: optional(choice("Of which substance, where moles, N or P are counted", OF_WHAT)),
    salinity: optional(quantity.salinity("Of the water, between mg/L and mg/kg", "35 ppt")),
    temperature: optional(quantity.temperature("Of the water; 20–28 °C is taken if left out")),
    density: optional(
      reading("Of a solution, for per cent by weight", "1.15 kg/L", (text, { habits }) =>
        readSolutionDensity(text, habits),
      ),
    ),
    kind: optional(choice("What it is, where the text could be two things", CONVERTIBLE_KINDS)),
  },
  examples: [
    "/convert quantity:55 US gal to:L",
    "/convert quantity:1.026 SG 25/25",
    "/convert quantity:nitrate 20 mg/L to:mg/L as N",
    "/convert quantity:8 dKH",
  ],
  audience: "channel",
  run(input, context) {
    const { quantity: found } = input;
    if (found.is === "several") return askKind(found.kinds, context);
    if (found.is === "of what") return askSubstance(context);
    const { quantity: given } = found;
    const water = mixingTemperature(input.temperature?.estimate, undefined, context);
    const question: ConversionQuestion = {
      quantity: given,
      to: input.to,
      habits: context.member.habits,
      salinity: input.salinity?.salinity,
      temperature: water.estimate,
      density: input.density,
    };
    const missing = missingFor(question);
    if (missing === "of") return askSubstance(context);
    if (missing !== undefined)
      return askFor(
        context,
        { name: missing, example: MISSING[missing].example },
        { title: TITLE, text: MISSING[missing].text },
      );
    const typed = context.readAs.get("quantity");
    return answerReply(convertQuantity(question), context, {
      title: typed === undefined ? TITLE : typed.readAs,
      headline: ({ wanted, noun, bound }) =>
        wanted === undefined
          ? capitalised(`${noun.replace(/^an? /, "")} in every usual unit`)
          : `${bound === undefined ? "" : `${bound} `}${showEstimate(wanted.estimate, wanted.unit, { significant: wanted.significant })}`,
      body: () => [],
      table: ({ all }) => ({
        columns: ["unit", "value"],
        rows: all.map(({ unit, estimate, significant }) => [
          unit,
          showEstimate(estimate, "", { significant }),
        ]),
      }),
      taken: usesTemperature(question) ? water.taken : [],
    });
  },
});

const MISSING = {
  salinity: {
    text: "How salty is the water? A litre of sea water weighs more than a kilogram. (0 ppt for fresh)",
    example: "35 ppt",
  },
  density: { text: "What does a litre of the solution weigh? It stands on the label.", example: "1.15 kg/L" },
} as const;

function askKind(kinds: readonly ConvertibleKind[], context: Context): Question {
  const typed = context.request.options["quantity"] ?? "";
  return askFor(
    context,
    { name: "kind", example: kinds[0] ?? "" },
    {
      title: TITLE,
      text: `What is ${quoted(typed)}?`,
      choices: kinds.map((kind) => fills(KIND_NOUNS[kind], "kind", kind)),
    },
  );
}

function askSubstance(context: Context): Question {
  return askFor(
    context,
    { name: "of", example: "nitrate" },
    {
      title: TITLE,
      text: "Of which substance? Moles, and nitrogen or phosphorus, weigh differently in each.",
      choices: OF_WHAT.map((substance) => fills(substance, "of", substance)),
    },
  );
}
