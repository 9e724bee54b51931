import { dutiesOn, missedDuties } from "../../src/core/breeding/rota-plan.ts";
import { tonight } from "../../src/core/breeding/tonight.ts";
import { sayDuty } from "../../src/kit/breeding/duties.ts";
import { groupOf, sayDay } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { sayTask } from "../../src/kit/breeding/say-task.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "tonight",
  summary: "Tonight's card: who is on, and what to do, from the most delicate tank to the least",
  options: {},
  examples: ["/rota tonight"],
  run(_, context): Reply {
    const group = groupOf(context);
    const { state, today } = group;
    const duties = dutiesOn(state, today);
    const missed = missedDuties(state, today);
    const tasks = tonight(state, today, context.now);
    return told(context, `${state.name}, ${sayDay(today)}`, [
      duties.length === 0
        ? "Nobody is planned tonight: /rota plan shares it out."
        : `${duties.map((duty) => sayDuty(duty, group)).join("; ")}.`,
      ...tasks.map((task, index) => `${index + 1}. ${sayTask(task, group)}`),
      ...(tasks.length === 0 ? ["Nothing asks for a look tonight."] : []),
      ...(missed.length === 0
        ? []
        : [
            `Not noted as done: ${missed.map((duty) => `${sayDay(duty.day)}, ${duty.slot}`).join("; ")}. Whoever did it: /rota done day:yesterday; else it is open to all.`,
          ]),
      "Hands and nets follow this order, never back; /rota done when it is finished.",
    ]);
  },
});
