import { defineCommand, type Outcome, tankOption } from "../../src/kit/index.ts";
import { ownTank } from "./shared.ts";

export default defineCommand({
  name: "remove",
  summary: "Remove a tank with its whole record, for good",
  options: { tank: tankOption("Which tank") },
  examples: ["/tank remove tank:Lagoon"],
  run(input, context): Outcome {
    const tank = ownTank(input.tank, context);
    const { answers } = context.request;
    if (answers["remove"] === undefined)
      return {
        kind: "question",
        isMistake: false,
        title: `Remove ${tank.name}?`,
        text: `${tank.name}, its description and every reading and event of it will be gone for good.`,
        body: [],
        cautions: [],
        choices: [
          { label: `Remove ${tank.name}`, settle: { answers: { remove: String(tank.id) } }, tone: "stop" },
          { label: "Keep it", settle: { answers: { remove: "no" } } },
        ],
        audience: "asker",
      };
    const isMeant = answers["remove"] === String(tank.id);
    if (isMeant) context.records.tanks.remove(context.member.id, tank.id);
    return {
      kind: "reply",
      ok: true,
      title: isMeant ? `${tank.name} is gone` : `${tank.name} stays`,
      body: [isMeant ? "Its record was deleted." : "Nothing was changed."],
      cautions: [],
      audience: context.audience,
    };
  },
});
