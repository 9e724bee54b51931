import { costShares, usualSharers } from "../../src/core/breeding/shared-cost.ts";
import { groupIfAny, groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { centsOption, sayCents } from "../../src/kit/breeding/money-option.ts";
import { nameOption, personCalled, personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, reading, UserError } from "../../src/kit/index.ts";

/** "Ines 2, Bruno, Thalia": names with their weights. */
const sharersOption = reading(
  "Who shares, with weights; all keepers and helpers alike if left out",
  "Ines 2, Bruno",
  (text, context) => {
    const group = groupIfAny(context);
    const parts = text.split(",").map((part) => /^(.*?)(?:\s+(\d{1,3}))?$/.exec(part.trim()));
    const sharers = parts.map((part) => ({
      typed: part?.[1] ?? "",
      person: group === undefined ? undefined : personCalled(part?.[1] ?? "", group, context.member.id),
      weight: Number(part?.[2] ?? "1"),
    }));
    const unknown = sharers.find(({ person }) => person === undefined);
    if (unknown !== undefined || sharers.every(({ weight }) => weight === 0))
      return {
        kind: "unreadable",
        message: `“${unknown?.typed ?? text}” is nobody of this group, or weighs nothing. Try “Ines 2, Bruno”.`,
      };
    const people = sharers.flatMap(({ person, weight }) =>
      person === undefined ? [] : [{ person, weight }],
    );
    if (new Set(people.map(({ person }) => person)).size !== people.length)
      return { kind: "unreadable", message: "Somebody is named twice there." };
    return { kind: "read", value: people, readAs: text };
  },
);

export default defineCommand({
  name: "add",
  summary: "Note something bought for the group: split to the cent among those who share",
  options: {
    what: nameOption("What was bought", "salt"),
    amount: centsOption("How much, in the group's currency"),
    payer: optional(personOption("Who paid; you if left out")),
    shared: optional(sharersOption),
  },
  examples: ["/cost add what:salt amount:47.35"],
  run({ what, amount, payer, shared }, context): Reply {
    const shares = writeFacts(context, ({ state, me }) => {
      const sharers = shared ?? usualSharers(state);
      if (sharers.length === 0) throw new UserError("not-now", "Nobody is there to share it.");
      const parts = costShares(amount, sharers);
      return {
        facts: [{ kind: "spent", what, cents: amount, payer: payer ?? me.number, shares: [...parts] }],
        result: parts,
      };
    });
    const group = groupOf(context);
    const { currency } = group.state;
    return told(context, `${what}: ${sayCents(amount)} ${currency}`, [
      `${shares.map(({ person, cents }) => `${nameOf(group, person)} ${sayCents(cents)}`).join(", ")}: the parts sum to the cent.`,
      "/cost balance tells who owes whom. The bot only keeps the book.",
    ]);
  },
});
