import type { RightPerson } from "../../src/core/questions/meaning.ts";
import type { Context, Reply } from "../../src/kit/index.ts";
import { safetyCard } from "../../src/kit/safety-card.ts";

interface Decline {
  readonly title: string;
  readonly headline: string;
  readonly body: readonly string[];
}

const DECLINES: Readonly<Record<Exclude<RightPerson, "people">, Decline>> = {
  vet: {
    title: "Sick animals and medicine",
    headline: "Ask a vet who treats fish",
    body: [
      "I name no disease and no dose. A vet needs to see the animal, or at least a short film of it.",
      "Water is the one thing to rule out meanwhile: /ammonia check and /oxygen full take a minute. Fish gasping at the surface: more air at once.",
      "When the vet has prescribed something, /dose vet turns the prescription into amounts for your water.",
    ],
  },
  electrician: {
    title: "Mains power",
    headline: "Ask a licensed electrician",
    body: [
      "Mains near water can kill, and the local code decides what is allowed: no wiring advice from me.",
      "Until it is looked at: hands out of the water, and off at the breaker if anything tingles, trips or smells.",
      "What your devices draw together can be added up with the power commands (/help power), to tell the electrician.",
    ],
  },
  engineer: {
    title: "What carries the weight and holds the water",
    headline: "Ask a structural engineer, and the tank's builder",
    body: [
      "Floors, stands and panes are designed by somebody who sees them: a structural engineer for floor and stand, a tank builder for glass and acrylic.",
      "A cracked or bulging pane: let the water down below it and keep away until it is looked at.",
      "The weight of your system can be added up (/help weight), to tell the engineer.",
    ],
  },
};

/** Says who can answer, and whom the member has noted for that. */
export function declineReply(who: RightPerson, context: Context): Reply {
  const tanks = context.records.tanks.own(context.member.id);
  const audience = context.request.isAloud === true ? "channel" : context.audience;
  if (who === "people") return safetyCard("unwell", audience, tanks);
  const { title, headline, body } = DECLINES[who];
  const noted =
    audience === "channel"
      ? []
      : tanks
          .flatMap(({ plant }) => (plant.contacts === undefined ? [] : [`Noted by you: ${plant.contacts}.`]))
          .slice(0, 1);
  return {
    kind: "reply",
    ok: true,
    title,
    headline,
    body: [...body, ...noted],
    cautions: [],
    audience,
  };
}
