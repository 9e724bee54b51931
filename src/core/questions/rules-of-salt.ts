import type { FigureKind, FoundFigure } from "./figures.ts";
import type { Frame } from "./frame.ts";
import type { Figures } from "./meaning.ts";
import type { Rule } from "./rules-of-record.ts";

/** The first figure of one of these kinds. */
export function figureOf(frame: Frame, ...kinds: readonly FigureKind[]): FoundFigure | undefined {
  return frame.figures.find(({ kind }) => kinds.includes(kind));
}

/** Figures by their part, without those that are absent. */
export function parts(entries: Readonly<Record<string, FoundFigure | string | undefined>>): {
  readonly quantities?: Figures;
} {
  const quantities = Object.fromEntries(
    Object.entries(entries).flatMap(([name, entry]) =>
      entry === undefined ? [] : [[name, typeof entry === "string" ? entry : entry.text] as const],
    ),
  );
  return Object.keys(quantities).length === 0 ? {} : { quantities };
}

const isSalty = ({ kind, text }: FoundFigure): boolean =>
  kind === "salinity" || kind === "gravity" || (kind === "bare" && /^(?:[1-3]\d|4[0-5])$/.test(text));
const isPlainlySalty = ({ kind }: FoundFigure): boolean => kind === "salinity" || kind === "gravity";
const EVAPORATING =
  /\b(?:evaporat\w*|top[- ]?(?:off|up)|topoff|topup|ato)\b|\b(?:rose|crept|climbed|went|gone|drifted)\b.*\b(?:fresh ?water|rodi|ro|freshwater)\b/;

const saltMix: Rule = (f) => {
  const { text } = f;
  if (EVAPORATING.test(text) || (f.parameter !== undefined && f.parameter !== "salinity")) return undefined;
  const isMixing =
    /\bsalt ?water\b|\b(?:mix|make|prepare|brew|batch)\b/.test(text) &&
    f.figures.some(({ kind }) => kind === "volume");
  const isSalt = /\b(?:salt|salt mix|sal)\b/.test(text.replace(/salt ?water/g, ""));
  if (!isMixing && !isSalt) return undefined;
  if (
    /\b(?:brand|price|cost|cheap\w*|best|buy|which|table|kosher|epsom|in the sea|why|remove|get rid|with salt water or)\b|\bwhat salt\b/.test(
      text,
    )
  )
    return undefined;
  if (figureOf(f, "share") !== undefined) return undefined;
  // Two waters brought together are no new mix.
  if (f.figures.filter(({ kind }) => kind === "volume").length > 1 && /\bwith\b|\band\b/.test(text))
    return undefined;
  const volume = figureOf(f, "volume");
  const salinity = f.figures.find(isSalty);
  const asks =
    /\b(?:how (?:much|many|do)|salt (?:for|needed|required)|amount|need|mix|make|prepare|want|give me)\b/.test(
      text,
    );
  const lack = volume === undefined ? 0.1 : 0;
  if (
    volume === undefined &&
    salinity === undefined &&
    !/^(?:so )?how much salt(?: mix)?(?: do i (?:need|add|use))?$/.test(text)
  )
    return undefined;
  return {
    intent: "salt-mix",
    ...parts({ volume, salinity }),
    confidence: (asks || (volume && salinity) ? 0.93 : 0.75) - lack,
  };
};

const SCALE =
  "(?:ppt|psu|s\\.?g\\.?|specific gravity|gravity|conductivity|salinity|ms/cm|g/kg|parts per thousand|hydrometer|refractometer|swing arm)";

const saltConvert: Rule = (f) => {
  const { text } = f;
  const salty = f.figures.filter(isPlainlySalty);
  const [salinity, second] = salty;
  if (salinity === undefined || second !== undefined || f.figures.length > 1) return undefined;
  if (
    EVAPORATING.test(text) ||
    /\b(?:raise|lower|get|bring|increase|want|mix|make|add|safe|ok|okay|good|bad|log|record|how much salt|how much sal)\b/.test(
      text,
    )
  )
    return undefined;
  const isTurned =
    new RegExp(
      `\\b(?:in|to|as|into|is|on|equals?)\\b.{0,8}\\b${SCALE}\\b|\\b(?:what|how many|which|convert|turn|translate)\\b.*\\b${SCALE}\\b|=|\\b${SCALE} (?:of|for|at|from)\\b`,
    ).test(text.replace(salinity.text, " # ").replace(/ # ?(?:ppt|psu|sg)/, " # ")) ||
    /\b(?:convert|turn)\b/.test(text);
  return isTurned ? { intent: "salt-convert", ...parts({ salinity }), confidence: 0.92 } : undefined;
};

const saltAdjust: Rule = (f) => {
  const { text } = f;
  if (EVAPORATING.test(text) || (f.event !== undefined && f.event !== "water change")) return undefined;
  const salty = f.figures.filter(isPlainlySalty);
  const named = f.parameter === "salinity";
  if (f.parameter !== undefined && !named) return undefined;
  if (salty.length === 0 && !(named && f.figures.length > 0)) return undefined;
  const isPair = f.figures.length === 2 && /\bfrom\b.*\bto\b/.test(text);
  const figures = salty.length > 0 && !isPair ? salty : f.figures.filter((each) => isSalty(each));
  if (figures.length > 2) return undefined;
  const wants =
    /\b(?:raise|lower|bring|bump|nudge|push|fix|up from|down from|get|increase|decrease|reduce|adjust|correct|drop|go|want|need|up to|down to|move|take|should be)\b/.test(
      text,
    );
  if (!wants || /\b(?:how much salt for|salt for|when|mix|did|since|until|log|record)\b/.test(text))
    return undefined;
  if (figures.length === 2) {
    const [a, b] = figures;
    return { intent: "salt-adjust", ...parts({ from: sharingUnit(a, b), to: b }), confidence: 0.92 };
  }
  if (!/\bto\b|\bwant\b|\bup\b|\bdown\b/.test(text)) return undefined;
  return {
    intent: "salt-adjust",
    ...parts({ to: figures[0] }),
    confidence: named || /\bsg\b/.test(text) ? 0.88 : 0.7,
  };
};

/** In "from 33 to 35 ppt" the unit is said once and holds for both. */
function sharingUnit(first: FoundFigure | undefined, second: FoundFigure | undefined): string | undefined {
  const unit = /[a-z/.]+$/.exec(second?.text ?? "")?.[0];
  return first?.kind === "bare" && unit !== undefined ? `${first.text} ${unit}` : first?.text;
}

const topOff: Rule = (f) => {
  const { text } = f;
  if (!EVAPORATING.test(text)) return undefined;
  if (/\b(?:when did|last|log|record|wire|wiring|fail\w*|stuck|flood)\b/.test(text)) return undefined;
  const volumes = f.figures.filter(({ kind }) => kind === "volume");
  const salty = f.figures.filter(isPlainlySalty);
  if (volumes.length > 1 || salty.length > 2) return undefined;
  const [a, b] = salty;
  const given = b === undefined ? { now: a } : { full: a, now: b };
  return {
    intent: "top-off",
    ...parts({ evaporated: volumes[0], ...given }),
    confidence: f.figures.length > volumes.length + salty.length ? 0.7 : 0.9,
  };
};

export const RULES_OF_SALT: readonly Rule[] = [saltMix, saltConvert, saltAdjust, topOff];
