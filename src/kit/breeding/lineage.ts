import { asNumber, showExact } from "../../core/breeding/fraction.ts";
import { type Batch, keyOf } from "../../core/breeding/ledger/state.ts";
import { pairCheck } from "../../core/breeding/pair-check.ts";
import { type Group, sayDay } from "./group.ts";
import { percentText } from "./say.ts";

/** Where young come from, for the card that goes with them. */
export function lineageLines(batch: Batch, { state }: Group): readonly string[] {
  const pair = batch.pair === undefined ? undefined : state.pairs[keyOf(batch.pair)];
  const parents = (pair?.animals ?? []).flatMap((name) => state.animals[keyOf(name)] ?? []);
  const [first, second] = parents;
  const check =
    first === undefined || second === undefined
      ? undefined
      : pairCheck(first, second, Object.values(state.animals));
  return [
    `${batch.species} of ${batch.id}, spawn ${batch.spawns.join(", ")}, laid ${sayDay(batch.laidDay)}${batch.hatchDay === undefined ? "" : `, hatched ${sayDay(batch.hatchDay)}`}.`,
    parents.length === 0
      ? "Parents: not known."
      : `Parents: ${parents.map(({ name, origin, sires, dam }) => `${name} (${origin}${dam === undefined && sires.length === 0 ? "" : `, of ${[...sires, ...(dam === undefined ? [] : [dam])].join(" and ")}`})`).join(" and ")}.`,
    ...(check?.kind === "answer"
      ? [
          `Inbreeding ${check.value.isAtLeast ? "at least " : ""}${showExact(check.value.inbreeding)} (${percentText(asNumber(check.value.inbreeding), 1)}): brothers and sisters are not to be paired with each other.`,
        ]
      : []),
  ];
}
