import type { Days, DegreesC } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { type Day, dayAfter } from "./calendar.ts";
import { daysForDegreeDays, fitThermalConstant } from "./degree-days.ts";
import { hatchFiguresFor } from "./hatch-table.ts";
import type { GroupState } from "./ledger/state.ts";

export interface HatchWindow {
  readonly from: Day;
  readonly until: Day;
  readonly fromDays: number;
  readonly toDays: number;
  /** "your last 4 spawns of this pair", "print". */
  readonly basis: string;
  /** What comes after hatching and needs a look of its own. */
  readonly next?: { readonly what: string; readonly from: Day; readonly until: Day };
}

export interface Clutch {
  readonly species: string;
  readonly pair?: string | undefined;
  readonly laidDay: Day;
  readonly temperatureC?: number | undefined;
}

/** Own spawns from which they take the place of print. Source: common-practice. */
const OWN_ENOUGH = 3;
/** A clutch is seen some hours after it was laid, and hatching is seen the morning after: half a day each way.
 *  Source: assumption. */
const SEEN_LATE_DAYS = 0.5;

/** When eggs seen today are likely to hatch: from the pair's own past, else the group's, else print. */
export function hatchWindow(clutch: Clutch, past: GroupState["hatches"]): Answer<HatchWindow> | NoAnswer {
  const { species, pair, laidDay, temperatureC } = clutch;
  const same = past.filter((each) => each.species.toLowerCase() === species.toLowerCase());
  const ofPair = same.filter((each) => pair !== undefined && each.pair === pair);
  const own = ofPair.length >= OWN_ENOUGH ? ofPair : same;
  const table = hatchFiguresFor(species);
  const whose = own === ofPair && pair !== undefined ? `of ${pair}` : `of your own ${species}`;

  if (table?.mayRest === true) {
    const until = dayAfter(laidDay, table.toDays);
    const from = dayAfter(laidDay, table.fromDays);
    return built(
      { from, until, fromDays: table.fromDays, toDays: table.toDays, basis: "print" },
      table.sources,
      [caution("breeding-diapause", { from })],
      [`the earliest hatching printed: ${table.fromDays} days`],
    );
  }
  if (own.length >= OWN_ENOUGH) {
    const days = own.map((each) => each.days);
    const warm = own.flatMap((each) =>
      each.temperatureC === undefined
        ? []
        : [{ temperature: as<DegreesC>(each.temperatureC), days: as<Days>(each.days) }],
    );
    const fit = temperatureC === undefined ? undefined : fitThermalConstant(warm);
    const isWithin =
      fit !== undefined && temperatureC !== undefined && temperatureC >= fit.fromC && temperatureC <= fit.toC;
    if (fit !== undefined && isWithin && fit.toC - fit.fromC >= 1 && temperatureC !== undefined) {
      const best = daysForDegreeDays(fit.degreeDays, as<DegreesC>(temperatureC), fit.base);
      const misses = warm.map(({ temperature, days: took }) =>
        Math.abs(took - daysForDegreeDays(fit.degreeDays, temperature, fit.base)),
      );
      const reach = Math.max(SEEN_LATE_DAYS, ...misses.filter(Number.isFinite));
      return spanned(
        best - reach,
        best + reach,
        `the warmth your last ${warm.length} spawns ${whose} took`,
        ["campbell-1974"],
        [
          `base ${fit.base.toFixed(1)} °C and ${fit.degreeDays.toFixed(0)} °C·d, a line through 1/days over temperature of ${warm.length} spawns`,
          `${fit.degreeDays.toFixed(0)} ÷ (${temperatureC} − ${fit.base.toFixed(1)}) = ${best.toFixed(1)} days`,
        ],
      );
    }
    return spanned(
      Math.min(...days) - SEEN_LATE_DAYS,
      Math.max(...days) + SEEN_LATE_DAYS,
      `your last ${own.length} spawns ${whose}`,
      ["common-practice"],
      [`they took ${days.join(", ")} days; half a day is added either way`],
      outsideOf(warm.map(({ temperature }) => temperature as number)),
    );
  }
  if (table === undefined) return noAnswer("breeding-no-hatch-figures", { species });
  return spanned(
    table.fromDays - SEEN_LATE_DAYS,
    table.toDays + SEEN_LATE_DAYS,
    `print (${table.name}${table.temperatureC === undefined ? "" : `, ${table.temperatureC.join("–")} °C`})`,
    table.sources,
    [`${table.fromDays} to ${table.toDays} days in print; half a day is added either way`],
    outsideOf(table.temperatureC ?? []),
  );

  function outsideOf(temperatures: readonly number[]): readonly Caution[] {
    if (temperatureC === undefined || temperatures.length === 0) return [];
    const [from, to] = [Math.min(...temperatures), Math.max(...temperatures)];
    return temperatureC < from || temperatureC > to
      ? [caution("breeding-temperature-beyond", { temperature: temperatureC, from, to })]
      : [];
  }

  function spanned(
    fromDays: number,
    toDays: number,
    basis: string,
    sources: readonly SourceId[],
    working: readonly string[],
    doubts: readonly Caution[] = [],
  ): Answer<HatchWindow> {
    const from = dayAfter(laidDay, Math.max(0, Math.floor(fromDays)));
    const until = dayAfter(laidDay, Math.ceil(toDays));
    const next =
      table?.next === undefined
        ? {}
        : {
            next: {
              what: table.next.what,
              from: dayAfter(from, table.next.fromDays),
              until: dayAfter(until, table.next.toDays),
            },
          };
    return built(
      { from, until, fromDays, toDays, basis, ...next },
      sources,
      [caution("breeding-day-is-a-prompt", { until }, "note"), ...doubts],
      working,
    );
  }

  function built(
    value: HatchWindow,
    sources: readonly SourceId[],
    cautions: readonly Caution[],
    working: readonly string[],
  ): Answer<HatchWindow> {
    return {
      kind: "answer",
      value,
      method: `Days from the eggs to hatching, from ${value.basis}`,
      working: [`eggs seen on ${laidDay}`, ...working],
      constants: [],
      sources,
      assumptions: ["the day the eggs were seen is the day they were laid"],
      cautions,
    };
  }
}

/** The nights on which somebody should look. */
export function hatchNights({ from, until }: HatchWindow, most = 6): readonly Day[] {
  const nights: Day[] = [];
  for (let day = from; day <= until && nights.length < most; day = dayAfter(day, 1)) nights.push(day);
  return nights;
}
