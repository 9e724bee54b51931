/** Cautions of the dosing room: code → the figures its sentence needs. */
export interface DosingCautions {
  "medicine-needs-a-vet": Record<string, never>;
  "make-up-to-volume": { finalL: number };
  "water-first-then-stock": { finalL: number };
  "stock-not-named": Record<string, never>;
  "acid-into-water": Record<string, never>;
  "caustic-burns": Record<string, never>;
  "bleach-keep-apart": Record<string, never>;
  "oxidiser-burns": Record<string, never>;
  "ammonia-is-toxic": Record<string, never>;
  "solvent-vapour-burns": Record<string, never>;
  "substance-not-named": Record<string, never>;
  "substance-not-known": { substance: string };
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
  "carbon-takes-oxygen": { mgPerL: number; worstMgPerL: number; dosesPerDay: number };
  "carbon-ramp-rule": Record<string, never>;
  "carbon-stop-signs": Record<string, never>;
  "carbon-only-with-flow": Record<string, never>;
  "sulphide-when-nitrate-is-gone": Record<string, never>;
  "phosphate-may-run-out": Record<string, never>;
  "skim-out-what-grew": Record<string, never>;
  "carbon-wasted-on-oxygen": { percent: number };
  "harvest-or-no-export": Record<string, never>;
  "ammonia-no-animals": Record<string, never>;
  "ammonia-unit-said": { mgNPerL: number; asNh4: number; asNh3: number };
  "ammonia-slows-the-cycle": { mgNPerL: number; max: number };
  "cycling-uses-alkalinity": { dkh: number };
  "binder-blinds-the-test": { hours: number };
  "binder-nitrogen-stays": Record<string, never>;
  "binder-takes-oxygen": { mgPerL: number };
  "binder-strength-from-label": Record<string, never>;
  "carbon-while-off": { item: string };
  "off-soon-after-carbon": { item: string; hours: number };
  "binder-before-test": { hours: number };
  "ph-lift-with-ammonia": { what: string };
  "calcium-meets-carbonate": { hours: number };
  "two-changes-one-week": { first: string; second: string; days: number };
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
  "carbon-needs-flow": { off: string };
  "carbon-takes-too-much-oxygen": { mgPerL: number; max: number; dosesNeeded: number };
  "carbon-with-fish-off-food": Record<string, never>;
  "ammonia-with-animals": Record<string, never>;
}
