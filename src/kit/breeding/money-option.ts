import { centsOf } from "../../core/breeding/cents.ts";
import { readMoney } from "../../core/quantity/money.ts";
import { type Option, reading } from "../option.ts";
import { quoted } from "../text.ts";
import { groupIfAny } from "./group.ts";

/** An amount in the group's currency, in whole cents; another currency is refused, none is ever converted. */
export function centsOption(description: string): Option<number, true> {
  return reading(description, "47.35", (text, context) => {
    const read = readMoney(text, context.habits);
    if (read.kind !== "read") return read;
    const own = groupIfAny(context)?.state.currency ?? "";
    const { currency, estimate } = read.value;
    if (currency !== undefined && currency !== own)
      return {
        kind: "unreadable",
        message: `${quoted(text)} is in ${currency}; the group reckons in ${own}, and nothing is converted here.`,
      };
    const cents = centsOf(estimate);
    return cents === undefined
      ? {
          kind: "unreadable",
          message: `${quoted(text)} is not an amount in whole cents above zero. Try “47.35”.`,
        }
      : { kind: "read", value: cents, readAs: `${sayCents(cents)} ${own}` };
  });
}

export function sayCents(cents: number): string {
  return (cents / 100).toFixed(2);
}
