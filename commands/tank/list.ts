import { showVolume } from "../../src/core/quantity/show.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";

export default defineCommand({
  name: "list",
  summary: "Your tanks, and those shared with you here",
  options: {},
  examples: ["/tank list"],
  run(_, context): Reply {
    const { records, request, member, audience } = context;
    const tanks = records.tanks.visible({ member: request.member, club: request.club });
    return {
      kind: "reply",
      ok: true,
      title: tanks.length === 0 ? "No tanks yet" : counted(tanks.length, "tank"),
      body: tanks.length === 0 ? ["Describe your first one with /tank add."] : [],
      ...(tanks.length === 0
        ? {}
        : {
            table: {
              columns: ["tank", "water", "net volume", "also called", ""],
              rows: tanks.map((tank) => [
                tank.name,
                tank.kind,
                showVolume(tankVolume(tank, context).estimate, member.habits),
                tank.aliases.join(", "),
                tank.owner !== member.id ? "shared with you" : tank.isDefault ? "default" : "",
              ]),
            },
          }),
      cautions: [],
      audience,
    };
  },
});
