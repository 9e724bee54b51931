import {
  capitalised,
  defineCommand,
  optional,
  tankInMind,
  tankOption,
  UserError,
} from "../../src/kit/index.ts";
import { offLines } from "../../src/kit/plan-words.ts";
import { tankSalinity, tankTemperature } from "../../src/kit/tank-figures.ts";
import { volumeReply } from "./shared.ts";

export default defineCommand({
  name: "show",
  summary: "A tank's water, container by container, and all that is noted of it",
  options: { tank: optional(tankOption()) },
  examples: ["/tank show", "/tank show tank:Lagoon"],
  run({ tank: given }, context) {
    const tank = tankInMind(given, undefined, context);
    if (tank === undefined)
      throw new UserError("not-found", "You keep no tank here yet. Describe one with /tank add.");
    const { notes } = tank;
    const kept = [tankSalinity(tank, context), tankTemperature(tank, context)].flatMap((each) =>
      each === undefined ? [] : [`${each.taken.name} ${each.taken.readAs} (${each.taken.from})`],
    );
    return volumeReply(tank, context, [
      `${capitalised(tank.kind)} water${tank.aliases.length === 0 ? "" : `, also called ${tank.aliases.join(", ")}`}${tank.owner === context.member.id ? "" : ", shared by another member"}.`,
      ...(kept.length === 0 ? [] : [`At ${kept.join("; ")}.`]),
      ...offLines(tank, context).map(capitalised),
      ...noteLine("Animals", notes.livestock),
      ...noteLine("Food", notes.food),
      ...noteLine("Filter media", notes.media),
      ...noteLine("Flow through the filter", notes.flow),
    ]);
  },
});

function noteLine(name: string, text: string | undefined): readonly string[] {
  return text === undefined ? [] : [`${name}: ${text}.`];
}
