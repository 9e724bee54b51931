import { ROLES } from "../../src/core/breeding/ledger/facts.ts";
import { clubOf, dayIn, groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { mentioned, nameOption, personCalled } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply, reading, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "role",
  summary: "Set somebody's role in the breeding group, for keepers and the club's stewards",
  options: {
    who: reading("Their name in the group, or a mention", "Bruno", (text) => ({
      kind: "read",
      value: text,
      readAs: text,
    })),
    role: choice("keeper: everything; helper: logs, takes duties; observer: reads", ROLES),
    as: optional(nameOption("What the group calls them, for one who is new", "Bruno")),
  },
  examples: ["/group role who:Bruno role:helper"],
  run({ who, role, as }, context): Reply {
    const club = clubOf(context);
    const group = groupOf(context);
    const { records, now, member, request } = context;
    const at = new Date(now).toISOString();
    const day = dayIn(group.state.zone, at);
    const person = personCalled(who, group, member.id) ?? admitted();
    if (request.isSteward && group.me === undefined) {
      // The club's own stewards may set roles without belonging to the group: the bot itself writes it down.
      throw new UserError("not-now", "Join first with /group join: every change says who made it.");
    }
    const fact = { kind: "role set", person, role } as const;
    if (request.isSteward)
      records.breeding.write(club, member.id, at, () => ({ facts: [{ fact, at, day }], result: undefined }));
    else
      writeFacts(context, ({ state, me }) => {
        const keepers = Object.values(state.people).filter((each) => each.isHere && each.role === "keeper");
        if (person === me.number && role !== "keeper" && keepers.length === 1)
          throw new UserError("not-now", "You are the only keeper: make somebody else a keeper first.");
        return { facts: [fact], result: undefined };
      });
    return told(context, `${nameOf(groupOf(context), person)} is now ${role}`, [
      role === "observer"
        ? "They read everything and may ask for young."
        : role === "helper"
          ? "They log and take duties; keepers set tanks, roles and lift alerts."
          : "They may do everything.",
    ]);

    /** Somebody mentioned who is not in the group yet: a keeper lets them in. */
    function admitted(): number {
      const theirs = mentioned(who);
      if (theirs === undefined)
        throw new UserError(
          "not-found",
          `“${who}” is nobody of this group: they type /group join, or you mention them.`,
        );
      if (group.me?.role !== "keeper" && !request.isSteward)
        throw new UserError("not-yours", "Only a keeper may let somebody in.");
      if (as === undefined) throw new UserError("bad-input", "Say what the group calls them, too: as:Bruno.");
      return records.breeding.write(club, member.id, at, ({ numberOf }) => ({
        facts: [],
        result: numberOf(theirs, as),
      }));
    }
  },
});
