/** Cautions of the carbonate room: code → the figures its sentence needs. */
export interface CarbonateCautions {
  "dissolve-apart": Record<string, never>;
}
