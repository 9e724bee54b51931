import type { Day } from "./calendar.ts";
import { advance } from "./ledger/advance.ts";
import type { Fact } from "./ledger/facts.ts";
import type { GroupState } from "./ledger/state.ts";
import { plannedDuties } from "./rota-plan.ts";

type Planned = Extract<Fact, { kind: "duty planned" }>;

/** One duty on each of these nights, shared out as evenly as all others. */
export function nightDuties(state: GroupState, nights: readonly Day[], slot: string): readonly Planned[] {
  let then = state;
  return nights.flatMap((night) => {
    const planned = plannedDuties(then, night, 1, [slot]);
    then = advance(
      then,
      planned.map((fact, index) => ({
        number: then.lastEvent + index + 1,
        at: `${night}T12:00:00.000Z`,
        day: night,
        enteredAt: `${night}T12:00:00.000Z`,
        by: 0,
        fact,
      })),
    );
    return planned;
  });
}
