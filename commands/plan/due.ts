import { sayMoment } from "../../src/kit/calendar.ts";
import { dueLines, isShownDue, offNow } from "../../src/kit/due-lines.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";
import { plainReply } from "./shared.ts";

export default defineCommand({
  name: "due",
  summary: "What is due now, and what is switched off and has to come back",
  options: {},
  examples: ["/plan due"],
  run(_, context): Reply {
    const { records, member, now } = context;
    const tanks = records.tanks.own(member.id);
    const due = records.plans.open(member.id).filter((duty) => isShownDue(duty, now));
    const next = records.plans
      .of(member.id)
      .flatMap(({ nextAt }) => (nextAt === undefined ? [] : [nextAt]))
      .sort()[0];
    const off = offNow(tanks, context);
    const cautions = due.flatMap(({ words }) => words.cautions);
    return plainReply(
      "What is due",
      [
        ...dueLines(due, tanks, context),
        ...off,
        ...(due.length === 0 && next !== undefined
          ? [`The next is due ${sayMoment(Date.parse(next), member.zone, now)}.`]
          : []),
        ...(due.length === 0 ? [] : ["/plan done, /plan later or /plan skip with task: and the number."]),
      ],
      context,
      {
        headline: due.length === 0 ? "Nothing is due" : `${counted(due.length, "task")} due`,
        cautions: cautions.filter(
          ({ text }, index) => cautions.findIndex((other) => other.text === text) === index,
        ),
      },
    );
  },
});
