/** Cautions of the cloudy-water room: code → the figures its sentence needs. */
export interface CloudyCautions {
  "animals-in-distress": Record<string, never>;
  "triage-is-no-diagnosis": Record<string, never>;
  "sulphide-in-the-sand": Record<string, never>;
  "bloom-must-not-die-at-once": Record<string, never>;
  "stop-carbon-now": Record<string, never>;
  "medicine-is-for-a-vet": Record<string, never>;
}
