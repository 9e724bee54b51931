import { choice, defineCommand, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "duty",
  summary: "Go on duty as a helper: told once of a case nobody answers for 12 hours",
  options: { set: choice("On or off", ["on", "off"]) },
  examples: ["/case duty set:on"],
  run({ set }, { request, records, member, audience }): Reply {
    if (request.club === undefined)
      throw new UserError("not-now", "Type it in the club's server, so that it is clear for which club.");
    records.help.setDuty(request.club, member.id, set === "on");
    const wishes = records.plans.wishes(member.id);
    return {
      kind: "reply",
      ok: true,
      title: set === "on" ? "You are on duty" : "You are off duty",
      body:
        set === "on"
          ? [
              `A case nobody has answered for 12 hours is told you once, and never in your quiet hours (${clock(wishes.quietFrom)} to ${clock(wishes.quietUntil)}).`,
              "/case duty set:off ends it.",
            ]
          : ["You are told of no case any more."],
      cautions: [],
      audience,
    };
  },
});

function clock(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
}
