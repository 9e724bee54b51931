import { clubOf, dayIn, groupOf } from "../../src/kit/breeding/group.ts";
import { nameOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "join",
  summary: "Join this club's breeding group as an observer",
  options: { as: optional(nameOption("What the group shall call you", "Bruno")) },
  examples: ["/group join as:Bruno"],
  run(input, context): Reply {
    const club = clubOf(context);
    const { state } = groupOf(context);
    const { records, member, now, request } = context;
    const at = new Date(now).toISOString();
    const as = input.as ?? request.name;
    if (as === undefined)
      throw new UserError("bad-input", "Say what the group shall call you: /group join as:Bruno.");
    records.breeding.write(club, member.id, at, (ledger) => {
      const known = ledger.people.find((person) => person.member === member.id)?.number;
      if (known !== undefined && ledger.state.people[known]?.isHere === true)
        throw new UserError("not-now", "You are in this group already. /group show tells your role.");
      if (
        ledger.people.some(({ name, number }) => name?.toLowerCase() === as.toLowerCase() && number !== known)
      )
        throw new UserError(
          "bad-input",
          `Somebody here is called ${as} already: choose another name with as:.`,
        );
      const person = ledger.numberOf(member.id, as);
      return {
        facts: [{ fact: { kind: "role set", person, role: "observer" }, at, day: dayIn(state.zone, at) }],
        result: undefined,
      };
    });
    return told(context, `Welcome to ${state.name}, ${as}`, [
      "You are an observer: you may read everything and ask for young. A keeper makes you a helper with /group role.",
    ]);
  },
});
