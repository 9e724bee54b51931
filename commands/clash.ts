import { checkPlan } from "../src/core/dosing/check-plan.ts";
import { type Action, loggedAction, readAction } from "../src/core/dosing/read-action.ts";
import { as, type Hours } from "../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  type Context,
  choice,
  counted,
  defineCommand,
  fills,
  listed,
  type Outcome,
  optional,
  quantity,
  reading,
  tankInMind,
  tankOption,
} from "../src/kit/index.ts";
import { ago } from "../src/kit/tank-figures.ts";
import type { Tank } from "../src/records/tank.ts";

const TITLE = "Before you do it";
/** Log lines looked at; the rules themselves look back a week at most, but equipment stays off. */
const MOST_LINES = 200;
const NOW = as<Hours>(0);

export default defineCommand({
  name: "clash",
  summary: "Whether something you plan gets in the way of what was done to the tank lately",
  options: {
    plan: reading(
      "What you have in mind, e.g. dose alcohol, skimmer off, test ammonia",
      "dose alcohol",
      (text) => readAction(text),
    ),
    in: optional(quantity.span("In how long; now if left out", "6 h")),
    "raises-ph": optional(choice("For a water change: whether the new water's pH is higher", ["no", "yes"])),
    tank: optional(tankOption()),
  },
  examples: ["/clash plan:dose alcohol", "/clash plan:test ammonia in:12 h tank:Lagoon"],
  run(input, context): Outcome {
    const tank = tankInMind(input.tank, undefined, context);
    if (tank === undefined)
      return askFor(
        context,
        { name: "tank", example: "Lagoon" },
        { title: TITLE, text: "Which tank? Its log is looked through; /tank add describes one." },
      );
    const lines = logOf(tank, context);
    const logged = lines.map(({ action }) => action);
    const hasAmmonia = logged.some((each) => each.kind === "ammonia reading" && each.isPresent);
    if (
      input.plan.kind === "water change" &&
      !input.plan.liftsPH &&
      hasAmmonia &&
      input["raises-ph"] === undefined
    )
      return askFor(
        context,
        { name: "raises-ph", example: "no" },
        {
          title: TITLE,
          text: "There was ammonia in the water lately. Is the pH of the new water higher than the tank's?",
          choices: [
            fills("No, equal or lower", "raises-ph", "no"),
            fills("Yes, or not known", "raises-ph", "yes"),
          ],
        },
      );
    const plan: Action =
      input.plan.kind === "water change"
        ? { ...input.plan, liftsPH: input.plan.liftsPH || input["raises-ph"] === "yes" }
        : input.plan;
    const answer = checkPlan(plan, input.in?.estimate.best ?? NOW, logged, context.request.options["plan"]);
    return answerReply(answer, context, {
      title: `${tank.name}: ${context.readAs.get("plan")?.readAs ?? TITLE}`,
      headline: ({ found, isMedicine }) =>
        found.length > 0
          ? `${counted(found.length, "clash", "clashes")} found`
          : isMedicine
            ? "Not judged: a medicine is for a vet"
            : "No clash found",
      body: ({ found, lookedAt }) => [
        ...(plan.kind === "dose" && plan.of === "other"
          ? ["What this substance does in the water is not known here."]
          : []),
        ...found.flatMap((each) =>
          each.with.length === 0
            ? []
            : [`It meets ${listed(each.with.flatMap((place) => lines[place]?.said ?? []))}.`],
        ),
        lookedAt === 0
          ? "Nothing in the log bears on it: this is only as good as what was logged."
          : `Looked at ${counted(lookedAt, "logged action")}. What is not logged is not seen.`,
      ],
    });
  },
});

/** What was logged that any rule bears on, with words for it. */
function logOf(tank: Tank, { records, now }: Context) {
  return records.log.recent(tank.owner, tank.id, MOST_LINES).flatMap((line) => {
    const kept = line.kind === "event" ? line.event : line.reading;
    const action = loggedAction(
      line.kind === "event" ? { ...line.event, kind: "event" } : { ...line.reading, kind: "reading" },
      now,
    );
    return action === undefined || action.at > 0
      ? []
      : [{ action, said: `${kept.readAs} (${ago(kept.at, now)})` }];
  });
}
