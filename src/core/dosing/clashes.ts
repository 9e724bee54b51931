import type { Hours } from "../quantity/units.ts";
import { type Caution, caution } from "../result.ts";

export type DoseClass = "carbon" | "ammonia binder" | "calcium" | "carbonate" | "magnesium" | "other";
export type RunningItem = "skimmer" | "main aerator" | "main pump";

/** Something done or planned. `at` counts hours from any one moment, the same for the whole list. */
export type DatedAction = { readonly at: Hours } & (
  | { readonly kind: "dose"; readonly of: DoseClass }
  | { readonly kind: "missed dose"; readonly of: DoseClass }
  | { readonly kind: "equipment"; readonly item: RunningItem; readonly state: "off" | "on" }
  | { readonly kind: "water change"; readonly liftsPH: boolean }
  | { readonly kind: "ammonia reading"; readonly isPresent: boolean }
  | { readonly kind: "ammonia test planned"; readonly test: "total ammonia" | "free ammonia" }
  /** Anything started, stopped or exchanged whose effect is to be seen: "new food", "second skimmer". */
  | { readonly kind: "change"; readonly what: string }
);

type Kind = DatedAction["kind"];
type ActionOf<K extends Kind> = Extract<DatedAction, { readonly kind: K }>;

export interface Clash {
  readonly caution: Caution;
  /** Places in the list that was given, in order of time. */
  readonly actions: readonly number[];
}

/** How far apart two actions may still get in each other's way, h. Source: common-practice. */
const WINDOW_H = 48;
/** How long bacteria go on using oxygen after a carbon dose, h. Source: assumption. */
const CARBON_BURNS_H = 24;
/** A pause shorter than this, as for feeding, is no outage, h. Source: assumption. */
const SHORT_PAUSE_H = 1;
/** Calcium and carbonate closer than this count as given together, h. Source: common-practice. */
const TOGETHER_H = 2;
/** Changes closer than this cannot be told apart by what follows, h. Source: common-practice. */
const WEEK_H = 7 * 24;

interface Placed<A extends DatedAction> {
  readonly index: number;
  readonly action: A;
}

/** Every pair of actions that get in each other's way, as cautions, in order of time. */
export function clashes(actions: readonly DatedAction[]): readonly Clash[] {
  const timeline = actions
    .map((action, index) => ({ action, index }))
    .sort((a, b) => a.action.at - b.action.at || a.index - b.index);
  const found = [
    ...carbonWhileOff(timeline),
    ...binderBeforeTest(timeline),
    ...phLiftWithAmmonia(timeline),
    ...calciumWithCarbonate(timeline),
    ...missedDoses(timeline),
    ...changesTooClose(timeline),
  ];
  const firstAt = ({ actions: [first] }: Clash): number =>
    first === undefined ? 0 : (actions[first]?.at ?? 0);
  return found.sort((a, b) => firstAt(a) - firstAt(b));
}

function only<K extends Kind>(timeline: readonly Placed<DatedAction>[], kind: K): Placed<ActionOf<K>>[] {
  return timeline.filter((entry): entry is Placed<ActionOf<K>> => entry.action.kind === kind);
}

function doses(timeline: readonly Placed<DatedAction>[], of: DoseClass) {
  return only(timeline, "dose").filter(({ action }) => action.of === of);
}

/** From each "off" to the next "on" of the same item; without one, it stays off. */
function outages(timeline: readonly Placed<DatedAction>[]) {
  const switches = only(timeline, "equipment");
  const wasOff = (item: RunningItem, place: number) =>
    switches.slice(0, place).findLast(({ action }) => action.item === item)?.action.state === "off";
  return switches
    .filter(({ action }, place) => action.state === "off" && !wasOff(action.item, place))
    .map((off) => {
      const on = switches.find(
        ({ action }) =>
          action.item === off.action.item && action.state === "on" && action.at >= off.action.at,
      );
      return { off, until: on?.action.at ?? Number.POSITIVE_INFINITY };
    });
}

