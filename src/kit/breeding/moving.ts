import type { Day } from "../../core/breeding/calendar.ts";
import { type GroupState, keyOf, type TankPlace } from "../../core/breeding/ledger/state.ts";
import { isUphill } from "../../core/breeding/tonight.ts";
import { type Caution, caution } from "../../core/result.ts";
import { sayDay } from "./group.ts";

/** What to mind when animals go from one tank to another. */
export function moveCautions(
  state: GroupState,
  from: string,
  to: TankPlace,
  after: TankPlace | undefined,
  today: Day,
): readonly Caution[] {
  const source = state.tanks[keyOf(from)];
  const isQuarantined = (place: TankPlace | undefined): place is TankPlace & { quarantineUntil: Day } =>
    place?.quarantineUntil !== undefined && place.quarantineUntil > today;
  return [
    ...(isUphill(state, from, to.name)
      ? [caution("breeding-water-step-up", { from: source?.zone ?? from, to: to.zone })]
      : []),
    ...(isQuarantined(source)
      ? [caution("breeding-in-quarantine", { tank: source.name, until: sayDay(source.quarantineUntil) })]
      : []),
    ...(isQuarantined(after) && after.name !== source?.name
      ? [caution("breeding-in-quarantine", { tank: after.name, until: sayDay(after.quarantineUntil) })]
      : []),
  ];
}
