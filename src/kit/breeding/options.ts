import { casual } from "chrono-node/en";
import { DateTime } from "luxon";
import type { Day } from "../../core/breeding/calendar.ts";
import {
  type Animal,
  type Batch,
  type Culture,
  type GroupState,
  keyOf,
  type Pair,
  type TankPlace,
} from "../../core/breeding/ledger/state.ts";
import { type CountEntry, readCountEntry } from "../../core/breeding/read-count.ts";
import type { Read } from "../../core/quantity/read.ts";
import type { Litres } from "../../core/quantity/units.ts";
import type { MemberId } from "../../records/ids.ts";
import type { ReadContext } from "../context.ts";
import { nearest } from "../nearest.ts";
import { type Option, reading } from "../option.ts";
import * as quantity from "../quantities.ts";
import { listed, quoted } from "../text.ts";
import { type Group, groupIfAny, nameOf, sayDay } from "./group.ts";

/** A name of the group's own things: letters, figures and a few marks. */
export function nameOption(description: string, example: string): Option<string, true> {
  return reading(description, example, (text) =>
    [...text].length > 40 || /[\n`*_~|<>@#]/.test(text)
      ? {
          kind: "unreadable",
          message: `${quoted(text)} cannot be a name here: at most 40 letters, no marks.`,
        }
      : { kind: "read", value: text, readAs: text },
  );
}

/** Something of the group's by its name, or by an unmistakable beginning of it. */
function ownOption<T extends object>(
  noun: string,
  description: string,
  example: string,
  all: (state: GroupState) => readonly T[],
  say: (one: T) => string,
): Option<T, true> {
  const read = (text: string, context: ReadContext): Read<T> => {
    const group = groupIfAny(context);
    if (group === undefined)
      return { kind: "unreadable", message: "This club has no breeding group yet. /group start begins one." };
    const found = all(group.state);
    const wanted = text.toLowerCase();
    const exact = found.filter((one) => keyOf(say(one)) === keyOf(text));
    const [only, ...others] =
      exact.length > 0 ? exact : found.filter((one) => say(one).toLowerCase().startsWith(wanted));
    if (only !== undefined && others.length === 0) return { kind: "read", value: only, readAs: say(only) };
    if (only !== undefined)
      return {
        kind: "ask",
        question: `${quoted(text)} fits several. Which ${noun}?`,
        choices: [only, ...others].slice(0, 20).map((one) => ({ label: say(one), text: say(one) })),
      };
    const names = found.map(say);
    const close = nearest(text, names);
    return {
      kind: "unreadable",
      message: `There is no ${noun} ${quoted(text)} in this group. ${close !== undefined ? `Did you mean ${quoted(close)}?` : names.length === 0 ? "None is noted yet." : `Try ${listed(names.slice(-8), "or")}.`}`,
    };
  };
  return reading(description, example, read, (typed, context) => {
    const group = groupIfAny(context);
    return group === undefined
      ? []
      : all(group.state)
          .map(say)
          .filter((name) => name.toLowerCase().includes(typed.toLowerCase()))
          .slice(-25);
  });
}

/** A batch by its id; a tank's name means the one batch that is in it. */
export function batchOption(description = "Which batch, e.g. B3, or the tank it is in"): Option<Batch, true> {
  const byId = ownOption("batch", description, "B3", openBatches, ({ id }) => id);
  return {
    ...byId,
    read(text, context) {
      const group = groupIfAny(context);
      const inTank =
        group === undefined ? [] : openBatches(group.state).filter(({ tank }) => keyOf(tank) === keyOf(text));
      const [only, ...others] = inTank;
      if (only === undefined) return byId.read(text, context);
      if (others.length === 0) return { kind: "read", value: only, readAs: `${only.id} in ${only.tank}` };
      return {
        kind: "ask",
        question: `Several batches are in ${only.tank}. Which one?`,
        choices: inTank.map((each) => ({
          label: `${each.id}, ${each.species}, ${each.stage}`,
          text: each.id,
        })),
      };
    },
  };
}

/** Also those that are closed. */
export const anyBatchOption = (description: string): Option<Batch, true> =>
  ownOption(
    "batch",
    description,
    "B3",
    ({ batches }) => Object.values(batches),
    ({ id }) => id,
  );

function openBatches({ batches }: GroupState): readonly Batch[] {
  return Object.values(batches).filter(({ isClosed }) => !isClosed);
}

export const placeOption = (description = "Which tank of the group"): Option<TankPlace, true> =>
  ownOption(
    "tank",
    description,
    "tank 3",
    ({ tanks }) => Object.values(tanks),
    ({ name }) => name,
  );

export const cultureOption = (description = "Which culture"): Option<Culture, true> =>
  ownOption(
    "culture",
    description,
    "rotifers A",
    ({ cultures }) => Object.values(cultures).filter(({ ended }) => ended === undefined),
    ({ name }) => name,
  );

export const animalOption = (description: string): Option<Animal, true> =>
  ownOption(
    "animal",
    description,
    "Nemea",
    ({ animals }) => Object.values(animals),
    ({ name }) => name,
  );

export const pairOption = (description: string): Option<Pair, true> =>
  ownOption(
    "pair",
    description,
    "pair 1",
    ({ pairs }) => Object.values(pairs).filter(({ isParted }) => !isParted),
    ({ name }) => name,
  );

/** Somebody of the group, by name, a mention, or “me”. */
export function personOption(description: string): Option<number, true> {
  return reading(
    description,
    "Bruno",
    (text, context) => {
      const group = groupIfAny(context);
      const found = group === undefined ? undefined : personCalled(text, group, context.member.id);
      if (group !== undefined && found !== undefined)
        return { kind: "read", value: found, readAs: nameOf(group, found) };
      const names = group === undefined ? [] : here(group).map((number) => nameOf(group, number));
      return {
        kind: "unreadable",
        message: `${quoted(text)} is nobody of this group. ${names.length === 0 ? "" : `It has ${listed(names)}. `}Others join with /group join.`,
      };
    },
    (typed, context) => {
      const group = groupIfAny(context);
      return group === undefined
        ? []
        : here(group)
            .map((number) => nameOf(group, number))
            .filter((name) => name.toLowerCase().startsWith(typed.toLowerCase()));
    },
  );
}

/** The member a mention of the chat platform means. */
export function mentioned(text: string): MemberId | undefined {
  const id = /^<@!?(\d{5,25})>$/.exec(text.trim())?.[1];
  return id === undefined ? undefined : (`discord:${id}` as MemberId);
}

export function personCalled(text: string, group: Group, me: MemberId): number | undefined {
  const member = /^(me|i|myself)$/i.test(text.trim()) ? me : mentioned(text);
  const number =
    member === undefined
      ? onlyOne(group.people.filter(({ name }) => name !== undefined && keyOf(name) === keyOf(text)))
      : group.people.find((person) => person.member === member)?.number;
  return number !== undefined && group.state.people[number]?.isHere === true ? number : undefined;
}

function onlyOne(people: readonly { readonly number: number }[]): number | undefined {
  return people.length === 1 ? people[0]?.number : undefined;
}

function here({ state }: Group): readonly number[] {
  return Object.values(state.people)
    .filter(({ isHere }) => isHere)
    .map(({ number }) => number);
}

export const countOption = (
  description = "131, about 500, 400-600, or scoops: 4 7 5 in 10 mL",
): Option<CountEntry, true> => reading(description, "4 7 5 in 10 mL", readCountEntry);

/** Water that is really there. */
export function litresOption(description: string, example: string): Option<Litres, true> {
  const volume = quantity.volume(description, example);
  return {
    ...volume,
    read(text, context): Read<Litres> {
      const read = volume.read(text, context);
      if (read.kind !== "read") return read;
      const litres = read.value.estimate.best;
      return litres > 0 && litres <= MOST_LITRES
        ? { ...read, value: litres }
        : {
            kind: "unreadable",
            message: `${quoted(text)} cannot be the water in it. Try ${quoted(example)}.`,
          };
    },
  };
}

const MOST_LITRES = 1e6;
const MOST_ANIMALS = 999_999_999;

/** A whole number of animals, at least one. */
export function numberOption(description: string, example = "6", most = MOST_ANIMALS): Option<number, true> {
  return reading(description, example, (text) => {
    const digits = text.replace(/[\s,.'’](?=\d{3}\b)/g, "");
    const number = /^\d{1,9}$/.test(digits) ? Number(digits) : 0;
    return number >= 1 && number <= most
      ? { kind: "read", value: number, readAs: number.toLocaleString("en") }
      : {
          kind: "unreadable",
          message: `${quoted(text)} is not a whole number from 1 to ${most.toLocaleString("en")}. Try ${quoted(example)}.`,
        };
  });
}

const MOST_DAYS_AHEAD = 400;

/** A day from today on, where the group lives: "thursday", "tomorrow", "2026-03-12". */
export function comingDayOption(description: string): Option<Day, true> {
  return reading(description, "thursday", (text, context): Read<Day> => {
    const zone = groupIfAny(context)?.state.zone ?? context.member.zone;
    const today = DateTime.fromMillis(context.now, { zone }).startOf("day");
    const iso = DateTime.fromISO(text.trim(), { zone });
    const found = iso.isValid
      ? iso
      : casual
          .parse(
            text.slice(0, 60),
            { instant: new Date(context.now), timezone: today.offset },
            { forwardDate: true },
          )
          .map(({ start }) =>
            DateTime.fromObject(
              {
                year: start.get("year") ?? 0,
                month: start.get("month") ?? 1,
                day: start.get("day") ?? 1,
              },
              { zone },
            ),
          )[0];
    const day = found?.startOf("day");
    const isPast = /\b(last|ago|yesterday|past)\b/i.test(text);
    if (isPast || day?.isValid !== true || day < today || day > today.plus({ days: MOST_DAYS_AHEAD }))
      return {
        kind: "unreadable",
        message: `${quoted(text)} is not a day to come that I can read. Try “tonight”, “thursday” or ${quoted(today.plus({ days: 3 }).toFormat("yyyy-MM-dd"))}.`,
      };
    const value = day.toFormat("yyyy-MM-dd");
    return { kind: "read", value, readAs: sayDay(value) };
  });
}
