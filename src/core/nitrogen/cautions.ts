/** Cautions of the nitrogen room: code → the figures its sentence needs. */
export interface NitrogenCautions {
  "ammonia-estimate": { phError: number };
}

/** Refusals of the nitrogen room. */
export interface NitrogenRefusals {
  "no-food-and-no-animals": Record<string, never>;
}
