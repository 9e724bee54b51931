import { defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { containers, ownTank, saidBack, volumeReply } from "./shared.ts";

export default defineCommand({
  name: "describe",
  summary: "Describe a tank's containers anew, after a change",
  options: {
    containers: containers("Every container, as in /tank add: this replaces what was there"),
    tank: optional(tankOption()),
  },
  examples: [
    "/tank describe containers:display 200x80x60 cm inside, level 54 cm; sump 180 L measured tank:Lagoon",
  ],
  run({ containers: described, tank: given }, context) {
    const tank = ownTank(given, context);
    context.records.tanks.replaceContainers(
      context.member.id,
      tank.id,
      described.containers,
      described.typed,
    );
    return volumeReply({ ...tank, containers: described.containers }, context, [
      saidBack(described),
      `Before it was: ${tank.containersTyped}.`,
    ]);
  },
});
