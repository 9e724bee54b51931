import { groupOf, nameOf, sayDay } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "show",
  summary: "Who is in the breeding group, its tanks and waters, and what is under an alert",
  options: {},
  examples: ["/group show"],
  run(_, context): Reply {
    const group = groupOf(context);
    const { state } = group;
    const here = Object.values(state.people).filter(({ isHere }) => isHere);
    const open = Object.values(state.batches).filter(({ isClosed }) => !isClosed);
    return told(
      context,
      state.name,
      [
        here
          .map(
            ({ number, role, done }) =>
              `${nameOf(group, number)}: ${role}, ${counted(done, "duty", "duties")} done`,
          )
          .join("; "),
        `${counted(open.length, "open batch", "open batches")}, ${counted(state.hatches.length, "hatching")} seen, ${counted(state.lastEvent, "entry", "entries")} in the ledger.`,
        ...Object.values(state.alerts).map(
          ({ water, day, batch }) =>
            `Alert on ${water} since ${sayDay(day)} (${batch}): nothing leaves or enters it.`,
        ),
      ],
      {
        table: {
          columns: ["tank", "litres", "for", "water", "quarantine"],
          rows: Object.values(state.tanks).map(({ name, litres, zone, water, quarantineUntil }) => [
            name,
            String(Number(litres.toPrecision(3))),
            zone,
            water,
            quarantineUntil !== undefined && quarantineUntil > group.today
              ? `until ${sayDay(quarantineUntil)}`
              : "–",
          ]),
        },
      },
    );
  },
});
