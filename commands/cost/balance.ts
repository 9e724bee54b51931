import { settlements } from "../../src/core/breeding/shared-cost.ts";
import { groupOf, mustBelong, nameOf } from "../../src/kit/breeding/group.ts";
import { sayCents } from "../../src/kit/breeding/money-option.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "balance",
  summary: "Who owes whom, in the fewest payments the rule finds",
  options: {},
  examples: ["/cost balance"],
  run(_, context): Reply {
    const group = groupOf(context);
    mustBelong(group);
    const { balances, currency, spentCents } = group.state;
    const due = settlements(group.state);
    return told(
      context,
      `${group.state.name}: shared costs`,
      [
        `${sayCents(spentCents)} ${currency} spent in all; the balances below sum to nothing.`,
        ...(due.length === 0 ? ["All are even."] : []),
        ...due.map(
          ({ from, to, cents }) =>
            `${nameOf(group, Number(from))} pays ${nameOf(group, Number(to))} ${sayCents(cents)} ${currency}.`,
        ),
      ],
      {
        table: {
          columns: ["who", `balance, ${currency}`],
          rows: Object.entries(balances).map(([person, cents]) => [
            nameOf(group, Number(person)),
            sayCents(cents),
          ]),
        },
      },
    );
  },
});
