import { dayAfter } from "../../src/core/breeding/calendar.ts";
import { dutiesWithin, plannedDuties } from "../../src/core/breeding/rota-plan.ts";
import { rotaSpec, sayDuty } from "../../src/kit/breeding/duties.ts";
import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { comingDayOption, numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, reading, UserError } from "../../src/kit/index.ts";

const MOST_DAYS = 31;
const MOST_SLOTS = 4;

export default defineCommand({
  name: "plan",
  summary: "Share out duties evenly: lowest load first, absences left out, what is planned stays",
  options: {
    days: optional(numberOption("For how many days; 7 if left out", "7")),
    from: optional(comingDayOption("From which day; today if left out")),
    slots: optional(
      reading("Duties of a day, with commas; “evening” if left out", "morning, evening", (text) => {
        const slots = [...new Set(text.split(",").map((slot) => slot.trim().toLowerCase()))].filter(
          (slot) => slot !== "",
        );
        return slots.length >= 1 &&
          slots.length <= MOST_SLOTS &&
          slots.every((slot) => [...slot].length <= 20)
          ? { kind: "read", value: slots, readAs: slots.join(", ") }
          : {
              kind: "unreadable",
              message: "One to four short words, with commas between. Try “morning, evening”.",
            };
      }),
    ),
  },
  examples: ["/rota plan days:7 slots:morning, evening"],
  run({ days = 7, from, slots = ["evening"] }, context): Reply {
    if (days > MOST_DAYS) throw new UserError("bad-input", `At most ${MOST_DAYS} days are planned at once.`);
    const { start, open } = writeFacts(context, ({ state, today }) => {
      const first = from ?? today;
      const facts = plannedDuties(state, first, days, slots);
      if (facts.length === 0)
        throw new UserError("not-now", "All of that is planned already. /rota week shows it.");
      return {
        facts,
        result: { start: first, open: facts.filter(({ person }) => person === undefined).length },
      };
    });
    const group = groupOf(context);
    const until = dayAfter(start, Math.min(days, 7) - 1);
    const shown = dutiesWithin(group.state, start, until);
    const drawn = Array.from({ length: Math.min(days, 7) }, (_, index) => dayAfter(start, index));
    return told(
      context,
      `${group.state.name}: duties for ${days} days`,
      [
        ...shown.slice(0, 14).map((duty) => `${sayDuty(duty, group)}.`),
        ...(open === 0 ? [] : [`Nobody is free for ${open} of them: they are open to all, with /rota take.`]),
        `Done so far: ${Object.values(group.state.people)
          .filter(({ isHere, role }) => isHere && role !== "observer")
          .map(({ number, done }) => `${nameOf(group, number)} ${done}`)
          .join(", ")}.`,
      ],
      { picture: rotaSpec(group, shown, drawn) },
    );
  },
});
