/** Cautions of the water room: code → the figures its sentence needs. */
export interface WaterCautions {
  "outside-fitted-range": { quantity: string; value: number; unit: string; min: number; max: number };
  /** Work with a mixing vessel, or with heater and pump in hand. */
  "mix-apart": Record<string, never>;
  "mains-near-water": Record<string, never>;
  "unplug-before-draining": Record<string, never>;
  "heavy-lift": { what: string; kg: number };
  "heavy-vessel": { kg: number };
  "measure-before-use": Record<string, never>;
  "measure-again": Record<string, never>;
  /** Salt mix. */
  "yield-unknown": { low: number; high: number; saltLowKg: number; saltHighKg: number };
  "yield-above-one": { yieldFactor: number };
  "yield-below-recipes": { yieldFactor: number; lowest: number };
  /** Changing a running system. */
  "salinity-change-rate": { change: number; capPerDay: number; days: number; stepPerDay: number };
  "dissolve-before-adding": { litres: number };
  "level-rises": { litres: number };
  "fresh-water-quality": Record<string, never>;
  "large-change": { percent: number };
  "change-within-error": { change: number; error: number };
  /** Top-off. */
  "top-off-with-fresh-water": Record<string, never>;
  "reservoir-can-dump": { litres: number; fall: number };
  /** Matching new water. */
  "salinity-step": { step: number; limit: number };
  "temperature-step": { step: number; limit: number };
  "ph-is-not-blended": { tank: number; added: number };
  /** Scales and instruments. */
  "not-for-tap-water": Record<string, never>;
  "ppt-has-two-meanings": { perKg: number; perLitre: number };
  "brine-scale": { shown: number; salinity: number };
  "unknown-expansion": Record<string, never>;
  /** Weighing out single salts. */
  "weighed-chemicals": Record<string, never>;
  "calcium-last": Record<string, never>;
  "recipe-from-memory": Record<string, never>;
  /** Water changes. */
  "production-goes-on": Record<string, never>;
  "unattended-filling": Record<string, never>;
  /** Oxygen. */
  "saturation-is-a-ceiling": Record<string, never>;
  "meter-set-to-fresh": { percent: number };
  "oxygen-low": { percent: number };
  oversaturated: { percent: number };
}

/** Refusals of the water room. */
export interface WaterRefusals {
  "target-not-between-waters": { now: number; target: number; added: number };
  /** A figure no water, vessel or clock could have. */
  "not-credible": { quantity: string; value: number; unit: string; min: number; max: number };
  "salt-cannot-lower": { now: number; target: number };
  "vessel-too-full": { heldL: number; finalL: number };
  "vessel-too-salty": { held: number; target: number };
  "product-too-weak": { yieldFactor: number; target: number };
  "yield-impossible": { yieldFactor: number };
  "more-than-there-is": { what: string; litres: number; volumeL: number };
  "salinity-fell": { before: number; now: number };
  "runs-out-between-changes": { before: number; unit: string };
  "source-too-strong": { ceiling: number; source: number; unit: string };
  "no-fraction-is-enough": { ceiling: number; rise: number; unit: string };
  "no-such-seawater": { reading: number; unit: string };
}
