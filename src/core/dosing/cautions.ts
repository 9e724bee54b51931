/** Cautions of the dosing room: code → the figures its sentence needs. */
export interface DosingCautions {
  "medicine-needs-a-vet": Record<string, never>;
  "make-up-to-volume": { finalL: number };
  "acid-into-water": Record<string, never>;
  "caustic-burns": Record<string, never>;
  "bleach-keep-apart": Record<string, never>;
  "oxidiser-burns": Record<string, never>;
  "ammonia-is-toxic": Record<string, never>;
  "leave-and-air": Record<string, never>;
  "hazard-list-not-complete": Record<string, never>;
  "alcohol-flammable": { percent: number; flashPointC: number };
  "no-denatured-alcohol": Record<string, never>;
  "alcohol-dose-elsewhere": Record<string, never>;
  "alcohol-shrinks-on-mixing": Record<string, never>;
  "split-over-days": { days: number; cap: number; unit: string };
  "no-daily-limit-given": Record<string, never>;
  "missed-dose-stays-missed": Record<string, never>;
  "stock-near-saturation": { solute: string; gramsPerL: number; solubilityGramsPerL: number };
  "stock-volume-counts": { percent: number };
  "calibrate-the-pump": Record<string, never>;
  "pump-run-very-short": { seconds: number };
  "vet-figures-read-back": Record<string, never>;
}

/** Refusals of the dosing room. */
export interface DosingRefusals {
  "stock-weaker-than-target": { stock: number; target: number; unit: string };
  "strengths-do-not-compare": { stock: string; target: string };
  "weight-percent-needs-density": { which: string };
  "dose-figure-not-positive": { quantity: string; value: number; unit: string };
  "dose-figure-too-large": { quantity: string; value: number; unit: string; max: number };
  "will-not-dissolve": { solute: string; gramsPerL: number; solubilityGramsPerL: number };
  "doses-do-not-fit-the-day": { seconds: number; dosesPerDay: number };
  "never-mix": { a: string; b: string; result: string };
  "not-into-a-tank": { substance: string };
  "medicine-not-dosed": { medicine: string };
  "vet-figures-missing": { missing: string };
  "alcohol-is-denatured": Record<string, never>;
}
