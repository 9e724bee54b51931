import type { Count } from "../../core/breeding/ledger/facts.ts";
import type { CountEntry } from "../../core/breeding/read-count.ts";
import { type TubCount, tubCount } from "../../core/breeding/tub-count.ts";
import { as, type Litres } from "../../core/quantity/units.ts";
import type { Answer } from "../../core/result.ts";
import { sayRefusal } from "../../wording/index.ts";
import { UserError } from "../user-error.ts";

/** Scoops reckoned up for a tank. Throws: UserError when nothing can be said from them. */
export function scoopsIn(
  entry: Extract<CountEntry, { kind: "scoops" }>,
  tankL: number | undefined,
): Answer<TubCount> {
  const answer = tubCount(entry.counts, entry.scoopML, tankL === undefined ? undefined : as<Litres>(tankL));
  if (answer.kind === "no-answer") throw new UserError("bad-input", sayRefusal(answer.reason));
  return answer;
}

/** A count of a whole tank, and how it is known. Throws: UserError for scoops of a tank without litres. */
export function countIn(entry: CountEntry, tankL: number | undefined): Count {
  if (entry.kind === "number") return entry.count;
  const { total } = scoopsIn(entry, tankL).value;
  if (total === undefined)
    throw new UserError(
      "bad-input",
      "Scoops need the tank's litres. Give the number itself, e.g. “about 500”.",
    );
  return {
    best: Math.round(total.best),
    low: Math.floor(total.low),
    high: Math.ceil(total.high),
    how: "subsample",
  };
}
