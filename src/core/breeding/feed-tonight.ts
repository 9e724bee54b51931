import { as, type Fraction, type Grams, type Hours, type Litres } from "../quantity/units.ts";
import { type Answer, type Caution, caution } from "../result.ts";
import { cystsFor, hatchLitres } from "./brine-shrimp.ts";
import { cultureForRation, harvestLitres, topUp } from "./culture-growth.ts";

export interface FeedNeed {
  readonly tankL: Litres;
  readonly targetPerML: number;
  readonly leftPerML: number;
  readonly feedsPerDay: number;
}

/** A culture that may be harvested. */
export interface FeedSource {
  readonly name: string;
  readonly litres: Litres;
  readonly perML: number;
}

export interface RotiferPlan {
  readonly needed: number;
  readonly neededPerDay: number;
  readonly harvests: readonly { readonly culture: string; readonly litres: number; readonly share: number }[];
  readonly missing: number;
  /** Culture water that would give it for good. */
  readonly cultureL?: Litres;
}

/** The share of a culture taken at once unless its growth allows otherwise. Source: common-practice. */
export const DAILY_SHARE = as<Fraction>(0.25);

/** Tonight's rotifers: what the tank lacks, and how many litres of which culture bring it. */
export function rotifersTonight(need: FeedNeed, cultures: readonly FeedSource[]): Answer<RotiferPlan> {
  const needed = topUp(need.tankL, need.targetPerML, need.leftPerML);
  let left = needed;
  const harvests: { culture: string; litres: number; share: number }[] = [];
  for (const { name, litres, perML } of [...cultures].sort(
    (a, b) => b.perML * b.litres - a.perML * a.litres,
  )) {
    if (left <= 0 || !(perML > 0)) continue;
    const most = litres * DAILY_SHARE;
    const wanted = Math.min(most, harvestLitres(left, perML));
    harvests.push({ culture: name, litres: wanted, share: wanted / litres });
    left -= wanted * perML * 1000;
  }
  const missing = Math.max(0, Math.round(left));
  const neededPerDay = needed * need.feedsPerDay;
  const [best] = [...cultures].sort((a, b) => b.perML - a.perML);
  return {
    kind: "answer",
    value: {
      needed,
      neededPerDay,
      harvests,
      missing,
      ...(best === undefined || !(best.perML > 0) || needed === 0
        ? {}
        : { cultureL: cultureForRation(neededPerDay, best.perML, DAILY_SHARE) }),
    },
    method:
      "Target density less what is left, times the water in the tank; litres by the density counted last",
    working: [
      `(${need.targetPerML} − ${need.leftPerML}) per mL × ${need.tankL} L × 1000 = ${Math.round(needed).toLocaleString("en")} rotifers`,
      ...harvests.map(
        ({ culture, litres, share }) =>
          `${culture}: ${litres.toPrecision(3)} L, ${(100 * share).toFixed(0)} % of it`,
      ),
    ],
    constants: [
      {
        name: "most of a culture taken in a day",
        value: `${100 * DAILY_SHARE} %`,
        source: "common-practice",
      },
    ],
    sources: ["mass-balance", "rotifer-targets"],
    assumptions: ["what is left was counted after the water change, not before", "feeds of a day are alike"],
    cautions: missing > 0 ? [caution("breeding-culture-short", { missing })] : [],
    ...(needed > 0 ? { driver: { input: "what is left in the tank", share: 1 } } : {}),
  };
}

/** When cysts must be in the water, counted back from the feed. */
export interface CystPlan {
  readonly grams: Grams;
  readonly litres: Litres;
  /** Hours before the feed, earliest and latest. */
  readonly startsHoursBefore: readonly [number, number];
  readonly isAssumedTin: boolean;
}

/** Hatching takes so long. Source: common-practice. */
const HATCH_HOURS = [18, 24] as const;
/** Nauplii per gram where the tin was never tested. Source: assumption (one strain in print gave 230,600). */
const USUAL_NAUPLII_PER_G = 200_000;
/** Most cysts per litre, in small and in large vessels. Source: hatching-conditions-2000. */
const MOST_G_PER_L = { small: 5, large: 2, smallUnderL: 20 };

/** Cysts to weigh and when to set them up for so many nauplii at a feed. */
export function cystsTonight(
  nauplii: number,
  naupliiPerG: number | undefined,
  harvestLoss: Fraction,
  enrichment: Hours,
): Answer<CystPlan> {
  const perG = naupliiPerG ?? USUAL_NAUPLII_PER_G;
  const grams = cystsFor(nauplii, { kind: "per gram", naupliiPerG: perG }, harvestLoss);
  const small = hatchLitres(grams, MOST_G_PER_L.small);
  const litres = small < MOST_G_PER_L.smallUnderL ? small : hatchLitres(grams, MOST_G_PER_L.large);
  const cautions: Caution[] = naupliiPerG === undefined ? [caution("breeding-tin-unknown", {})] : [];
  return {
    kind: "answer",
    value: {
      grams,
      litres,
      startsHoursBefore: [HATCH_HOURS[0] + enrichment, HATCH_HOURS[1] + enrichment],
      isAssumedTin: naupliiPerG === undefined,
    },
    method: "Nauplii over what a gram gives after the harvest; the clock counted back from the feed",
    working: [
      `${Math.round(nauplii).toLocaleString("en")} ÷ (${perG.toLocaleString("en")} per g × ${(1 - harvestLoss).toFixed(2)}) = ${grams.toPrecision(3)} g`,
      `hatching ${HATCH_HOURS.join("–")} h${enrichment > 0 ? `, then ${enrichment} h of enrichment` : ""}`,
    ],
    constants: [
      { name: "hatching time", value: `${HATCH_HOURS.join("–")} h`, source: "common-practice" },
      {
        name: "most cysts per litre",
        value: `${MOST_G_PER_L.small} g/L under ${MOST_G_PER_L.smallUnderL} L, ${MOST_G_PER_L.large} g/L above`,
        source: "hatching-conditions-2000",
      },
      ...(naupliiPerG === undefined
        ? [{ name: "nauplii per gram", value: String(USUAL_NAUPLII_PER_G), source: "assumption" as const }]
        : []),
    ],
    sources: ["van-stappen-1996", "lavens-sorgeloos-1996", "hatching-conditions-2000"],
    assumptions: ["25–28 °C, lit and aired; above 33 °C hatching stops for good"],
    cautions,
    driver: { input: "how well the tin hatches", share: 1 },
  };
}
