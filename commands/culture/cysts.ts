import { type CystPlan, cystsTonight } from "../../src/core/breeding/feed-tonight.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { shareOf } from "../../src/core/breeding/share-of.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { as, type Fraction, type Hours } from "../../src/core/quantity/units.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { nameOption, numberOption } from "../../src/kit/breeding/options.ts";
import { setUpTimes, tomorrowAt } from "../../src/kit/breeding/set-up.ts";
import { answerReply, defineCommand, optional, quantity, type Reply, reading } from "../../src/kit/index.ts";

/** Share lost between hatching vessel and tank, for want of a better figure. */
const USUAL_LOSS = 0.1;

export default defineCommand({
  name: "cysts",
  summary: "Brine shrimp for a feed: cysts to weigh, and when they must be in the water",
  options: {
    nauplii: numberOption("How many are wanted", "150,000"),
    tin: optional(
      nameOption("Which tin, as kept with /culture tin; the newest if left out", "blue tin 2026"),
    ),
    at: optional(
      reading("When they are fed tomorrow, 24-hour clock; 19:00 if left out", "19:00", (text) => {
        const [, hour = "", minute = ""] = /^([01]?\d|2[0-3])[:.h]?([0-5]\d)?$/.exec(text.trim()) ?? [];
        return hour === ""
          ? { kind: "unreadable", message: "That is not a time of day. Try “19:00”." }
          : {
              kind: "read",
              value: { hour: Number(hour), minute: Number(minute || "0") },
              readAs: `${hour}:${minute || "00"}`,
            };
      }),
    ),
    enrich: optional(quantity.span("Hours of enrichment, if any", "12 h")),
    lost: optional(quantity.percent("Lost at the harvest; 10 % if left out", "10 %")),
  },
  examples: ["/culture cysts nauplii:150,000 at:19:00"],
  run({ nauplii, tin, at, enrich, lost }, context): Reply {
    const { tins, zone } = groupOf(context).state;
    const found =
      tin === undefined ? Object.values(tins).sort((a, b) => (a.day < b.day ? 1 : -1))[0] : tins[keyOf(tin)];
    const plan = cystsTonight(
      nauplii,
      found?.naupliiPerG,
      as<Fraction>(lost === undefined ? USUAL_LOSS : Math.min(0.9, shareOf(lost))),
      enrich?.estimate.best ?? as<Hours>(0),
    );
    const fed = tomorrowAt(at ?? { hour: 19, minute: 0 }, zone, context.now);
    return answerReply<CystPlan>(plan, context, {
      title: `Brine shrimp: ${nauplii.toLocaleString("en")} nauplii`,
      headline: ({ grams, litres }) =>
        `Weigh ${showNumber(grams, 2)} g of cysts into at least ${showNumber(litres, 2)} L`,
      body: ({ startsHoursBefore }) => [
        `Set up ${setUpTimes(fed, startsHoursBefore, zone)}, for the feed ${fed.toFormat("ccc HH:mm", { locale: "en" })}.`,
        found === undefined ? "No tin has been tested." : `By the tin ${found.name}, tested ${found.day}.`,
      ],
    });
  },
});
