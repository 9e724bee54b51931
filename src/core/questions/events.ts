import type { EventKind } from "../log/entry.ts";
import { EQUIPMENT } from "../log/read-event.ts";

export interface FoundEvent {
  readonly event: EventKind;
  /** What it was done with or to, in one or two words. */
  readonly about?: string;
}

const MEDIA =
  "filter media|filter material|media|carbon|resin|floss|filter floss|socks?|filter socks?|pads?|cartridges?|sponges?|foam|granules|ceramic rings";
const ANIMALS =
  "trigger(?:fish)?s?|groupers?|tangs?|clownfish|clowns?|damsels?|wrasses?|eels?|morays?|angel(?:fish)?s?|gob(?:y|ies)|fish(?:es)?|shrimps?|snails?|crabs?|rays?|sharks?|puffers?|lionfish|corals?|anemones?|frags?|chromis|anthias|seahorses?|animals?|blenn(?:y|ies)";

interface Rule {
  readonly event: EventKind;
  readonly pattern: RegExp;
}

/** The first that matches wins; a group named `about` tells with what. */
export const RULES: readonly Rule[] = [
  {
    event: "water change",
    pattern:
      /\b(?:partial )?water[- ]?chang(?:e[ds]?|ing)\b|\bwcs?\b|\bw\/c\b|\bpwc\b|\bchang(?:e[ds]?|ing) (?:[a-z]+ )?(?:[a-z]+ )?(?:of )?(?:the |some |my )?water\b|\bwater\b.{0,20}\bchanged\b|\bchange [\d.,]+ ?(?:%|l|gal|lit)/u,
  },
  { event: "harvest", pattern: /\bharvest(?:s|ed|ing)?\b|\b(?:cut|trimmed|pruned|trim)\b.*\balgae\b/u },
  {
    event: "media change",
    pattern: new RegExp(
      `\\b(?:chang\\w*|replac\\w*|swap\\w*|renew\\w*|new)\\b (?:out )?(?:the |my |some )?(?<about>${MEDIA})\\b|\\b(?<about2>${MEDIA}) (?:was |were )?(?:chang\\w*|replac\\w*|swap\\w*|renew\\w*)`,
      "u",
    ),
  },
  {
    event: "feeding",
    pattern:
      /\b(?:fed|feed(?:ing|ings|s)?)\b|\b(?:cut\w*|less|reduc\w*|more|halv\w*) (?:the |my |their )?food\b/u,
  },
  {
    event: "death",
    pattern: new RegExp(
      `\\b(?:die[ds]?|deaths?|dead|passed away)\\b|\\blos[et] (?:an?|any|my|the) (?:${ANIMALS})\\b`,
      "u",
    ),
  },
  {
    event: "dose",
    pattern:
      /\b(?:dose[ds]?|dosing|dosage)\b(?: (?:the |some |my )?(?<about>(?!on\b|in\b|to\b|at\b|of\b|the\b|today\b|help\b|raise\b)[a-z]+))?/u,
  },
  {
    event: "equipment off",
    pattern: new RegExp(
      `\\b(?:turn\\w*|switch\\w*|shut|went|go|come|came|took|take|taken|unplug\\w*)\\b.{0,12}\\b(?<about>${EQUIPMENT})\\b.{0,6}\\boff\\b|\\b(?<about2>${EQUIPMENT})\\b.{0,20}\\b(?:off|stop\\w*|fail\\w*|broke|died|unplugged)\\b|\\b(?:turn\\w*|switch\\w*|shut) off (?:the |my )?(?<about3>${EQUIPMENT})\\b`,
      "u",
    ),
  },
  {
    event: "equipment on",
    pattern: new RegExp(
      `\\b(?:turn\\w*|switch\\w*|put|start\\w*|fitted|install\\w*|add\\w*|run|running|new|plugged)\\b.{0,12}\\b(?<about>${EQUIPMENT})\\b(?:.{0,6}\\bon\\b)?|\\b(?<about2>${EQUIPMENT})\\b.{0,20}\\b(?:on|start\\w*|install\\w*)\\b`,
      "u",
    ),
  },
  {
    event: "livestock in",
    pattern: new RegExp(
      `\\b(?:add(?:ed|ing)?|got|get|bought|buy|introduc\\w*|put|stock(?:ed)?)\\b (?:in )?(?:the |my |a |an |another |some |new |\\d+ )*(?<about>(?:[a-z]+ )?(?:${ANIMALS}))\\b|\\b(?<about2>${ANIMALS})\\b.{0,12}\\b(?:go in|went in|added|come in|came in|arrive\\w*|go into|put in|introduced)\\b`,
      "u",
    ),
  },
];

/** The event a question speaks of. */
export function findEventWord(text: string): FoundEvent | undefined {
  for (const { event, pattern } of RULES) {
    const match = pattern.exec(text);
    if (match === null) continue;
    const about = match.groups?.["about"] ?? match.groups?.["about2"] ?? match.groups?.["about3"];
    return { event, ...(about === undefined ? {} : { about: about.trim() }) };
  }
  return undefined;
}
