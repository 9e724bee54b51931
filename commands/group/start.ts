import { clubOf, dayIn } from "../../src/kit/breeding/group.ts";
import { mentioned, nameOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "start",
  summary: "Begin this club's breeding group, with yourself as its keeper",
  options: {
    name: nameOption("What the group is called", "Lagoon breeders"),
    as: optional(nameOption("What the group calls you", "Ines")),
    currency: optional(
      choice("The currency of shared costs; € if left out", ["€", "$", "£", "CHF", "kr", "¥"]),
    ),
  },
  examples: ["/group start name:Lagoon breeders as:Ines"],
  run(input, context): Reply {
    const club = clubOf(context);
    const { records, member, now, request } = context;
    const at = new Date(now).toISOString();
    const as = input.as ?? request.name;
    if (as === undefined || mentioned(as) !== undefined)
      throw new UserError("bad-input", "Say what the group shall call you: /group start name:… as:Ines.");
    const day = dayIn(member.zone, at);
    records.breeding.write(club, member.id, at, ({ state, numberOf }) => {
      if (state.lastEvent > 0)
        throw new UserError("not-now", `This club has its breeding group already: ${state.name}.`);
      const person = numberOf(member.id, as);
      return {
        facts: [
          {
            fact: {
              kind: "group started",
              name: input.name,
              zone: member.zone,
              currency: input.currency ?? "€",
            },
            at,
            day,
          },
          { fact: { kind: "role set", person, role: "keeper" }, at, day },
        ],
        result: undefined,
      };
    });
    return told(context, `${input.name} has begun`, [
      `You are its keeper. Its days follow ${member.zone} (yours, from /settings).`,
      "Next: /group tank notes the tanks, /group join lets others in, /brood add notes the breeders.",
    ]);
  },
});
