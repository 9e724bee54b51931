import {
  MINERAL_SALTS,
  type Mineral,
  type MineralSalt,
  mineralSalt,
} from "../../src/core/carbonate/mineral-salts.ts";
import { raiseMineral } from "../../src/core/carbonate/raise-mineral.ts";
import { inDkh, type MineralLevel } from "../../src/core/carbonate/read-mineral-level.ts";
import { type Estimate, exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type Fraction, type MilliequivPerL } from "../../src/core/quantity/units.ts";
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
import { type KnownFigures, knownFigures } from "../../src/kit/known-figures.ts";
import { strength } from "../dose/shared.ts";
import { doseHeadline, doseLines, stockOf } from "./raise-words.ts";
import { mineralLevel } from "./shared.ts";

const SALTS = Object.keys(MINERAL_SALTS) as MineralSalt[];
const NAMES = SALTS.map((salt) => MINERAL_SALTS[salt].name);
/** Older readings are not taken for today's level. */
const MOST_DAYS = 14;
/** Ammonia nitrogen from which there counts as being some, mg/L: what kits can show. */
const SOME_AMMONIA = 0.1;

export default defineCommand({
  name: "raise",
  summary: "How much of which salt raises alkalinity, calcium or magnesium, day by day",
  options: {
    mineral: choice("What shall rise", ["alkalinity", "calcium", "magnesium"]),
    to: mineralLevel("The level you want, e.g. 8 dKH or 420 mg/L", "420 mg/L"),
    now: optional(mineralLevel("The level now; your last logged one if left out", "400 mg/L")),
    salt: optional(choice("Which salt, with its bound water, as the label names it", NAMES)),
    purity: optional(
      quantity.fraction("Share of the product that is the salt; all of it if left out", "97 %"),
    ),
    stock: optional(strength("If you dose a stock: how strong, the salt weighed as bought", "100 g in 1 L")),
    reservoir: optional(quantity.volume("How much stock you have, for how long it lasts", "5 L")),
    pump: optional(quantity.doserFlow("Flow of your dosing pump, for its seconds", "1.5 mL/min")),
    doses: optional(quantity.count("Into how many doses a day is split", "4")),
    "per-day": optional(mineralLevel("A slower pace than the usual limit, per day", "10 mg/L")),
    ammonia: optional(
      choice("Is there ammonia in the water? Your log is looked at if left out", ["no", "yes"]),
    ),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: [
    "/minerals raise mineral:calcium now:400 mg/L to:420 mg/L salt:calcium chloride dihydrate volume:2700 L",
    "/minerals raise mineral:alkalinity to:8 dKH salt:sodium bicarbonate tank:Lagoon",
  ],
  run(input, context): Outcome {
    const { mineral } = input;
    const title = `Raising ${mineral}`;
    const wrong = [
      ["to", input.to] as const,
      ["now", input.now] as const,
      ["per-day", input["per-day"]] as const,
    ].find(([, level]) => level !== undefined && figureOf(level, mineral) === undefined);
    if (wrong !== undefined)
      return askFor(
        context,
        { name: wrong[0], example: mineral === "alkalinity" ? "8 dKH" : "420 mg/L" },
        {
          title,
          text: `${mineral === "alkalinity" ? "Alkalinity is counted in dKH, meq/L or ppm CaCO3" : `This counts ${mineral} in mg/L`}. What is “${wrong[0]}” in that?`,
        },
      );
    const target = figureOf(input.to, mineral);
    const known = knownFigures(input.tank, input.volume, context);
    const now = input.now === undefined ? loggedLevel(mineral, known) : figureOf(input.now, mineral);
    if (now === undefined || target === undefined)
      return askFor(
        context,
        { name: "now", example: mineral === "alkalinity" ? "7 dKH" : "400 mg/L" },
        { title, text: `What is the ${mineral} now?` },
      );
    const salt = SALTS.find((each) => MINERAL_SALTS[each].name === input.salt);
    if (salt === undefined || mineralSalt(salt).mineral !== mineral) {
      const fitting = SALTS.filter((each) => mineralSalt(each).mineral === mineral).map(
        (each) => MINERAL_SALTS[each].name,
      );
      return askFor(
        context,
        { name: "salt", example: fitting[0] ?? "" },
        {
          title,
          text: `Which salt do you have? ${salt === undefined ? "The bound water counts: the label says dry, dihydrate and so on." : `${input.salt} does not raise ${mineral}.`}`,
          choices: fitting.map((each) => fills(each, "salt", each)),
        },
      );
    }
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", title);
    if (input.purity === undefined) known.assume({ name: "purity", from: "not said", readAs: "100 %" });
    const ammonia =
      input.ammonia === undefined && mineral === "alkalinity" ? known.logged("ammonia", 2) : undefined;
    const slower = input["per-day"] === undefined ? undefined : figureOf(input["per-day"], mineral)?.best;
    const answer = raiseMineral({
      salt,
      now,
      target,
      systemVolume,
      purity: input.purity ?? exactly(as<Fraction>(1)),
      ...(input.stock === undefined ? {} : { stock: stockOf(input.stock, input) }),
      ...(input.doses === undefined ? {} : { dosesPerDay: input.doses.best }),
      ...(slower === undefined ? {} : { slowerCap: slower }),
      isAmmoniaPresent: input.ammonia === "yes" || (ammonia !== undefined && ammonia.best >= SOME_AMMONIA),
    });
    return answerReply(answer, context, {
      title: known.titled(`${title} to ${showEstimate(target, mineral === "alkalinity" ? "dKH" : "mg/L")}`),
      headline: (it) => doseHeadline(it, mineralSalt(salt).name),
      body: (it) => doseLines(it, input.ammonia === undefined && ammonia === undefined),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

/** The level in the unit its mineral is counted in; undefined when the unit is another mineral's. */
function figureOf(level: MineralLevel, mineral: Mineral): Estimate | undefined {
  if (mineral === "alkalinity") return level.kind === "alkalinity" ? level.dkh : undefined;
  return level.kind === "concentration" ? level.mgPerL : undefined;
}

function loggedLevel(mineral: Mineral, known: KnownFigures): Estimate | undefined {
  const logged = known.logged(mineral, MOST_DAYS);
  return logged === undefined || mineral !== "alkalinity"
    ? logged
    : inDkh(mapEstimate(logged, (value) => as<MilliequivPerL>(value)));
}
