import { quote } from "../quantity/clean.ts";
import { type Estimate, exactly } from "../quantity/estimate.ts";
import { readFlow } from "../quantity/flow.ts";
import { readFraction } from "../quantity/fraction.ts";
import { readMass } from "../quantity/mass.ts";
import type { Choice, Habits, Read } from "../quantity/read.ts";
import { as, type Fraction, type GramsPerDay, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { readVolume } from "../quantity/volume.ts";
import type { Purpose, TrainBox } from "./filter-train-sum.ts";
import { MEDIA } from "./media.ts";
import { readMedia } from "./read-media.ts";

const EXAMPLES =
  "“settling box 150 L; drum 110 L with 60 L ceramic rings; skimmer 60 L aerated; drum 110 L low oxygen, side stream 20 L/h, dirt 2 g/day”";
const MOST_BOXES = 20;

/** First match wins. Source: common-practice, the words keepers use. */
const PURPOSES: readonly (readonly [Purpose, RegExp])[] = [
  [
    "low oxygen",
    /\b(?:low[- ]oxygen|anoxic|anaerobic|denitrif\w*|denitrat\w*|nitrate remov\w*|deep sand)\b/i,
  ],
  ["skimmer", /\bskimmers?\b/i],
  ["algae", /\b(?:algae|refugium|macro ?algae|scrubber)\b/i],
  ["chemical", /\b(?:activated carbon|carbon|resin|phosphate remover|chemical)\b/i],
  [
    "solids",
    /\b(?:solids?|settling|settler|mechanical|socks?|brush(?:es)?|strainer|prefilter|pre-filter|floss)\b/i,
  ],
  ["nitrifying", /\b(?:nitrify\w*|biological|bio ?filter|moving bed|trickle\w*)\b/i],
];

/** The containers of a filter in the order the water takes, each with what is in it and how it is fed. */
export function readTrain(typed: string, habits: Habits): Read<readonly TrainBox[]> {
  const parts = typed
    .split(/;|\n|→|->/)
    .map((part) => part.trim())
    .filter(Boolean);
  if (parts.length === 0 || parts.length > MOST_BOXES)
    return {
      kind: "unreadable",
      message: `Name one to ${MOST_BOXES} containers, parted by semicolons: ${EXAMPLES}.`,
    };
  const boxes: TrainBox[] = [];
  const said: string[] = [];
  for (const [index, part] of parts.entries()) {
    const read = readBoxes(part, habits);
    if (read.kind === "unreadable") return read;
    if (read.kind === "ask")
      return {
        ...read,
        choices: read.choices.map((choice) => ({
          ...choice,
          text: parts.map((each, at) => (at === index ? choice.text : each)).join("; "),
        })),
      };
    boxes.push(...read.value);
    said.push(read.readAs);
  }
  if (boxes.length > MOST_BOXES)
    return { kind: "unreadable", message: `That is ${boxes.length} containers; at most ${MOST_BOXES} fit.` };
  return { kind: "read", value: numbered(boxes), readAs: said.join("; ") };
}

/** One container, or several alike: "3 x drum 110 L with 60 L ceramic rings". */
function readBoxes(part: string, habits: Habits): Read<readonly TrainBox[]> {
  const [, times, rest = part] = /^(\d{1,2}) ?[x×] ?(?=\D|\d)(.*)$/i.exec(part) ?? [];
  const read = readBox(rest, part, habits);
  if (read.kind !== "read") return read;
  const count = times === undefined ? 1 : Number(times);
  if (count < 1)
    return { kind: "unreadable", message: `${quote(part)} names no container. Try ${EXAMPLES}.` };
  return {
    kind: "read",
    value: Array.from({ length: count }, () => read.value),
    readAs: count === 1 ? read.readAs : `${count} × ${read.readAs}`,
  };
}

/** A phrase of one box: what it looks like, and what stands in it for a quantity. */
const SIDE_STREAM = /,? ?\b(?:on a |as a |in a )?side[- ]?stream,?(?: of| at)? ?([^,]*?)(?=,|$)/i;
const BYPASS =
  /,? ?(\d[\d.,–-]*(?: ?%| per ?cent))(?: of (?:it|the (?:water|flow)))? (?:by-?pass\w*|(?:goes|flows|passes) (?:past|by)(?: it)?)/i;
const DIRT =
  /,? ?\b(?:dirt|waste|sludge)(?: uses| using|:)? ?(\d[\d.,–-]* ?m?g)(?: of oxygen)? ?(?:a|per|\/) ?d(?:ay)?\b/i;
const MEDIA_WORDS = /,? ?\b(?:with|holding|filled with|of which) (\d[^,]*)/i;
const AERATED = /,? ?\b(not |un)?(?:is )?(aerated|air ?stones?|bubbled)\b/i;

function readBox(text: string, whole: string, habits: Habits): Read<TrainBox> {
  let rest = text;
  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    const found = pattern.exec(rest);
    if (found === null) return undefined;
    rest = rest.replace(found[0], " ");
    return found;
  };
  const side = take(SIDE_STREAM);
  const bypass = take(BYPASS);
  const dirt = take(DIRT);
  const aerated = take(AERATED);
  const bed = take(MEDIA_WORDS);
  const water =
    /^(.*?)[\s,]*(?<![-−–.\p{L}\p{N}])((?:about |ca\.? |~)?\d[\d.,–-]* ?(?:±[^,;a-z]*)?(?:litres?|liters?|l|m³|m3|us gal|imp gal|gal)\b)(.*)$/iu.exec(
      rest,
    );
  if (water === null)
    return {
      kind: "unreadable",
      message: `${quote(whole)} needs the litres of water in it. Try ${EXAMPLES}.`,
    };
  const [, before = "", volumeText = "", after = ""] = water;
  const again = <T>(read: Read<T>, from: string): Read<never> | undefined =>
    read.kind === "read"
      ? undefined
      : read.kind === "unreadable"
        ? read
        : { ...read, choices: inPlace(read.choices, whole, from) };
  const volume = readVolume(volumeText, habits);
  const flow = side === undefined ? undefined : readFlow((side[1] ?? "").trim(), habits);
  const share = bypass === undefined ? undefined : readFraction(bypass[1] ?? "", habits);
  const grams = dirt === undefined ? undefined : readMass(dirt[1] ?? "", habits);
  const media = bed === undefined ? undefined : readMedia(bed[1] ?? "", habits);
  if (side !== undefined && (side[1] ?? "").trim() === "")
    return {
      kind: "unreadable",
      message: `${quote(whole)}: a side stream needs its own flow, e.g. “side stream 20 L/h”.`,
    };
  const trouble =
    again(volume, volumeText) ??
    (flow && again(flow, (side?.[1] ?? "").trim())) ??
    (share && again(share, bypass?.[1] ?? "")) ??
    (grams && again(grams, dirt?.[1] ?? "")) ??
    (media && again(media, bed?.[1] ?? ""));
  if (trouble !== undefined) return trouble;
  if (volume.kind !== "read")
    return { kind: "unreadable", message: `I cannot read ${quote(whole)}. Try ${EXAMPLES}.` };
  const [medium] = media?.kind === "read" ? media.value : [];
  const words = `${before} ${after}`.replace(/[\s,]+/g, " ").trim();
  const purpose =
    PURPOSES.find(([, pattern]) => pattern.test(words))?.[0] ??
    (medium === undefined ? "other" : "nitrifying");
  return built({
    label: words.slice(0, 40) || "box",
    purpose,
    waterL: volume.value.estimate,
    isAerated: aerated !== undefined && aerated[1] === undefined,
    ...(medium === undefined ? {} : { media: medium }),
    ...(grams?.kind === "read" ? { wasteDemand: perDay(grams.value.estimate) } : {}),
    path:
      flow?.kind === "read"
        ? { kind: "side stream", flow: flow.value.estimate as Estimate<LitresPerHour> }
        : { kind: "main", bypass: share?.kind === "read" ? share.value.estimate : exactly(as<Fraction>(0)) },
  });
}

