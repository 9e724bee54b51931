import { quote } from "../quantity/clean.ts";
import { readMass } from "../quantity/mass.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { Seed } from "./cycling-input.ts";
import { MEDIA } from "./media.ts";
import { readMedia } from "./read-media.ts";

const EXAMPLES = "“nothing”, “culture”, “20 kg live rock” or “30 L moving bed from sea water”";

/** Where a new filter's first bacteria come from. */
export function readSeed(typed: string, habits: Habits): Read<Seed> {
  const text = typed.trim().toLowerCase().replace(/\s+/g, " ");
  if (/^(?:nothing|none|no|bare|new)\b/.test(text))
    return { kind: "read", value: { kind: "nothing" }, readAs: "nothing but what drifts in" };
  if (/^(?:a )?(?:bottled? |bacteri\w* |starter )*(?:culture|bacteria|starter|bottle)s?$/.test(text))
    return { kind: "read", value: { kind: "culture" }, readAs: "a bottled culture, strength unknown" };
  const rock = /^(.+?) (?:of )?(?:live |living )?rocks?$/.exec(text);
  if (rock !== null && !/\d ?l(?:itres?|iters?)?\b/.test(rock[1] ?? ""))
    return readRock(rock[1] ?? "", habits);
  const moved = /^(.+?),? (?:from|grown in|out of) (?:a )?(sea|salt|marine|fresh)[ -]?(?:water)?.*$/.exec(
    text,
  );
  const media = readMedia(moved?.[1] ?? text, habits);
  const suffix = moved === null ? "" : ` from ${moved[2] === "fresh" ? "fresh" : "sea"} water`;
  if (media.kind === "ask")
    return { ...media, choices: media.choices.map((each) => ({ ...each, text: `${each.text}${suffix}` })) };
  const [bed] = media.kind === "read" ? media.value : [];
  if (media.kind === "unreadable" || bed === undefined)
    return { kind: "unreadable", message: `${quote(typed)} is no start I know. Try ${EXAMPLES}.` };
  if (moved === null)
    return {
      kind: "ask",
      question:
        "Did that filter run in sea water or in fresh water? Bacteria of one hardly work in the other.",
      choices: ["sea", "fresh"].map((water) => ({
        label: `from ${water} water`,
        text: `${text} from ${water} water`,
      })),
    };
  const from = moved[2] === "fresh" ? "fresh water" : "sea water";
  return {
    kind: "read",
    value: { kind: "mature media", medium: bed.kind, litres: bed.litres, from },
    readAs: `${media.readAs.split(" of ")[0]} of ${MEDIA[bed.kind].name}, grown in ${from}`,
  };
}

function readRock(massText: string, habits: Habits): Read<Seed> {
  const mass = readMass(massText, habits);
  if (mass.kind === "unreadable") return mass;
  if (mass.kind === "ask")
    return { ...mass, choices: mass.choices.map((each) => ({ ...each, text: `${each.text} live rock` })) };
  return {
    kind: "read",
    value: { kind: "live rock", massKg: mass.value.estimate },
    readAs: `${mass.readAs} of live rock`,
  };
}
