import { choice, defineCommand } from "../../src/kit/index.ts";
import { containers, saidBack, tankName, volumeReply } from "./shared.ts";

export default defineCommand({
  name: "add",
  summary: "Describe a tank and all its containers; the bot keeps its net volume",
  options: {
    name: tankName("What you call it"),
    kind: choice("Its water", ["marine", "brackish", "fresh"]),
    containers: containers(
      "Every container: display, filter boxes, algae tank; sizes or litres, level, rock, sand",
    ),
  },
  examples: [
    "/tank add name:Lagoon kind:marine containers:display 240x100x70 cm inside, level 62 cm, rock 180 kg, sand 60 kg; settling box 150 L measured; 4 x drum 110 L label; algae tank 100x60x50 cm inside, level 38 cm",
  ],
  run({ name, kind, containers: described }, context) {
    const tank = context.records.tanks.create({
      owner: context.member.id,
      name,
      kind,
      containers: described.containers,
      containersTyped: described.typed,
      now: new Date(context.now).toISOString(),
    });
    return volumeReply(tank, context, [
      saidBack(described),
      tank.isDefault
        ? "It is your default tank: sums use it when you name none."
        : "Name it in a sum with tank:, or make it your default with /tank default.",
    ]);
  },
});
