/** Cautions of the dosing room: code → the figures its sentence needs. */
export interface DosingCautions {
  "medicine-needs-a-vet": Record<string, never>;
}

/** Refusals of the dosing room. */
export interface DosingRefusals {
  "stock-weaker-than-target": { stock: number; target: number; unit: string };
}
