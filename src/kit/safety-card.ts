import type { Harm } from "../core/questions/people-first.ts";
import type { Tank } from "../records/tank.ts";
import type { Audience, Reply } from "./reply.ts";

/** The first thing to do, by what happened: common first-aid practice, no figures, no treatment. */
const FIRST: Readonly<Record<Harm, string>> = {
  sting: "Out of the water and away from the animal. Sit down, and do not stay alone.",
  bite: "Out of the water. Press on what bleeds, and do not stay alone.",
  wound: "Out of the water. Press on what bleeds, and do not stay alone.",
  shock:
    "Touch neither the person, nor the tank, nor anything wet. Switch off at the breaker first; if you cannot, keep away and call.",
  burn: "Rinse with plenty of clean running water, eyes as well, while somebody calls.",
  swallowed:
    "Do not make anybody vomit. Keep the bottle at hand: its label is what the poison line asks for.",
  gas: "Everybody out into fresh air now, and nobody back in. Switch nothing on or off; call from outside.",
  unwell: "Out of that room into fresh air, and do not stay alone.",
};

const AFTERWARDS: Readonly<Partial<Record<Harm, string>>> = {
  shock: "Leave the power off until a licensed electrician has looked at it.",
};

/**
 * What is said when somebody is hurt, instead of any sum. Numbers are those the member has noted; none is
 * made up, and none is shown to a whole channel.
 */
export function safetyCard(harm: Harm, audience: Audience, tanks: readonly Tank[]): Reply {
  const noted = tanks.flatMap(({ name, plant }) =>
    plant.contacts === undefined ? [] : [`Noted for ${name}: ${plant.contacts}.`],
  );
  const after = AFTERWARDS[harm];
  return {
    kind: "reply",
    ok: true,
    title: "People first",
    headline: "Call the emergency number or the poison line of your country now",
    body: [
      FIRST[harm],
      "Trouble breathing, a swelling face, fainting, chest pain, heavy bleeding, a venomous sting or something swallowed: an ambulance at once, however small it looks.",
      ...(after === undefined ? [] : [after]),
      ...(audience === "channel"
        ? []
        : noted.length > 0
          ? noted
          : ["No number of yours is kept here; /plant people notes them for the next time."]),
    ],
    cautions: [
      {
        level: "danger",
        text: "I do sums about water and nobody watches this chat: do not wait for an answer here. Nothing else was done with what you typed.",
      },
    ],
    audience,
  };
}
