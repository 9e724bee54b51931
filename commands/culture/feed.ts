import { cultureOutlook } from "../../src/core/breeding/culture-outlook.ts";
import { type RotiferPlan, rotifersTonight } from "../../src/core/breeding/feed-tonight.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { as, type Litres } from "../../src/core/quantity/units.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { placeOption } from "../../src/kit/breeding/options.ts";
import { percentText } from "../../src/kit/breeding/say.ts";
import {
  answerReply,
  defineCommand,
  optional,
  quantity,
  type Reply,
  UserError,
} from "../../src/kit/index.ts";

/** Rotifers per mL aimed at, and under which larvae are topped up, for want of a better figure. */
const USUAL_TARGET = 5;
const USUAL_FEEDS = 2;
const MOST_PER_ML = 10_000;

export default defineCommand({
  name: "feed",
  summary: "Tonight's feed: rotifers the tank lacks, and how much of which culture to harvest",
  options: {
    tank: placeOption("The larvae's tank"),
    left: quantity.plainNumber("What is left in it now, per mL, counted after the water change", "2"),
    target: optional(quantity.plainNumber(`Wanted per mL; ${USUAL_TARGET} if left out`, "10")),
    feeds: optional(quantity.count(`Feeds a day; ${USUAL_FEEDS} if left out`, "2")),
  },
  examples: ["/culture feed tank:tank 3 left:2 target:10"],
  run({ tank, left, target, feeds }, context): Reply {
    if (
      [left, target, feeds].some((each) => each !== undefined && !(each.low >= 0 && each.high <= MOST_PER_ML))
    )
      throw new UserError("bad-input", "Densities and feeds start at nothing. Try left:2 target:10.");
    const { cultures } = groupOf(context).state;
    const running = Object.values(cultures).filter(
      ({ organism, ended, counts }) => organism === "rotifers" && ended === undefined && counts.length > 0,
    );
    const sources = running.map(({ name, litres, counts }) => ({
      name,
      litres: as<Litres>(litres),
      perML: counts.at(-1)?.best ?? 0,
    }));
    const outlooks = running.flatMap(
      (each) => cultureOutlook(each, Object.values(cultures), context.now).cautions,
    );
    return answerReply<RotiferPlan>(
      rotifersTonight(
        {
          tankL: as<Litres>(tank.litres),
          targetPerML: target?.best ?? USUAL_TARGET,
          leftPerML: left.best,
          feedsPerDay: feeds?.best ?? USUAL_FEEDS,
        },
        sources,
      ),
      context,
      {
        title: `${tank.name}: tonight's rotifers`,
        headline: ({ needed, harvests }) =>
          needed === 0
            ? "Nothing to add: the target is met"
            : `${Math.round(needed).toLocaleString("en")} rotifers${harvests.length === 0 ? "" : `: ${harvests.map(({ culture, litres }) => `${showNumber(litres, 2)} L of ${culture}`).join(", ")}`}`,
        body: ({ harvests, cultureL, neededPerDay }) => [
          ...harvests.map(
            ({ culture, litres, share }) =>
              `${culture}: sieve ${showNumber(litres, 2)} L, ${percentText(share)} of it.`,
          ),
          ...(cultureL === undefined
            ? []
            : [
                `For good, ${Math.round(neededPerDay).toLocaleString("en")} a day ask for about ${showNumber(cultureL, 2)} L of culture.`,
              ]),
          "In a small tank with few larvae the density decides, not what they eat: both grow with them.",
        ],
        cautions: outlooks,
      },
    );
  },
});
