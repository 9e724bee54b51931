/** Cautions of the water room: code → the figures its sentence needs. */
export interface WaterCautions {
  "outside-fitted-range": { quantity: string; value: number; unit: string; min: number; max: number };
}

/** Refusals of the water room. */
export interface WaterRefusals {
  "target-not-between-waters": { now: number; target: number; added: number };
}
