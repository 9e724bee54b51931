import { showVolume } from "../../src/core/quantity/show.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";
import { visibleTanks } from "../../src/kit/tank-option.ts";
import type { MemberId } from "../../src/records/ids.ts";
import type { Tank } from "../../src/records/tank.ts";

export default defineCommand({
  name: "list",
  summary: "Your tanks, and those shared with you here",
  options: {},
  examples: ["/tank list"],
  run(_, context): Reply {
    const { member, audience } = context;
    const tanks = visibleTanks(context);
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
                noteOn(tank, member.id),
              ]),
            },
          }),
      cautions: [],
      audience,
    };
  },
});

/** Whose it is, until when it may be read, and with how many the member's own are shared. */
function noteOn(tank: Tank, member: MemberId): string {
  if (tank.owner !== member) {
    const { by = "another member", until } = tank.shared ?? {};
    return `${by}’s, shared with you${until === undefined ? "" : ` until ${until.slice(0, 10)}`}`;
  }
  return [tank.isDefault ? "default" : "", tank.sharedWith.length === 0 ? "" : "shared"]
    .filter(Boolean)
    .join(", ");
}
