/** Cautions of the nitrogen room: code → the figures its sentence needs. */
export interface NitrogenCautions {
  "ammonia-estimate": { phError: number; factor: number };
  "ammonia-raised": { limit: number };
  "ammonia-act-today": { limit: number };
  "ammonia-emergency": { limit: number };
  "raising-ph-raises-ammonia": { step: number; factor: number };
  "binder-hides-ammonia": Record<string, never>;
  "source-water-has-higher-ph": { tank: number; source: number };
  "large-change-in-steps": { percent: number };
  "change-cannot-reach-limit": { limit: number };
  "oxygen-low-now": { mgPerL: number; limit: number };
  "oxygen-cannot-hold": { mgPerL: number; limit: number };
  "oxygen-above-saturation": { mgPerL: number; saturation: number };
  "ration-assumed": { lowPercent: number; highPercent: number };
  "fish-oxygen-unknown": Record<string, never>;
  "protein-looks-dry": { food: string; proteinPercent: number };
  "ration-looks-wrong": { percentPerDay: number };
  "animals-given-no-food": { lowPercent: number };
  "oxygen-reserve-short": { hours: number };
  "meals-peak": { timesAverage: number };
  "flow-too-small-for-ammonia": { flowLPerH: number; neededLPerH: number };
  "alkalinity-falls": { dkhPerWeek: number };
  "filter-figures-rest-on-maturity": Record<string, never>;
  "accepted-ammonia-depends-on-ph": { averageMgPerL: number; peakMgPerL: number };
  "filter-cannot-take-load": { takenGPerDay: number };
  "main-flow-stays-oxic": { boxes: string; flowLPerH: number; leastMgPerL: number };
  "never-low-oxygen-in-main-flow": { box: string; flowLPerH: number; leastMgPerL: number };
  "low-oxygen-needs-side-stream": { box: string; flowLPerH: number; leastMgPerL: number; sideLPerH: number };
  "box-starves-of-oxygen": { box: string; mgPerL: number };
  "anoxic-box-may-make-sulphide": { box: string };
  "side-stream-needs-food": { box: string };
  "side-stream-too-fast": { box: string; flowLPerH: number; sideLPerH: number };
  "solids-belong-first": { box: string; solids: string };
  "chemical-media-belong-after-solids": { box: string };
  "aeration-before-slow-box": { box: string; aerated: string };
  "aerate-after-slow-box": { box: string };
  "skimmer-belongs-before-media": { box: string };
  "nitrogen-sinks-exceed-food": { sinksGPerDay: number; feedGPerDay: number };
  "nitrate-never-settles": { mgPerLPerWeek: number };
  "sink-figures-are-guesses": Record<string, never>;
  "cycling-with-animals": Record<string, never>;
  "one-dose-is-not-enough": { proofMgPerL: number };
  "fresh-seed-stops-in-salt": Record<string, never>;
  "culture-strength-unknown": Record<string, never>;
  "seed-may-carry-disease": Record<string, never>;
  "cycle-may-outlast-outlook": { days: number; percent: number };
  "alkalinity-stalls-cycle": { leastMeqPerL: number };
  "readings-do-not-fit": { days: string };
  "stock-slowly-after-cycling": Record<string, never>;
  "animal-stings": { animals: string };
  "animal-wounds": { animals: string };
  "adult-size-from-memory": { animal: string; lengthCm: number };
  "adult-size-unknown": { animal: string };
}

/** Refusals of the nitrogen room. */
export interface NitrogenRefusals {
  "no-food-and-no-animals": Record<string, never>;
  "protein-basis-not-said": { food: string; proteinPercent: number };
  "water-in-food-not-said": { food: string };
  "no-filter-boxes": Record<string, never>;
  "ammonia-form-not-said": { value: number };
  "figure-out-of-range": { what: string; value: number; unit: string; min: number; max: number };
}
