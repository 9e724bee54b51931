/** Cautions of the trends room: code → the figures its sentence needs. */
export interface TrendsCautions {
  /** Readings that fit nothing before and after, and so were given little weight. */
  "trend-readings-doubted": { readings: readonly { value: number; daysAgo: number }[] };
  "trend-unlogged-change": { fromDaysAgo: number; toDaysAgo: number };
  "trend-kits-differ": { instrument: string; against: string; percentLow: number; percentHigh: number };
  "trend-unit-slip": { instrument: string; other: string; factor: number };
  "trend-last-at-top": { atLeast: number };
  "trend-new-water-above-limit": { newWater: number; limit: number };
  "trend-plan-assumed": { everyDays: number; percent: number };
  "trend-sawtooth": Record<string, never>;
}

/** Refusals of the trends room. */
export interface TrendsRefusals {
  "trend-no-readings": Record<string, never>;
  "trend-too-few": { readings: number; days: number; waitDays: number };
  "trend-at-top": { atLeast: number };
  "trend-at-bottom": { below: number; productionUnder: number };
  "trend-too-old": { days: number };
  "trend-contradictory": { readings: number };
  "trend-too-vague": { low: number; high: number; levelLow: number; levelHigh: number; waitDays: number };
  "trend-event-too-little": { what: string; looksBefore: number; looksAfter: number };
  "trend-one-time": { readings: number };
}
