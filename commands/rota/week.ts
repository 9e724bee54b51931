import { dayAfter } from "../../src/core/breeding/calendar.ts";
import { fairness } from "../../src/core/breeding/fair-rota.ts";
import { dutiesWithin } from "../../src/core/breeding/rota-plan.ts";
import { rotaSpec, sayDuty } from "../../src/kit/breeding/duties.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "week",
  summary: "The week's duties as a picture and in words",
  options: {},
  examples: ["/rota week"],
  run(_, context): Reply {
    const group = groupOf(context);
    const { today, state } = group;
    const from = dayAfter(today, -1);
    const days = Array.from({ length: 8 }, (_unused, index) => dayAfter(from, index));
    const duties = dutiesWithin(state, from, dayAfter(today, 6));
    const loads = Object.values(state.people)
      .filter(({ isHere, role }) => isHere && role !== "observer")
      .map(({ done }) => done);
    if (duties.length === 0)
      return told(context, "No duty is planned", ["/rota plan shares out the next days."]);
    return told(
      context,
      `${state.name}: duties`,
      [
        ...duties.map((duty) => `${sayDuty(duty, group)}.`),
        `Evenness of what was done: ${fairness(loads).toFixed(2)} (1 is even).`,
      ],
      { picture: rotaSpec(group, duties, days) },
    );
  },
});
