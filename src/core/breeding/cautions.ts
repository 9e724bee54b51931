/** Cautions of the breeding room: code → the figures its sentence needs. */
export interface BreedingCautions {
  /** Scoops differ more than chance lets evenly spread animals do. */
  "breeding-clumped": { chance: number };
  "breeding-few-counted": { counted: number; needed: number };
  "breeding-not-independent": Record<string, never>;
  "breeding-survival-rests-on-estimates": Record<string, never>;
  /** A date is a prompt, never a promise. */
  "breeding-day-is-a-prompt": { until: string };
  "breeding-diapause": { from: string };
  "breeding-temperature-beyond": { temperature: number; from: number; to: number };
  "breeding-culture-falling": { culture: string; changePerDay: number; counts: number };
  "breeding-culture-slow": { culture: string; mostPercent: number; wantedPercent: number };
  "breeding-culture-eggs-falling": { culture: string };
  "breeding-culture-stale": { culture: string; days: number };
  "breeding-no-backup": { culture: string };
  "breeding-backup-near": { culture: string; place: string };
  "breeding-culture-short": { missing: number };
  "breeding-tin-unknown": Record<string, never>;
  "breeding-deaths-alert": { deaths: number; meanPerDay: number; days: number; water: string };
  "breeding-frozen": { water: string };
  "breeding-see-vet": Record<string, never>;
  "breeding-told-recipients": { people: readonly string[] };
  "breeding-water-step-up": { from: string; to: string };
  "breeding-in-quarantine": { tank: string; until: string };
  "breeding-close-kin": { kin: string };
  "breeding-at-least": Record<string, never>;
  "breeding-shop-stock": Record<string, never>;
  "breeding-no-population": { effective: number };
  "breeding-mixes-origins": Record<string, never>;
  "breeding-never-release": Record<string, never>;
  "breeding-authority": { species: string };
  "breeding-papers": { species: string };
  "breeding-quarantine-reminder": { days: number };
  "breeding-cull-is-yours": Record<string, never>;
  "breeding-not-ready": { people: readonly string[] };
}

/** Refusals of the breeding room. */
export interface BreedingRefusals {
  "breeding-pedigree-loop": { animal: string };
  "breeding-no-scoops": Record<string, never>;
  "breeding-no-growth-yet": { culture: string };
  "breeding-no-hatch-figures": { species: string };
  "breeding-too-many-go": { asked: number; there: number };
}
