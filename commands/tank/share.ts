import { choice, defineCommand, optional, type Reply, tankOption, UserError } from "../../src/kit/index.ts";
import { ownTank } from "./shared.ts";

export default defineCommand({
  name: "share",
  summary: "Let this club read a tank of yours, or stop that",
  options: {
    tank: tankOption("Which tank"),
    to: optional(choice("Who may read it: the club you are asking from, or you alone", ["club", "only me"])),
  },
  examples: ["/tank share tank:Lagoon", "/tank share tank:Lagoon to:only me"],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const { club } = context.request;
    const { tanks } = context.records;
    if (club === undefined)
      throw new UserError(
        "not-now",
        "This is a private talk: type it in the club's server, so that it is clear with whom you share.",
      );
    const isShared = input.to !== "only me";
    if (isShared) tanks.share(context.member.id, tank.id, club);
    else tanks.unshare(context.member.id, tank.id, club);
    return {
      kind: "reply",
      ok: true,
      title: isShared ? `${tank.name} is now open to this club` : `${tank.name} is private again`,
      body: [
        isShared
          ? "Its members may read its description and use it in sums; nobody but you can change it. /tank share to:only me ends it."
          : "Only you can see it here.",
      ],
      cautions: [],
      audience: context.audience,
    };
  },
});
