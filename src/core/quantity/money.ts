import { readAmount } from "./amount.ts";
import type { Estimate } from "./estimate.ts";
import type { Grammar } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { readText, sayBack, writeEstimate } from "./reader.ts";
import type { Unit } from "./unit-table.ts";
import type { Money } from "./units.ts";

/** An amount of money; nothing is ever converted between currencies. */
export interface MoneyEntry {
  readonly estimate: Estimate<Money>;
  /** A symbol or an ISO 4217 code as typed; absent when none was, or when only cents were named. */
  readonly currency?: string;
}

/** ISO 4217 codes read as they stand. */
const CODES = [
  "AUD",
  "BRL",
  "CAD",
  "CHF",
  "CNY",
  "CZK",
  "DKK",
  "EUR",
  "GBP",
  "HKD",
  "HUF",
  "IDR",
  "ILS",
  "INR",
  "JPY",
  "KRW",
  "MXN",
  "MYR",
  "NOK",
  "NZD",
  "PHP",
  "PLN",
  "RON",
  "SEK",
  "SGD",
  "THB",
  "TRY",
  "TWD",
  "USD",
  "ZAR",
];
const BARE: Unit = { id: "", factor: 1, spellings: [] };
const CENTS: Unit = {
  id: "cents",
  factor: 0.01,
  spellings: ["cents", "cent", "ct", "cts", "¢", "c", "pence", "p"],
};
const UNITS_OF_MONEY: readonly Unit[] = [
  { id: "$", factor: 1, spellings: ["$", "dollar", "dollars"] },
  { id: "€", factor: 1, spellings: ["€", "euro", "euros"] },
  { id: "£", factor: 1, spellings: ["£", "pound", "pounds"] },
  { id: "¥", factor: 1, spellings: ["¥", "yen"] },
  { id: "₹", factor: 1, spellings: ["₹", "rupees"] },
  { id: "kr", factor: 1, spellings: ["kr"] },
  CENTS,
  ...CODES.map((code) => ({ id: code, factor: 1, spellings: [code.toLowerCase()] })),
];
const EXAMPLES = "“0.35”, “12.50 €” or “35 cents”";
const GRAMMAR: Grammar = {
  noun: "an amount of money",
  examples: EXAMPLES,
  units: UNITS_OF_MONEY,
  bare: BARE,
  isPrefixed: true,
  hasArithmetic: true,
  min: 0,
  max: 1e12,
};

/** An amount of money, its currency before, behind or left out. */
export function readMoney(typed: string, habits: Habits): Read<MoneyEntry> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: () => true,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      const names = amount.unitSpans.map(({ unit }) => unit.id).filter((id) => id !== CENTS.id);
      const [currency] = names;
      if (names.some((name) => name !== currency)) {
        return {
          kind: "unreadable",
          message: `That names two currencies, and I convert none. Try ${EXAMPLES}.`,
        };
      }
      return {
        kind: "read",
        value: {
          estimate: amount.estimate as Estimate<Money>,
          ...(currency === undefined ? {} : { currency }),
        },
        readAs: symbolFirst(
          sayBack(
            amount,
            amount.unit ?? BARE,
            amount.unit === CENTS ? (currency ?? "") : (amount.unit?.id ?? ""),
          ),
        ),
      };
    },
  });
}

/** "$20" for "20 $", in the symbols that stand before the figure. */
function symbolFirst(text: string): string {
  const [, figure, symbol, rest = ""] = /^(\S+) ([$£¥₹])(.*)$/.exec(text) ?? [];
  return figure === undefined || symbol === undefined ? text : `${symbol}${figure}${rest}`;
}

/** Reads back as the same amount. */
export function formatMoney({ estimate, currency }: MoneyEntry): string {
  return writeEstimate(estimate, currency ?? "");
}
