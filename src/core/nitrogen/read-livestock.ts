import { quote } from "../quantity/clean.ts";
import { mapEstimate } from "../quantity/estimate.ts";
import { readLength } from "../quantity/length.ts";
import { readMass } from "../quantity/mass.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { as, type Grams } from "../quantity/units.ts";
import { FISH, type Fish, type FishKey } from "./fish.ts";
import { matching } from "./name-match.ts";
import { readList } from "./read-list.ts";
import type { AnimalGroup } from "./stocking-input.ts";

const EXAMPLES = "“1 brown-marbled grouper 55 cm; 2 triggerfish 25 cm; 1 stingray 4 kg”";
const MOST_ANIMALS = 10_000;

/** Words of the trade for kinds that the table names otherwise. */
const OTHER_NAMES: Readonly<Partial<Record<FishKey, readonly string[]>>> = {
  "pink anemonefish": ["clownfish", "pink skunk clownfish"],
  "clark's anemonefish": ["clownfish"],
  porcupinefish: ["puffer", "porcupine puffer"],
  moray: ["moray eel", "eel"],
  "yellow tang": ["surgeonfish"],
  "powder blue tang": ["surgeonfish"],
};

const TABLE = (Object.keys(FISH) as FishKey[]).map((key) => ({
  key,
  names: [key, FISH[key].name, FISH[key].scientificName, ...(OTHER_NAMES[key] ?? [])],
}));

/** Animals with their number and their length or mass: "2 queen triggerfish 25 cm; 1 stingray 4 kg". */
export function readLivestock(typed: string, habits: Habits): Read<readonly AnimalGroup[]> {
  return readList(typed, EXAMPLES, (part) => readGroup(part, habits));
}

function readGroup(part: string, habits: Habits): Read<AnimalGroup> {
  const pieces =
    /^(?:(\d{1,6}) ?(?:x|×)? ?)?([\p{L}][\p{L}'’ -]*?)[ ,:]*(?:of |about (?=\d)|at |@)?((?:about |ca\.? |~)?\d.*)$/u.exec(
      part,
    );
  if (pieces === null) return unreadable(part, "needs a name and a length or a mass");
  const [, countText = "1", name = "", sizeText = ""] = pieces;
  if (/ -$/.test(name)) return unreadable(part, "goes below zero, and no animal does");
  const count = Number(countText);
  if (!(count >= 1 && count <= MOST_ANIMALS)) return unreadable(part, `has ${countText} animals`);
  const size = sizeText.replace(/ ?(each|apiece|long|tl|total length)\.?$/i, "");
  const label = name.trim().toLowerCase();
  const length = readLength(size, habits);
  if (length.kind === "ask") return asked(length, countText, label);
  if (length.kind === "read") return byLength(part, count, label, size, length);
  const mass = readMass(size, habits);
  if (mass.kind === "ask") return asked(mass, countText, label);
  if (mass.kind === "unreadable")
    return unreadable(part, `has ${quote(size)}, which is neither a length nor a mass`);
  const massG = mapEstimate(mass.value.estimate, (kg) => as<Grams>(kg * 1000));
  const [only, ...others] = matching(label, TABLE);
  const habit = only !== undefined && others.length === 0 ? FISH[only].habit : "not said";
  return {
    kind: "read",
    value: { label, count, body: { kind: "mass", massG, habit } },
    readAs: `${count} ${label}, ${mass.readAs}${count > 1 ? " each" : ""}`,
  };
}

function byLength(
  part: string,
  count: number,
  label: string,
  size: string,
  length: Extract<ReturnType<typeof readLength>, { kind: "read" }>,
): Read<AnimalGroup> {
  const [only, ...others] = matching(label, TABLE);
  if (only === undefined)
    return unreadable(
      part,
      `names ${quote(label)}, of which I have no length–weight figures; give its mass instead, e.g. “${count} ${label} 2 kg”, or the nearest relative that I know`,
    );
  if (others.length > 0)
    return {
      kind: "ask",
      question: `Which is nearest to your ${quote(label)}? It sets the mass for the length.`,
      choices: [only, ...others].slice(0, 20).map((key) => ({
        label: `${FISH[key].name} (${FISH[key].scientificName})`,
        text: `${count} ${key} ${size}`,
      })),
    };
  const fish: Fish = FISH[only];
  return {
    kind: "read",
    value: { label: fish.name, count, body: { kind: "length", fish: only, lengthCm: length.value.estimate } },
    readAs: `${count} ${fish.name}, ${length.readAs}${count > 1 ? " each" : ""}`,
  };
}

function asked<T>(read: Extract<Read<T>, { kind: "ask" }>, count: string, label: string): Read<AnimalGroup> {
  return {
    ...read,
    choices: read.choices.map((choice) => ({ ...choice, text: `${count} ${label} ${choice.text}` })),
  };
}

function unreadable(part: string, why: string): Read<AnimalGroup> {
  return { kind: "unreadable", message: `${quote(part)} ${why}. Try ${EXAMPLES}.` };
}
