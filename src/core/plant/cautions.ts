/** Cautions of the plant room: code → the figures its sentence needs. */
export interface PlantCautions {
  "ask-an-electrician": Record<string, never>;
}

/** Refusals of the plant room. */
export interface PlantRefusals {
  "pump-cannot-lift": { shutOffHeadM: number; staticHeadM: number };
}
