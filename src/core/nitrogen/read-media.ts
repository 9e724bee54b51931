import { quote } from "../quantity/clean.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { readVolume } from "../quantity/volume.ts";
import { MEDIA, type MediumKind } from "./media.ts";
import { matching } from "./name-match.ts";
import { readList } from "./read-list.ts";
import type { InstalledMedia } from "./stocking-input.ts";

const EXAMPLES = "“60 L ceramic rings; 40 L foam 20 ppi”";

const OTHER_NAMES: Readonly<Partial<Record<MediumKind, readonly string[]>>> = {
  "moving bed": ["plastic moving bed", "moving media"],
  "trickle plastic": ["trickling plastic", "structured plastic"],
  "coarse foam": ["foam 10 ppi", "foam"],
  "medium foam": ["foam 20 ppi", "foam"],
  "fine foam": ["foam 30 ppi", "foam"],
  "ceramic rings": ["rings", "ceramic"],
  "sintered media": ["sintered", "porous media", "porous pieces", "sintered glass"],
  "fluidised sand": ["fluidized sand", "sand"],
  "live rock": ["rock"],
};

const TABLE = (Object.keys(MEDIA) as MediumKind[]).map((key) => ({
  key,
  names: [key, MEDIA[key].name, ...(OTHER_NAMES[key] ?? [])],
}));

/** Filter material and how much of each: "60 L ceramic rings; 40 L foam 20 ppi". */
export function readMedia(typed: string, habits: Habits): Read<readonly InstalledMedia[]> {
  return readList(typed, EXAMPLES, (part) => readBed(part, habits));
}

function readBed(part: string, habits: Habits): Read<InstalledMedia> {
  const pieces =
    /^((?:about |ca\.? |~)?\d[\d.,/–x× -]*(?:litres?|liters?|l|ml|m³|m3|us gal|imp gal|gal|qt|ft³|ft3|cm)\b)\.? ?(?:of )?(.+)$/i.exec(
      part,
    );
  if (pieces === null)
    return { kind: "unreadable", message: `${quote(part)} needs a volume and a material. Try ${EXAMPLES}.` };
  const [, volumeText = "", name = ""] = pieces;
  const volume = readVolume(volumeText, habits);
  if (volume.kind === "ask")
    return { ...volume, choices: volume.choices.map((c) => ({ ...c, text: `${c.text} ${name}` })) };
  if (volume.kind === "unreadable") return volume;
  const found = matching(name, TABLE);
  const [only, ...others] = found;
  if (only === undefined || others.length > 0)
    return {
      kind: "ask",
      question: `Which material is ${quote(name)}?`,
      choices: (only === undefined ? TABLE.map(({ key }) => key) : found).map((key) => ({
        label: MEDIA[key].name,
        text: `${volumeText} ${key}`,
      })),
    };
  return {
    kind: "read",
    value: { kind: only, litres: volume.value.estimate },
    readAs: `${volume.readAs} of ${MEDIA[only].name}`,
  };
}
