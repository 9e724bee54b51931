/**
 * Every default of the production model in one place. All are assumptions: chosen on simulated records,
 * whose seed is not the one the quality is reported on (bench/simulation).
 */
export const SETTINGS = {
  /** Level now and rate "now" come from at most this many days back, but never from fewer readings than this. */
  windowDays: 240,
  windowReadings: 14,
  /** Readings closer together than this, from one instrument, share one look: ten looks are not ten tests. */
  sameLookDays: 2 / 24,
  /** Past this many looks, neighbours are taken together. */
  mostLooks: 200,
  /** Scatter of an eye on a chart: share of the first step, and share of the level. */
  readerFirstStepShare: 0.15,
  readerLevelShares: [0.08, 0.2],
  /** Chance that a reading is a slip and says nothing. */
  misreadChance: 0.02,
  /** Uptake in proportion to the level, per day, with the belief in each before any reading. */
  uptakes: [
    { perDay: 0, belief: 0.7 },
    { perDay: 0.012, belief: 0.1 },
    { perDay: 0.03, belief: 0.1 },
    { perDay: 0.07, belief: 0.1 },
  ],
  /** How even a keeper is: spread of one day's production, and of a change's true share about the logged one,
   *  each as a share of it. An even hand feeds and measures evenly. */
  keepers: [
    { feedingSpread: 0.27, changeSpread: 0.08, belief: 0.5 },
    { feedingSpread: 0.72, changeSpread: 0.14, belief: 0.5 },
  ],
  /** Slow drift of production, as a share of it, per root day. */
  drifts: [0.006, 0.033],
  /** Spread a dated event puts on production, as a share of it: it did nothing, or it did something. */
  eventSpreads: [0, 0.7],
  /** Production beliefs before any reading, in multiples of (typical level / `levelDays`), as a row of bells. */
  levelDays: 20,
  rangeShare: 0.5,
  productionBells: [
    { centre: 0.1, spread: 0.1, belief: 0.15 },
    { centre: 0.35, spread: 0.17, belief: 0.25 },
    { centre: 1, spread: 0.45, belief: 0.35 },
    { centre: 2.6, spread: 1.2, belief: 0.25 },
  ],
  /** When looks say "at least", the tank may make far more than the instrument can show: a bell for that,
   *  believed in as much as this times the share of such looks. */
  beyondBell: { centre: 6, spread: 3, belief: 0.06 },
  /** A record that leaves less than this share of the ways a tank may stand possible contradicts itself. */
  leastPossible: 0.1,
  /** Refuse when more than this share of the looks, the last among them, say only "at least". */
  mostAtTop: 0.85,
  /** Error of the new water's level, as a share of it. */
  newWaterSpread: 0.1,
  /** Calibration error of one instrument, as a share of what it shows. */
  kitSpread: 0.06,
  /** Calibration of a second instrument against the last one used. */
  betweenKitsSpread: 0.08,
  /** What a rate needs at the least. */
  leastLooks: 3,
  leastDays: 5,
  freshDays: 30,
  /** A rate that lifts the level by this share of it in this many days is worth knowing. */
  stepShareOfLevel: 0.75,
  stepDays: 30,
  /** Refuse when half the range is wider than this many times the rate, or the rate worth knowing. */
  vagueness: 1,
  /** How sure "is rising" and "is probably rising" are, and a finding that nothing moves. */
  sureChance: 0.985,
  probableChance: 0.85,
  steadyChance: 0.8,
  /** A reading less likely to be sound than this is named to the member. */
  doubtedBelow: 0.1,
  /** Tests and days needed on both sides of an event, how likely an effect must be to be named, and how
   *  likely its side. */
  looksBesideEvent: 3,
  daysBesideEvent: 10,
  effectChance: 0.62,
  effectSideChance: 0.9,
  /** A fall worth asking about: how deep it must be, and how much better a change must explain the record
   *  (twice the gain in log-likelihood). */
  deepFall: 2,
  unloggedGain: 6,
  /** How far ahead a limit is looked for, and the forecast goes unless asked, days. */
  horizonDays: 365,
  forecastDays: 14,
  /** Beliefs weaker than this share of the strongest are dropped on the way. */
  dropBelow: 3e-3,
} as const;
