import { type CultureOutlook, cultureOutlook } from "../../src/core/breeding/culture-outlook.ts";
import { cultureChart } from "../../src/kit/breeding/charts.ts";
import { groupOf, nameOf } from "../../src/kit/breeding/group.ts";
import { cultureOption } from "../../src/kit/breeding/options.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { answerReply, defineCommand, optional, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "show",
  summary: "A culture: which way it goes, what can be taken, who keeps the back-up",
  options: { culture: optional(cultureOption("Which one; all in short if left out")) },
  examples: ["/culture show culture:rotifers A", "/culture show"],
  run({ culture }, context): Reply {
    const group = groupOf(context);
    const all = Object.values(group.state.cultures).filter(({ ended }) => ended === undefined);
    if (culture === undefined)
      return told(
        context,
        `${group.state.name}: cultures`,
        all.length === 0 ? ["None is noted: /culture start."] : [],
        {
          table: {
            columns: ["culture", "what", "litres", "place", "keeper", "per mL"],
            rows: all.map(({ name, organism, litres, place, keeper, counts }) => [
              name,
              organism,
              String(Number(litres.toPrecision(3))),
              place,
              keeper === undefined ? "nobody" : nameOf(group, keeper),
              counts.length === 0 ? "not counted" : String(Number((counts.at(-1)?.best ?? 0).toPrecision(3))),
            ]),
          },
        },
      );
    return answerReply<CultureOutlook>(cultureOutlook(culture, all, context.now), context, {
      title: `${culture.name}: ${culture.organism}, ${culture.place}`,
      headline: ({ perML, changePerDay }) =>
        `${Number(perML.toPrecision(3))} per mL, ${changePerDay < 0 ? "shrinking" : "growing"} ${percentText(Math.abs(changePerDay))} a day`,
      body: ({ mostHarvest, takenPerDay, doublingDays, backups }) => [
        `Up to ${percentText(mostHarvest)} a day can be taken for good; ${percentText(takenPerDay)} a day was taken since the count before.`,
        ...(doublingDays === undefined || doublingDays <= 0
          ? []
          : [`Twice as many in ${doublingDays.toFixed(1)} days if left alone.`]),
        backups.length === 0
          ? "No back-up runs."
          : `Back-up: ${backups.map(({ name, place, keeper }) => `${name} at ${place}, kept by ${nameOf(group, keeper)}`).join("; ")}.`,
      ],
      chart: () => cultureChart(culture, group.state.zone, context.now),
    });
  },
});
