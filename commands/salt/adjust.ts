import { showEstimate, showNumber, showVolume } from "../../src/core/quantity/show.ts";
import { as, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import { adjustSalinity, type Means } from "../../src/core/water/adjust-salinity.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  fills,
  optional,
  quantity,
  tankInMind,
  tankOption,
} from "../../src/kit/index.ts";
import { tankSalinity, tankVolume } from "../../src/kit/tank-figures.ts";
import { knownYield, mixingTemperature, showSalt, takenOf } from "./shared.ts";

const MEANS = ["dry salt", "saltier water", "exchange", "fresh water"] as const;
const TITLE = "Changing the salinity";

export default defineCommand({
  name: "adjust",
  summary: "Raise or lower the salinity of a running system, and how fast",
  options: {
    to: quantity.salinity("The salinity you want", "35 ppt"),
    from: optional(quantity.salinity("The salinity now; your last logged reading if left out", "33 ppt")),
    by: optional(choice("With what: a salt mix, saltier water, exchanging water, or fresh water", MEANS)),
    water: optional(
      quantity.salinity("Salinity of the water you put in, for saltier water or an exchange", "45 ppt"),
    ),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out")),
    "per-day": optional(quantity.salinity("The most it may move in a day", "0.5 ppt")),
    tank: optional(tankOption()),
  },
  examples: [
    "/salt adjust from:33 ppt to:35 ppt by:dry salt volume:200 L",
    "/salt adjust to:35 ppt by:exchange water:0 ppt tank:Lagoon",
  ],
  run(input, context) {
    const tank = tankInMind(input.tank, input.volume, context);
    const kept = input.from === undefined && tank !== undefined ? tankSalinity(tank, context) : undefined;
    const now = input.from?.salinity ?? kept?.estimate;
    if (now === undefined)
      return askFor(
        context,
        { name: "from", example: "33 ppt" },
        { title: TITLE, text: "What is the salinity now?" },
      );
    const water = input.volume === undefined && tank !== undefined ? tankVolume(tank, context) : undefined;
    const volume = input.volume?.estimate ?? water?.estimate;
    if (volume === undefined)
      return askFor(
        context,
        { name: "volume", example: "200 L" },
        { title: TITLE, text: "How much water is in the system? /tank add would remember it." },
      );
    const isRise = input.to.salinity.best > now.best;
    const by = input.by ?? (input.water === undefined ? undefined : "exchange");
    if (by === undefined)
      return askFor(
        context,
        { name: "by", example: isRise ? "dry salt" : "fresh water" },
        {
          title: TITLE,
          text: `From ${showEstimate(now, "ppt")} to ${showEstimate(input.to.salinity, "ppt")}: with what?`,
          choices: (isRise ? ["dry salt", "saltier water", "exchange"] : ["exchange", "fresh water"]).map(
            (each) => fills(each, "by", each),
          ),
        },
      );
    if ((by === "saltier water" || by === "exchange") && input.water === undefined)
      return askFor(
        context,
        { name: "water", example: isRise ? "45 ppt" : "0 ppt" },
        { title: TITLE, text: "How salty is the water you put in?" },
      );
    const product = by === "dry salt" ? knownYield(undefined, context) : undefined;
    const temperature = mixingTemperature(input.temperature?.estimate, tank, context);
    const typedUnit = input.volume?.typedUnit ?? "L";
    const added = input.water?.salinity ?? { best: ZERO, low: ZERO, high: ZERO };
    const means: Means =
      by === "dry salt"
        ? { kind: "dry salt", yieldFactor: product?.estimate }
        : by === "fresh water"
          ? { kind: "fresh water" }
          : { kind: by === "exchange" ? "exchange" : "brine", salinity: added };
    const answer = adjustSalinity({
      volume,
      now,
      target: input.to.salinity,
      temperature: temperature.estimate,
      means,
      dailyCap: input["per-day"]?.salinity.best,
    });
    return answerReply(answer, context, {
      title: `${tank !== undefined && water !== undefined ? `${tank.name}: ` : ""}${showEstimate(now, "ppt")} to ${showEstimate(input.to.salinity, "ppt")} by ${by}`,
      headline: (it) =>
        by === "dry salt"
          ? `${showSalt(it.saltKg, typedUnit)} of salt mix`
          : by === "exchange"
            ? `Exchange ${showVolume(it.addL, typedUnit)}`
            : `Add ${showVolume(it.addL, typedUnit)}`,
      body: (it) => [
        ...(by === "exchange" || by === "dry salt"
          ? []
          : [`The system then holds ${showVolume(it.resultingVolumeL, typedUnit)}: make room first.`]),
        it.schedule.length > 1
          ? `Over ${it.schedule.length} days, at most ${showNumber(it.pace.capPerDay, 2)} ppt a day.`
          : "Small enough for one day.",
      ],
      table: (it) => ({
        columns: [
          "day",
          "from",
          "to",
          by === "dry salt" ? "salt, kg" : by === "exchange" ? "exchange, L" : "add, L",
        ],
        rows: it.schedule
          .slice(0, 14)
          .map((day) => [
            String(day.day),
            showNumber(day.from, 3),
            showNumber(day.to, 3),
            showNumber(by === "dry salt" ? day.saltKg : day.addL, 3),
          ]),
      }),
      taken: [...takenOf(kept, water), ...temperature.taken, ...(product?.taken ?? [])],
      cautions: water?.cautions ?? [],
    });
  },
});

const ZERO = as<PracticalSalinity>(0);
