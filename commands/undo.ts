import { counted, defineCommand, optional, type Reply, tankOption } from "../src/kit/index.ts";
import { ownTank } from "./tank/shared.ts";

export default defineCommand({
  name: "undo",
  summary: "Take back the last line you logged for a tank",
  options: { tank: optional(tankOption()) },
  examples: ["/undo", "/undo tank:Lagoon"],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const undone = context.records.log.undoLast(
      context.member.id,
      tank.id,
      new Date(context.now).toISOString(),
    );
    return {
      kind: "reply",
      ok: undone !== undefined,
      title: undone === undefined ? `${tank.name}: nothing to take back` : `${tank.name}: taken back`,
      body:
        undone === undefined
          ? ["There is no logged line left."]
          : [`“${undone.line}” (${counted(undone.count, "entry", "entries")}).`],
      cautions: [],
      audience: context.audience,
    };
  },
});
