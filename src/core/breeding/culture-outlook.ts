import { as, type Fraction } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { doublingDays, growthForHarvest, mostHarvest } from "./culture-growth.ts";
import type { Culture } from "./ledger/state.ts";

export interface CultureOutlook {
  readonly perML: number;
  readonly daysOld: number;
  /** Between the last two counts, harvests put back. */
  readonly ratePerDay: number;
  /** The same as a share: e^r − 1. */
  readonly changePerDay: number;
  readonly ratesPerDay: readonly number[];
  readonly doublingDays?: number;
  readonly mostHarvest: Fraction;
  /** The share taken a day since the count before. */
  readonly takenPerDay: number;
  readonly isFalling: boolean;
  readonly backups: readonly { readonly name: string; readonly keeper?: number; readonly place: string }[];
}

const DAY_MS = 86_400_000;
const STALE_DAYS = 2;

/** Which way a culture goes: its growth between counts with the harvests put back, and who keeps its back-up. */
export function cultureOutlook(
  culture: Culture,
  others: readonly Culture[],
  nowMs: number,
): Answer<CultureOutlook> | NoAnswer {
  const { counts } = culture;
  const backups = others
    .filter(
      (other) =>
        other.name !== culture.name && other.organism === culture.organism && other.ended === undefined,
    )
    .map(({ name, keeper, place }) => ({ name, place, ...(keeper === undefined ? {} : { keeper }) }));
  const backupDoubts: Caution[] =
    backups.length === 0
      ? [caution("breeding-no-backup", { culture: culture.name })]
      : backups.every(({ place }) => place.toLowerCase() === culture.place.toLowerCase())
        ? [caution("breeding-backup-near", { culture: culture.name, place: culture.place })]
        : [];
  const rates: number[] = [];
  let takenPerDay = 0;
  for (let i = 1; i < counts.length; i += 1) {
    const [before, after] = [counts[i - 1], counts[i]];
    if (before === undefined || after === undefined || !(before.best > 0 && after.best > 0)) continue;
    const days = (Date.parse(after.at) - Date.parse(before.at)) / DAY_MS;
    if (!(days > 0)) continue;
    const taken = culture.harvests
      .filter(({ at }) => at >= before.at && at < after.at)
      .reduce((sum, { litres }) => sum - Math.log1p(-Math.min(0.999, litres / culture.litres)), 0);
    rates.push((Math.log(after.best / before.best) + taken) / days);
    takenPerDay = -Math.expm1(-taken / days);
  }
  const last = counts.at(-1);
  const rate = rates.at(-1);
  if (last === undefined || rate === undefined)
    return noAnswer("breeding-no-growth-yet", { culture: culture.name }, backupDoubts);
  const daysOld = (nowMs - Date.parse(last.at)) / DAY_MS;
  const isFalling = rates.length >= 2 && rates.slice(-2).every((each) => each < 0);
  const eggShares = counts.slice(-2).flatMap(({ eggShare }) => (eggShare === undefined ? [] : [eggShare]));
  const [eggsBefore, eggsNow] = eggShares;
  const most = mostHarvest(rate);
  const needed = growthForHarvest(as<Fraction>(Math.min(0.999, takenPerDay))).ratePerDay;
  return {
    kind: "answer",
    value: {
      perML: last.best,
      daysOld,
      ratePerDay: rate,
      changePerDay: Math.expm1(rate),
      ratesPerDay: rates,
      ...(rate === 0 ? {} : { doublingDays: doublingDays(rate) }),
      mostHarvest: most,
      takenPerDay,
      isFalling,
      backups,
    },
    method: "The logarithm of one density over the other, with what was harvested put back, per day",
    working: [
      `growth between counts, per day: ${rates
        .slice(-5)
        .map((each) => each.toFixed(3))
        .join(", ")}`,
      `harvested since the count before: ${(100 * takenPerDay).toFixed(0)} % a day, which asks for ${needed.toFixed(3)} a day`,
      `most that can be taken for good: 1 − e^(−r) = ${(100 * most).toFixed(0)} % a day`,
    ],
    constants: [],
    sources: ["definition", "mass-balance", "common-practice"],
    assumptions: ["what was harvested was replaced by water without animals"],
    cautions: [
      ...(isFalling
        ? [
            caution(
              "breeding-culture-falling",
              { culture: culture.name, changePerDay: Math.expm1(rate), counts: 3 },
              "warning",
            ),
          ]
        : []),
      ...(takenPerDay > 0 && rate < needed
        ? [
            caution("breeding-culture-slow", {
              culture: culture.name,
              mostPercent: 100 * most,
              wantedPercent: 100 * takenPerDay,
            }),
          ]
        : []),
      ...(eggsBefore !== undefined && eggsNow !== undefined && eggsNow < eggsBefore
        ? [caution("breeding-culture-eggs-falling", { culture: culture.name })]
        : []),
      ...(daysOld > STALE_DAYS
        ? [caution("breeding-culture-stale", { culture: culture.name, days: Math.floor(daysOld) })]
        : []),
      ...backupDoubts,
    ],
  };
}
