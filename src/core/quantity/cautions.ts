/** Cautions of the quantity room: code → the figures its sentence needs. */
export interface QuantityCautions {
  "form-not-said": { as: string };
  "ppm-is-mg-per-litre-here": Record<string, never>;
}

/** Refusals of the quantity room. */
export interface QuantityRefusals {
  "conversion-kinds-differ": { noun: string; target: string; units: string };
  "conversion-needs": { what: string; example: string };
}