function inPlace(choices: readonly Choice[], whole: string, from: string): readonly Choice[] {
  return choices.map((choice) => ({ ...choice, text: whole.replace(from, choice.text) }));
}

function perDay({ best, low, high }: Estimate): Estimate<GramsPerDay> {
  const grams = (kg: number) => as<GramsPerDay>(kg * 1000);
  return { best: grams(best), low: grams(low), high: grams(high) };
}

function built(box: TrainBox): Read<TrainBox> {
  const litres = (estimate: Estimate<Litres>) => `${Number(estimate.best.toPrecision(3))} L`;
  const said = [
    `${box.label} (${box.purpose}) ${litres(box.waterL)} of water`,
    ...(box.media === undefined ? [] : [`${litres(box.media.litres)} of ${MEDIA[box.media.kind].name}`]),
    ...(box.isAerated ? ["aerated"] : []),
    ...(box.wasteDemand === undefined
      ? []
      : [`dirt uses ${Number(box.wasteDemand.best.toPrecision(3))} g of oxygen a day`]),
    box.path.kind === "side stream"
      ? `on a side stream of ${Number(box.path.flow.best.toPrecision(3))} L/h`
      : box.path.bypass.best > 0
        ? `${Number((box.path.bypass.best * 100).toPrecision(3))} % passes by`
        : "in the main flow",
  ];
  return { kind: "read", value: box, readAs: said.join(", ") };
}

/** Boxes of one name are told apart by their place. */
function numbered(boxes: readonly TrainBox[]): readonly TrainBox[] {
  const seen = new Map<string, number>();
  return boxes.map((box) => {
    const isRepeated = boxes.filter(({ label }) => label === box.label).length > 1;
    const count = (seen.get(box.label) ?? 0) + 1;
    seen.set(box.label, count);
    return isRepeated ? { ...box, label: `${box.label} ${count}` } : box;
  });
}
