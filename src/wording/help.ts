import type { HelpCautions } from "../core/help/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the help room. */
export const helpCautionWording: Wording<HelpCautions> = {
  "help-is-no-diagnosis": () =>
    "This sorts out what is safe to do and what to measure. It is no diagnosis: nobody here can see the animals.",
  "help-call-a-vet": () =>
    "Call a vet who treats fish if they are no better within the hour, or if more fall ill. A vet may also say how to end suffering kindly.",
  "help-electrician-first": () =>
    "Keep your hands out of the water and off the gear. Switch off at the breaker first, with dry hands, and leave it off until a licensed electrician has looked at it.",
  "help-doctor-first": () =>
    "If anybody got a shock, feels ill or is hurt, call the emergency number now. A person comes before any tank.",
  "help-poison-line": () =>
    "If anybody swallowed it, breathed it in or got it in the eyes, call the poison line of your country now, with the bottle at hand.",
  "help-no-medicine": () =>
    "Add no medicine on a guess. If a vet prescribed one, ask there before you change water.",
  "help-pH-rises-with-the-change": ({ pH }) =>
    `At pH ${pH.toFixed(1)} most of the ammonia is in its mild form. New water with a higher pH turns it into the harmful one, so bring the pH up slowly: small changes, hours apart, each tested.`,
  "help-heavy-water": () =>
    "Water is heavy and makes floors slippery: half-full buckets, and plugs and sockets kept dry.",
};
