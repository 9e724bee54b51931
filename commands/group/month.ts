import { batchSurvival } from "../../src/core/breeding/batch-survival.ts";
import { dayAfter } from "../../src/core/breeding/calendar.ts";
import { fairness } from "../../src/core/breeding/fair-rota.ts";
import { stretchTotals } from "../../src/core/breeding/ledger/totals.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { dutiesWithin } from "../../src/core/breeding/rota-plan.ts";
import { groupOf, nameOf, sayDay } from "../../src/kit/breeding/group.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";
import { printableHtml, printableText } from "../../src/kit/printable-page.ts";

const DAYS = 30;

export default defineCommand({
  name: "month",
  summary: "The group's last thirty days on one page: batches, losses, gifts, duties, costs",
  options: {},
  examples: ["/group month"],
  run(_, context): Reply {
    const group = groupOf(context);
    const { state, today } = group;
    const from = dayAfter(today, -DAYS);
    const totals = stretchTotals(state, from, today);
    const batches = Object.values(state.batches).filter(
      ({ isClosed, rows }) => !isClosed || (rows.at(-1)?.[0] ?? "") >= from,
    );
    const batchLines = batches.map((batch) => {
      const survival = batchSurvival(batch, today);
      return `${batch.id} ${batch.species}, ${batch.stage}, ${batch.tank}: ${batch.alive === undefined ? "not counted yet" : sayCount(batch.alive)}${survival === undefined ? "" : `; ${percentText(survival.value.now.best)} alive after ${survival.value.days} days`}`;
    });
    const duties = dutiesWithin(state, from, today);
    const done = Object.values(state.people)
      .filter(({ isHere, role }) => isHere && role !== "observer")
      .map(({ number }) => ({ number, done: duties.filter(({ doneBy }) => doneBy === number).length }));
    const dutyLines = [
      ...done.map(({ number, done: times }) => `${nameOf(group, number)}: ${times}`),
      `Evenness: ${fairness(done.map((each) => each.done)).toFixed(2)} (1 is even)`,
    ];
    const gifts = Object.values(state.transfers)
      .filter(({ day }) => day !== undefined && day >= from)
      .map(
        ({ animals, species, to, day }) =>
          `${sayDay(day ?? today)}: ${animals} ${species} to ${nameOf(group, to)}`,
      );
    const cultureLines = Object.values(state.cultures)
      .filter(({ ended }) => ended === undefined || ended.day >= from)
      .map(({ name, organism, counts, ended }) => {
        const last = counts.at(-1);
        return `${name} (${organism}): ${ended === undefined ? (last === undefined ? "not counted" : `${Number(last.best.toPrecision(3))} per mL`) : `${ended.why} on ${sayDay(ended.day)}`}`;
      });
    const sections = [
      {
        heading: "In short",
        lines: [
          `${counted(totals.spawns, "spawn")}, ${totals.hatched} hatched; ${counted(totals.dead, "death")} noted, ${Math.round(totals.missing)} not accounted for, ${totals.given} given to others`,
          `Alive now, as far as counted: ${Math.round(totals.aliveNow).toLocaleString("en")}`,
          ...Object.values(state.alerts).map(({ water, day }) => `Alert on ${water} since ${sayDay(day)}`),
        ],
      },
      { heading: "Batches", lines: batchLines },
      { heading: "Cultures", lines: cultureLines },
      { heading: "Given to others", lines: gifts },
      { heading: "Duties done", lines: dutyLines },
      {
        heading: "Shared costs, since the beginning",
        lines: [`${(state.spentCents / 100).toFixed(2)} ${state.currency} in all; /cost balance settles up`],
      },
    ]
      .filter(({ lines }) => lines.length > 0)
      .map((section) => ({ ...section, isOrdered: false }));
    const page = {
      title: `${state.name}: ${sayDay(from)} to ${sayDay(today)}`,
      note: `Made on ${today} from ${state.lastEvent} entries of the group's ledger.`,
      sections,
    };
    return told(
      context,
      page.title,
      sections.flatMap(({ heading, lines }) => [
        `${heading}: ${lines.slice(0, 8).join("; ")}${lines.length > 8 ? `; and ${lines.length - 8} more` : ""}.`,
      ]),
      {
        files: [
          {
            name: `month-${today}.html`,
            mediaType: "text/html",
            content: printableHtml(page),
            encoding: "utf8",
            altText: printableText(page),
          },
        ],
      },
    );
  },
});
