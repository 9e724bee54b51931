import { type Day, dayAfter, daysBetween } from "./calendar.ts";
import { type DutyTaker, fairRota } from "./fair-rota.ts";
import type { Fact } from "./ledger/facts.ts";
import type { Duty, GroupState } from "./ledger/state.ts";

/** Those who take duties: their load is what they have done and what already waits for them. */
function takers(state: GroupState, anchor: Day): readonly DutyTaker[] {
  const waiting = new Map<number, number>();
  const last = new Map<number, Day>();
  for (const { person, doneBy, day } of Object.values(state.duties)) {
    const whose = doneBy ?? person;
    if (whose === undefined) continue;
    if (doneBy === undefined && day >= anchor) waiting.set(whose, (waiting.get(whose) ?? 0) + 1);
    if (day > (last.get(whose) ?? "")) last.set(whose, day);
  }
  return Object.values(state.people)
    .filter(({ isHere, role }) => isHere && role !== "observer")
    .map(({ number, load, lastDuty }) => {
      const lastDay = last.get(number) ?? lastDuty;
      return {
        id: String(number),
        load: load + (waiting.get(number) ?? 0),
        ...(lastDay === undefined ? {} : { lastSlot: daysBetween(anchor, lastDay) }),
      };
    });
}

export function isAway({ absences }: GroupState, person: number, day: Day): boolean {
  return absences.some((each) => each.person === person && each.from <= day && day <= each.until);
}

/** Duties for some days, each to whoever carries least; a slot that is planned already stays as it is. */
export function plannedDuties(
  state: GroupState,
  from: Day,
  days: number,
  slots: readonly string[],
): readonly Extract<Fact, { kind: "duty planned" }>[] {
  const taken = new Set(Object.values(state.duties).map(({ day, slot }) => `${day} ${slot}`));
  const wanted = Array.from({ length: days }, (_, offset) => dayAfter(from, offset)).flatMap((day) =>
    slots.filter((slot) => !taken.has(`${day} ${slot}`)).map((slot) => ({ day, slot })),
  );
  // Nobody is on twice a day while another is free: a second slot of one day counts as away.
  const onThatDay = new Set(
    Object.values(state.duties).flatMap(({ day, person }) =>
      person === undefined ? [] : [`${day} ${person}`],
    ),
  );
  const chosen: (string | undefined)[] = [];
  let people = takers(state, from);
  for (const { day } of wanted) {
    const slot = daysBetween(from, day);
    const isFree = (id: string): boolean => !onThatDay.has(`${day} ${id}`);
    const someFree = people.some(({ id }) => isFree(id) && !isAway(state, Number(id), day));
    const [who] = fairRota(
      people,
      [slot],
      (id) => isAway(state, Number(id), day) || (someFree && !isFree(id)),
    );
    chosen.push(who);
    if (who === undefined) continue;
    onThatDay.add(`${day} ${who}`);
    people = people.map((each) =>
      each.id === who ? { id: who, load: each.load + 1, lastSlot: slot } : each,
    );
  }
  return wanted.map(({ day, slot }, index) => {
    const person = chosen[index];
    return {
      kind: "duty planned",
      duty: state.last.duty + index + 1,
      day,
      slot,
      ...(person === undefined ? {} : { person: Number(person) }),
    };
  });
}

/** Who would be next for a duty that somebody cannot do; undefined when nobody is free. */
export function substituteFor(
  state: GroupState,
  duty: Duty,
  without: number | undefined,
): number | undefined {
  const [who] = fairRota(
    takers(state, duty.day),
    [0],
    (id) => Number(id) === without || isAway(state, Number(id), duty.day),
  );
  return who === undefined ? undefined : Number(who);
}

/** Duties of the days before that nobody noted as done: to be reminded of, kindly, and open to all. */
export function missedDuties({ duties }: GroupState, today: Day, lookBackDays = 3): readonly Duty[] {
  const from = dayAfter(today, -lookBackDays);
  return Object.values(duties).filter(
    ({ day, doneBy }) => doneBy === undefined && day >= from && day < today,
  );
}

export function dutiesOn({ duties }: GroupState, day: Day): readonly Duty[] {
  return Object.values(duties).filter((duty) => duty.day === day);
}

export function dutiesWithin({ duties }: GroupState, from: Day, until: Day): readonly Duty[] {
  return Object.values(duties)
    .filter(({ day }) => day >= from && day <= until)
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.number - b.number));
}