function carbonWhileOff(timeline: readonly Placed<DatedAction>[]): Clash[] {
  return outages(timeline).flatMap(({ off, until }) => {
    const { item, at: offAt } = off.action;
    return doses(timeline, "carbon").flatMap((dose): Clash[] => {
      const { at } = dose.action;
      if (at >= offAt && at < until) {
        return [
          { caution: caution("carbon-while-off", { item }, "danger"), actions: [off.index, dose.index] },
        ];
      }
      const hours = offAt - at;
      const isOutage = until - offAt >= SHORT_PAUSE_H;
      return hours > 0 && hours <= CARBON_BURNS_H && isOutage
        ? [
            {
              caution: caution("off-soon-after-carbon", { item, hours }, "warning"),
              actions: [dose.index, off.index],
            },
          ]
        : [];
    });
  });
}

function binderBeforeTest(timeline: readonly Placed<DatedAction>[]): Clash[] {
  const tests = only(timeline, "ammonia test planned").filter(
    ({ action }) => action.test === "total ammonia",
  );
  return tests.flatMap((test) => {
    // The last binder before the test is the one that spoils it.
    const binder = doses(timeline, "ammonia binder").findLast(({ action }) => action.at <= test.action.at);
    const hours = binder === undefined ? Number.POSITIVE_INFINITY : test.action.at - binder.action.at;
    return binder === undefined || hours >= WINDOW_H
      ? []
      : [
          {
            caution: caution("binder-before-test", { hours }, "warning"),
            actions: [binder.index, test.index],
          },
        ];
  });
}

function phLiftWithAmmonia(timeline: readonly Placed<DatedAction>[]): Clash[] {
  const lifts = [
    ...only(timeline, "water change")
      .filter(({ action }) => action.liftsPH)
      .map(({ action, index }) => ({ at: action.at, index, what: "water change" })),
    ...doses(timeline, "carbonate").map(({ action, index }) => ({
      at: action.at,
      index,
      what: "carbonate dose",
    })),
  ];
  return lifts.flatMap(({ at, index, what }) => {
    const last = only(timeline, "ammonia reading").findLast(({ action }) => action.at <= at);
    return last?.action.isPresent === true && at - last.action.at <= WINDOW_H
      ? [{ caution: caution("ph-lift-with-ammonia", { what }, "danger"), actions: [last.index, index] }]
      : [];
  });
}

function calciumWithCarbonate(timeline: readonly Placed<DatedAction>[]): Clash[] {
  return doses(timeline, "calcium").flatMap((calcium) =>
    doses(timeline, "carbonate").flatMap((carbonate): Clash[] => {
      const later = carbonate.action.at - calcium.action.at;
      const hours = Math.abs(later);
      if (hours >= TOGETHER_H) return [];
      return [
        {
          caution: caution("calcium-meets-carbonate", { hours }, "warning"),
          actions: later >= 0 ? [calcium.index, carbonate.index] : [carbonate.index, calcium.index],
        },
      ];
    }),
  );
}

function missedDoses(timeline: readonly Placed<DatedAction>[]): Clash[] {
  return only(timeline, "missed dose").map((missed) => {
    const next = doses(timeline, missed.action.of).find(
      ({ action }) => action.at >= missed.action.at && action.at - missed.action.at <= WINDOW_H,
    );
    return {
      caution: caution("missed-dose-stays-missed", {}, "warning"),
      actions: next === undefined ? [missed.index] : [missed.index, next.index],
    };
  });
}

function changesTooClose(timeline: readonly Placed<DatedAction>[]): Clash[] {
  const changes = only(timeline, "change");
  return changes.flatMap((first, place) => {
    const second = changes[place + 1];
    const hours = second === undefined ? WEEK_H : second.action.at - first.action.at;
    return second === undefined || hours >= WEEK_H
      ? []
      : [
          {
            caution: caution(
              "two-changes-one-week",
              { first: first.action.what, second: second.action.what, days: hours / 24 },
              "note",
            ),
            actions: [first.index, second.index],
          },
        ];
  });
}
