import { type Caution, caution } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { animalDangers } from "./animal-dangers.ts";
import { FEEDS } from "./feeds.ts";
import { FISH } from "./fish.ts";
import { MEDIA } from "./media.ts";
import { rounded } from "./rounded.ts";
import { RESERVE_WANTED_H } from "./stocking-figures.ts";
import { STOCKING_DEFAULTS, type StockingSituation } from "./stocking-input.ts";
import type { StockingLoad } from "./stocking-load.ts";

/** Share of the ammonia passing that a good filter takes at most in one pass. Source: assumption. */
const HIGHEST_PASS_REMOVAL = 0.5;

/** Every work a situation's figures rest on. */
export function sourcesOf(situation: StockingSituation): SourceId[] {
  const own: SourceId[] = [
    ...situation.food.flatMap(({ protein }) =>
      protein.kind === "table" ? [FEEDS[protein.feed].source] : [],
    ),
    ...(situation.food.length === 0 ? (["common-practice", "fao-x5557e"] as const) : []),
    ...situation.animals.flatMap(({ body }) => (body.kind === "length" ? [FISH[body.fish].source] : [])),
    ...(situation.media ?? []).map((bed) => MEDIA[bed.kind].source),
    ...(situation.animals.length > 0
      ? (["clarke-johnston-1999", "stonefish-respirometry", "meal-metabolism"] as const)
      : []),
  ];
  return [
    ...new Set<SourceId>([
      "mass-balance",
      "timmons-ebeling",
      "nijhof-bovendeur-1990",
      "kinyage-pedersen",
      "zhu-chen-2002",
      "wolf-gladrow-2007",
      "benson-krause-1984",
      ...own,
      "assumption",
    ]),
  ];
}

/** What was taken for granted. */
export function assumptionsOf(situation: StockingSituation): string[] {
  return [
    "all food is eaten, and foods named together are given at the same hours",
    "the filter film has grown in at this salinity and temperature",
    "inner surface of porous media is not counted: oxygen reaches about a millimetre",
    `oxygen is called short when the water holds less than ${RESERVE_WANTED_H} h of it after a meal`,
    ...(situation.growth === "not said"
      ? ["not known whether the fish still grow: both cases are in the range"]
      : []),
    ...(situation.food.length === 0
      ? [
          `usual ration of an ${situation.growth === "growing" ? "growing fish" : "adult predator"}, fish flesh, ${STOCKING_DEFAULTS.assumedMealsPerWeek} meals a week`,
        ]
      : []),
    ...(situation.acceptedNitrate === undefined && situation.waterChange !== undefined
      ? ["100 mg/L nitrate is accepted before a water change (common practice, no source)"]
      : []),
  ];
}

/** What to heed in the result. */
export function cautionsOf(situation: StockingSituation, load: StockingLoad): Caution[] {
  const cautions: Caution[] = [
    ...animalDangers(situation.animals),
    caution("filter-figures-rest-on-maturity", {}, "note"),
  ];
  cautions.push(
    caution(
      "accepted-ammonia-depends-on-ph",
      {
        averageMgPerL: situation.acceptedTan ?? STOCKING_DEFAULTS.acceptedTan,
        peakMgPerL: situation.acceptedPeakTan ?? STOCKING_DEFAULTS.acceptedPeakTan,
      },
      "note",
    ),
  );
  if (situation.food.length === 0) {
    const ration = STOCKING_DEFAULTS.ration[situation.growth === "growing" ? "growing" : "adult"];
    cautions.push(
      caution("ration-assumed", {
        lowPercent: rounded(ration.low * 100),
        highPercent: rounded(ration.high * 100),
      }),
    );
  }
  if (situation.animals.length === 0) cautions.push(caution("fish-oxygen-unknown", {}));
  for (const { label, protein } of situation.food) {
    if (protein.kind === "own" && protein.basis === "as fed" && protein.protein.best > 0.35) {
      cautions.push(
        caution("protein-looks-dry", { food: label, proteinPercent: rounded(protein.protein.best * 100) }),
      );
    }
  }
  if (load.rationShare !== undefined && situation.food.length > 0) {
    const percentPerDay = rounded(load.rationShare.best * 100);
    if (load.rationShare.low > 0.06) cautions.push(caution("ration-looks-wrong", { percentPerDay }));
    if (load.rationShare.high < 0.002) {
      cautions.push(caution("animals-given-no-food", { lowPercent: percentPerDay }));
    }
  }
  if (load.oxygen.reserveH.low < RESERVE_WANTED_H) {
    cautions.push(caution("oxygen-reserve-short", { hours: rounded(load.oxygen.reserveH.low) }));
  }
  if (load.peakTimesAverage.best > 2) {
    cautions.push(caution("meals-peak", { timesAverage: rounded(load.peakTimesAverage.best, 2) }, "note"));
  }
  if (situation.netFlowLPerH !== undefined) {
    // Even a filter that takes half of what passes must be shown the load at the accepted level.
    const accepted = situation.acceptedTan ?? STOCKING_DEFAULTS.acceptedTan;
    const neededLPerH = (load.tanGPerDay.best * 1000) / 24 / (accepted * HIGHEST_PASS_REMOVAL);
    if (situation.netFlowLPerH.best < neededLPerH) {
      cautions.push(
        caution("flow-too-small-for-ammonia", {
          flowLPerH: rounded(situation.netFlowLPerH.best),
          neededLPerH: rounded(neededLPerH, 2),
        }),
      );
    }
  }
  if (load.alkalinityDkhPerWeek.best > 0.5) {
    cautions.push(
      caution("alkalinity-falls", { dkhPerWeek: rounded(load.alkalinityDkhPerWeek.best, 2) }, "note"),
    );
  }
  return cautions;
}
