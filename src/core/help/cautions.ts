/** Cautions of the help room: code → the figures its sentence needs. */
export interface HelpCautions {
  "help-is-no-diagnosis": Record<string, never>;
  "help-call-a-vet": Record<string, never>;
  "help-electrician-first": Record<string, never>;
  "help-doctor-first": Record<string, never>;
  "help-poison-line": Record<string, never>;
  "help-no-medicine": Record<string, never>;
  "help-pH-rises-with-the-change": { readonly pH: number };
  "help-heavy-water": Record<string, never>;
}
