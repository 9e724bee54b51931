import { DateTime } from "luxon";
import type { Day } from "../../core/breeding/calendar.ts";
import { advance } from "../../core/breeding/ledger/advance.ts";
import type { Fact } from "../../core/breeding/ledger/facts.ts";
import { objectionTo } from "../../core/breeding/ledger/rules.ts";
import type { GroupState, Person } from "../../core/breeding/ledger/state.ts";
import type { GroupPerson } from "../../records/breeding.ts";
import type { ClubId } from "../../records/ids.ts";
import type { Context, ReadContext } from "../context.ts";
import { UserError } from "../user-error.ts";

/** The club's breeding group as the asker meets it. */
export interface Group {
  readonly club: ClubId;
  readonly state: GroupState;
  readonly people: readonly GroupPerson[];
  /** The asker, where they belong to it. */
  readonly me?: Person;
  /** Today on the group's calendar. */
  readonly today: Day;
}

/** Throws: UserError in a private talk: a group belongs to a club. */
export function clubOf({ request }: Pick<Context, "request">): ClubId {
  if (request.club === undefined)
    throw new UserError(
      "not-now",
      "A breeding group belongs to a club, and this is a private talk: type it in the club's server.",
    );
  return request.club;
}

/** The group of the club asked from. Throws: UserError where there is none. */
export function groupOf(context: Pick<Context, "request" | "records" | "member" | "now">): Group {
  const club = clubOf(context);
  const state = context.records.breeding.state(club);
  if (state === undefined)
    throw new UserError(
      "not-found",
      "This club has no breeding group yet. /group start begins one, and makes you its keeper.",
    );
  return seen(club, state, context.records.breeding.people(club), context);
}

/** The same for readers of options, where nothing may be thrown. */
export function groupIfAny({ request, records, member, now }: ReadContext): Group | undefined {
  if (request.club === undefined) return undefined;
  const state = records.breeding.state(request.club);
  return state === undefined
    ? undefined
    : seen(request.club, state, records.breeding.people(request.club), { member, now });
}

function seen(
  club: ClubId,
  state: GroupState,
  people: readonly GroupPerson[],
  { member, now }: Pick<Context, "member" | "now">,
): Group {
  const number = people.find((person) => person.member === member.id)?.number;
  const me = number === undefined ? undefined : state.people[number];
  return {
    club,
    state,
    people,
    ...(me === undefined ? {} : { me }),
    today: dayIn(state.zone, new Date(now).toISOString()),
  };
}

/** The day a moment falls on where the group lives. */
export function dayIn(zone: string, at: string): Day {
  return DateTime.fromISO(at, { zone }).toISODate() ?? at.slice(0, 10);
}

export function nameOf({ people }: Pick<Group, "people">, number: number | undefined): string {
  if (number === undefined) return "nobody";
  return people.find((person) => person.number === number)?.name ?? `a former member (no. ${number})`;
}

/** "Thu 5 Mar". */
export function sayDay(day: Day): string {
  return DateTime.fromISO(day, { zone: "utc" }).toFormat("ccc d MMM", { locale: "en" });
}

/** Throws: UserError when the asker does not belong to the group. */
export function mustBelong({ me }: Group): Person {
  if (me?.isHere !== true)
    throw new UserError(
      "not-yours",
      "You are not in this breeding group. /group join lets you read along; a keeper can then make you a helper.",
    );
  return me;
}

/** What is written, and what the reply needs to know of it. */
export interface Decision<T> {
  readonly facts: readonly Fact[];
  readonly result: T;
}

/**
 * Writes what `decide` makes of the ledger as it stands at that moment: nobody writes in between. Each fact must
 * be allowed and possible, else nothing is written. Throws: UserError with the reason.
 */
export function writeFacts<T>(
  context: Context,
  decide: (group: Group & { readonly me: Person }) => Decision<T>,
  options: { readonly at?: string | undefined; readonly note?: string | undefined } = {},
): T {
  const club = clubOf(context);
  mustBelong(groupOf(context));
  const enteredAt = new Date(context.now).toISOString();
  const at = options.at ?? enteredAt;
  return context.records.breeding.write(club, context.member.id, enteredAt, ({ state, people }) => {
    const group = seen(club, state, people, context);
    const me = mustBelong(group);
    const { facts, result } = decide({ ...group, me });
    const day = dayIn(state.zone, at);
    let then = state;
    for (const [index, fact] of facts.entries()) {
      const objection = objectionTo(then, me, fact);
      if (objection !== undefined) throw new UserError("not-now", objection);
      // The next one is judged by what this one has changed.
      if (index < facts.length - 1 && fact.kind !== "corrected")
        then = advance(then, [{ number: then.lastEvent + 1, at, day, enteredAt, by: me.number, fact }]);
    }
    return {
      facts: facts.map((fact, index) => ({
        fact,
        at,
        day,
        ...(index === 0 && options.note !== undefined ? { note: options.note } : {}),
      })),
      result,
    };
  });
}
