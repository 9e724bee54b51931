import type { Day } from "../../core/breeding/calendar.ts";
import type { Duty } from "../../core/breeding/ledger/state.ts";
import { isAway } from "../../core/breeding/rota-plan.ts";
import type { RotaSpec } from "../system-spec.ts";
import { type Group, nameOf, sayDay } from "./group.ts";

export function sayDuty(duty: Duty, group: Group): string {
  return `${sayDay(duty.day)}, ${duty.slot}: ${
    duty.doneBy !== undefined
      ? `${nameOf(group, duty.doneBy)}, done`
      : duty.person === undefined
        ? "open to all"
        : nameOf(group, duty.person)
  }`;
}

/** The week as it is drawn: a row for each who takes duties, a column for each day. */
export function rotaSpec(group: Group, duties: readonly Duty[], days: readonly Day[]): RotaSpec {
  const people = Object.values(group.state.people).filter(
    ({ isHere, role, number }) =>
      (isHere && role !== "observer") ||
      duties.some((duty) => duty.person === number || duty.doneBy === number),
  );
  const row = (name: string, mine: (duty: Duty) => boolean, number?: number) => ({
    name,
    cells: days.map((day) => {
      const found = duties.filter((duty) => duty.day === day && mine(duty));
      return {
        text: found.map(({ slot }) => slot).join(", "),
        state:
          found.length === 0
            ? number !== undefined && isAway(group.state, number, day)
              ? ("away" as const)
              : ("free" as const)
            : found.every(({ doneBy }) => doneBy !== undefined)
              ? ("done" as const)
              : number === undefined
                ? ("open" as const)
                : ("planned" as const),
      };
    }),
  });
  const open = (duty: Duty): boolean => duty.person === undefined && duty.doneBy === undefined;
  return {
    kind: "rota",
    altText: `Duties: ${duties.map((duty) => sayDuty(duty, group)).join("; ")}.`,
    days: days.map(sayDay),
    rows: [
      ...people.map(({ number }) =>
        row(nameOf(group, number), (duty) => (duty.doneBy ?? duty.person) === number, number),
      ),
      ...(duties.some(open) ? [row("open to all", open)] : []),
    ],
  };
}
