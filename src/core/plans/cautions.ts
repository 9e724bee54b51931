/** Cautions of the plans room: code → the figures its sentence needs. */
export interface PlansCautions {
  "off-needs-watching": { device: string };
  "window-by-vet": Record<string, never>;
}
