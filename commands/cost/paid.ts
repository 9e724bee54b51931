import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { centsOption, sayCents } from "../../src/kit/breeding/money-option.ts";
import { personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "paid",
  summary: "Note that one member has paid another back",
  options: {
    to: personOption("Who was paid"),
    amount: centsOption("How much"),
    from: optional(personOption("Who paid; you if left out")),
  },
  examples: ["/cost paid to:Ines amount:20"],
  run({ to, amount, from }, context): Reply {
    const payer = writeFacts(context, ({ me }) => {
      const paying = from ?? me.number;
      if (paying === to) throw new UserError("bad-input", "Payer and receiver are one.");
      return { facts: [{ kind: "paid", from: paying, to, cents: amount }], result: paying };
    });
    const group = groupOf(context);
    return told(
      context,
      `${nameOf(group, payer)} paid ${nameOf(group, to)} ${sayCents(amount)} ${group.state.currency}`,
      ["Noted. /cost balance shows what is left."],
    );
  },
});
