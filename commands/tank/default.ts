import { defineCommand, type Reply, tankOption } from "../../src/kit/index.ts";
import { ownTank } from "./shared.ts";

export default defineCommand({
  name: "default",
  summary: "Choose the tank that sums use when you name none",
  options: { tank: tankOption("Which tank") },
  examples: ["/tank default tank:Lagoon"],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    context.records.tanks.setDefault(context.member.id, tank.id);
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name} is now your default tank`,
      body: ["Every answer that uses it will say so."],
      cautions: [],
      audience: context.audience,
    };
  },
});
