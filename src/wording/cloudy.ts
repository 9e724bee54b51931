import type { CloudyCautions } from "../core/cloudy/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the cloudy-water room. */
export const cloudyCautionWording: Wording<CloudyCautions> = {
  "animals-in-distress": () =>
    "Call a vet who treats fish if they do not breathe easier within the hour, or if any more fall ill. Nothing here can tell an illness from bad water.",
  "triage-is-no-diagnosis": () =>
    "This sorts out what is likely and safe to do first. It is no diagnosis: the tests decide, and sick animals are for a vet.",
  "sulphide-in-the-sand": () =>
    "A smell of rotten eggs is hydrogen sulphide, which harms people too. Open the windows, do not lean over the water, leave the sand alone, and go out if your head aches or the smell suddenly stops.",
  "bloom-must-not-die-at-once": () =>
    "Do not try to kill a bloom at one stroke: when it dies it takes the oxygen with it. Take away what feeds it, and keep air running at night.",
  "stop-carbon-now": () =>
    "Dose no alcohol, vinegar, sugar or other carbon until the water is clear and the animals eat: the bacteria it feeds use up the oxygen.",
  "medicine-is-for-a-vet": () =>
    "Add no medicine or other chemical on a guess. If a vet prescribed what is in the water, ask there before changing any of it.",
};
