import { type ParameterId, parameter as parameterById } from "../log/parameters.ts";
import type { Frame } from "./frame.ts";
import type { Meaning } from "./meaning.ts";

/** What one rule makes of a question: a meaning, or nothing. The tank is added by the caller. */
export type Rule = (frame: Frame) => Meaning | undefined;

const MOVING =
  /\b(?:going|gone|go|goes|went|coming|come|came|crept|creeping|heading|headed|moving) (?:[a-z]+ )?(?:up|down|higher|lower)\b|\b(?:head(?:ing|ed)|which way|on the way (?:up|down)|through the roof|over time|under control|out of control|(?:lower|higher|more|less|worse|better) than|compared?|lately|recover\w*|plateau\w*|level(?:l?ed|l?ing)? (?:off|out)|flatten\w*|wobbl\w*|bounc\w*|budg\w*|wander\w*|settl\w*|mov(?:e|es|ed|ing)|going away|direction|surg\w*|plummet\w*|tank(?:ed|ing)|accumulat\w*|deplet\w*|consum\w*|ris(?:es?|ing|en)|rose|climb\w*|increas\w*|fall(?:s|ing|en)?|fell|drop(?:s|ped|ping)?|declin\w*|decreas\w*|drift\w*|creep\w*|slip\w*|sink(?:s|ing)?|sank|swing\w*|soar\w*|grow(?:s|ing)?|build(?:s|ing)? up|built up|stable|steady|trend(?:s|ing)?|fluctuat\w*|jump(?:ed|ing)?|spik(?:e|ed|ing)|shift\w*|crash\w*|chang(?:ed|ing|es)|chang(?:e|ed) much|losing|lose|lost)\b|\bgetting (?:worse|better|higher|lower|out of hand)\b|\bup or down\b|\b(?:stay(?:ed|ing)?|hold(?:ing)?) (?:the same|steady|put)\b|\bgoing (?:up|down)\b|\bget(?:ting)? (?:worse|better|higher|lower)\b/u;
const DRAW = /\b(?:graph|plot|chart|curve|trend|trends|trend line|history of|draw)\b/u;
const DOING = /\b(?:happen(?:ed|ing)|doing|going on|behav\w+|done lately|looking lately|moving)\b/u;
const ACHIEVED =
  /\b(?:before and after|help(?:s|ed|ing)?|work(?:s|ed|ing)?|(?:do|does|did|done|make|makes|made) (?:any|some|a|much|the|no)?(?: [a-z]+)? ?(?:thing|anything|good|difference|change|dent|impact|effect)|any good|any difference|difference|effect(?:s|ive)?|impact|pay off|paid off|worth it|useful|what did)\b/u;
const BROUGHT =
  /\b(?:bring|brought|lower(?:ed)?|raise[ds]?|reduce[ds]?|drop(?:ped)?|cut|fix(?:ed)?|improve[ds]?|push(?:ed)?|change[ds]?|affect(?:ed)?|get|got|clear(?:ed)?)\b/u;

const trend: Rule = (f) => {
  const { text, parameter, since } = f;
  if (/\bwater change.{0,20}\b(?:from|do to)\b/.test(text)) return undefined;
  const isMoving = MOVING.test(withoutChange(text)) || DRAW.test(text);
  if (parameter === undefined) {
    return /\b(?:it|they|things|everything)\b/.test(text) &&
      MOVING.test(text) &&
      f.figures.length === 0 &&
      !/\b(?:fish|light|price)\b/.test(text)
      ? { intent: "trend", ...sinceOf(f), confidence: 0.82 }
      : undefined;
  }
  if (
    /\bwhen (?:will|does|do|is|are)\b|\b(?:how long|how soon|days?|time) (?:left )?(?:until|till|before)\b/.test(
      text,
    )
  )
    return undefined;
  const isSince =
    since !== undefined &&
    !/\b(?:before and|when|how long|days|weeks|time|long)\b/.test(text.replace(since, "")) &&
    f.figures.length === 0;
  const isAsked =
    isSince ||
    isMoving ||
    DOING.test(text) ||
    (since !== undefined && /\b(?:change|changed|how|what|any)\b/.test(text));
  if (!isAsked) {
    return /\bhow(?:s| is| are| has| have)\b.*\b(?:lately|recently|these days|over time|been)\b/.test(text)
      ? { intent: "trend", parameter, ...sinceOf(f), confidence: 0.85 }
      : undefined;
  }
  const isBare = !isMoving && !/\b(?:happen|doing|going on)/.test(text);
  const hasFigure = f.figures.some(({ kind }) => kind !== "span");
  return {
    intent: "trend",
    parameter,
    ...sinceOf(f),
    confidence: hasFigure ? 0.6 : isBare ? 0.8 : 0.92,
  };
};

function sinceOf({ since, date, text }: Frame): { readonly since?: string } {
  if (since !== undefined) return { since };
  return date === undefined || /\b(?:now|today)\b/.test(date) || !text.includes(date) ? {} : { since: date };
}

const effect: Rule = (f) => {
  const { parameter, text } = f;
  const event = f.event ?? (/\bbefore and after\b/.test(text) ? eventInSince(f) : undefined);
  if (event === undefined || event === "death") return undefined;
  // The size of a change belongs to it; any other figure belongs to another question.
  if (f.figures.some(({ kind }) => kind !== "span" && kind !== "share" && kind !== "volume"))
    return undefined;
  if (
    /^(?:when|how long|how many|how much (?!did|has|have)|how big|log|record|will|would|can|should)\b/.test(
      text,
    )
  )
    return undefined;
  const isPast =
    /\b(?:did|has|have|was|were|effect|impact|difference|making an?|any change|before and after|helped|worked|made)\b/.test(
      text,
    );
  const rest = withoutChange(text);
  const isAchieved = ACHIEVED.test(rest) || (parameter !== undefined && BROUGHT.test(rest));
  if (!isPast || !isAchieved) return undefined;
  if (f.event !== undefined && f.since !== undefined && MOVING.test(text)) return undefined;
  return {
    intent: "effect",
    event,
    ...(f.about === undefined ? {} : { about: f.about }),
    ...(parameter === undefined ? {} : { parameter }),
    ...(f.date === undefined ? {} : { at: f.date }),
    confidence: 0.9,
  };
};

/** A "change of water" is no change in the water. */
function withoutChange(text: string): string {
  return text.replace(/water changes?|wcs?\b|changing the|changed? the water/g, "#");
}

const until: Rule = (f) => {
  const { text, parameter } = f;
  if (parameter === undefined || parameter === "oxygen") return undefined;
  const asksWhen =
    /\b(?:how (?:long|soon|many (?:days|weeks|months)|much (?:time|longer))|when (?:will|does|do|is|are|would|should|can i expect)|^(?:will|would|does) .*\b(?:be over|be above|be under|be below|reach|hit|pass|get to|exceed|go over|cross)|(?:days|weeks|time) (?:left|until|till|before|to)|how far (?:off|away)|(?:estimate|guess|date|day) (?:when )?|forecast|eta for|predict|eta|projected?|eta|at this rate|if (?:this|it) (?:goes on|keeps?|continues)|when(?:s| is)? .{0,20}gonna|what day|which day)\b/.test(
      text,
    );
  const reaches =
    /\b(?:until|till|before|hit|hits|reach\w*|get(?:s)? to|go(?:es)? (?:over|under|above|below|past)|drop\w* (?:below|under|to)|fall\w* (?:below|under|to)|pass\w*|exceed\w*|over|under|above|below|cross\w*|to|at|is|be|too (?:high|low)|dangerous|limit)\b/.test(
      text,
    );
  if (!asksWhen || !reaches || /\b(?:since|ago|last|did)\b/.test(text)) return undefined;
  const figures = f.figures.filter(({ kind }) => kind !== "span");
  const [limit, ...others] = figures;
  if (others.length > 0) return undefined;
  return {
    intent: "until",
    parameter,
    ...(limit === undefined ? {} : { limit: limit.text }),
    confidence: limit === undefined ? 0.82 : 0.93,
  };
};

const lastEvent: Rule = (f) => {
  const { text, event, parameter } = f;
  const asksWhen =
    /\bwhen\b.*\b(?:did|was|were|have|had|last)\b|\b(?:how|is it|been) (?:long|many (?:days|weeks|hours)|much time)\b.*\b(?:since|ago)\b|\b(?:days|weeks|time|hours) since\b|\bdate of\b|\bwhat (?:day|date)\b/.test(
      text,
    ) ||
    /^(?:last|latest|most recent|previous) /.test(text) ||
    /\b(?:when|whens)$|\bwhens\b|\blast (?:done|happened|time)\b|\bhow recent(?:ly)?\b/.test(text);
  const isTold = /^(?:about )?when (?:i|we) (?!get|have|add|do)\b/.test(text);
  const asksWhether =
    /^(?:have|did) (?:i|we|anyone|someone)\b/.test(text) &&
    (f.date !== undefined || /\b(?:yet|already|lately|recently)\b/.test(text));
  const about = f.about === undefined ? {} : { about: f.about };
  const isTest = /\b(?:test|tested|testing|measure[d]?|measuring|check(?:ed)?|log(?:ged)?)\b/.test(text);
  if (asksWhether && parameter !== undefined && isTest && event === undefined)
    return { intent: "last-event", parameter, confidence: 0.84 };
  if (
    asksWhen &&
    parameter !== undefined &&
    isTest &&
    /\b(?:when|since|ago|how long|how recent(?:ly)?|date|last time)\b/.test(text) &&
    (event === undefined || event === "dose")
  )
    return { intent: "last-event", parameter, confidence: 0.93 };
  const found = event ?? eventInSince(f);
  if (found === undefined) return undefined;
  if (/\bwhen (?:should|will|can|do i|must|would)\b|\bnext\b/.test(text)) return undefined;
  if (asksWhether && !ACHIEVED.test(withoutChange(text)))
    return { intent: "last-event", event: found, ...about, confidence: 0.84 };
  if (!asksWhen && !isTold) return undefined;
  return { intent: "last-event", event: found, ...about, confidence: 0.93 };
};

/** In "how long since the last water change" the event stands behind "since". */
function eventInSince({ since }: Frame): Meaning["event"] {
  if (since === undefined) return undefined;
  if (/\bwater\b.*\bchange|\bchange[d]?\b.*\bwater|\bwc\b/.test(since)) return "water change";
  if (/\bharvest/.test(since)) return "harvest";
  if (/\bfe(?:d|ed\w*)\b/.test(since)) return "feeding";
  if (/\bdos(?:ed?|ing)\b/.test(since)) return "dose";
  if (/\b(?:media|carbon|floss|sponge|socks?|resin)\b/.test(since)) return "media change";
  if (/\b(?:died|death)\b/.test(since)) return "death";
  return undefined;
}

const value: Rule = (f) => {
  const { text, parameter, date } = f;
  if (parameter === undefined || date === undefined || /^(?:right )?now$|^today$/.test(date))
    return undefined;
  if (f.figures.some(({ kind }) => kind !== "span")) return undefined;
  if (/\bbeen\b/.test(text)) return undefined;
  if (MOVING.test(text) && !/\b(?:highest|lowest|average|mean|max|min|peak)\b/.test(text)) return undefined;
  if (
    f.event !== undefined ||
    /\b(?:(?<!(?:did|have) (?:i|we) )log|(?<!(?:did|have) (?:i|we) )record|save|should|will|convert|safe)\b/.test(
      text,
    ) ||
    /\bsince\b/.test(text)
  )
    return undefined;
  if (
    /^(?:when|did|have|is|are|how long)\b|^how (?:has|have|did)\b.*\b(?:been|over|done|changed)\b/.test(text)
  )
    return undefined;
  return { intent: "value", parameter, at: date.replace(/^(?:in|on|at) /, ""), confidence: 0.9 };
};

const latest: Rule = (f) => {
  const { text, parameters } = f;
  const parameter = f.parameter ?? felt(text);
  if (parameter === undefined || parameters.length > 1) return undefined;
  if (f.event !== undefined || MOVING.test(text) || DRAW.test(text) || f.since !== undefined)
    return undefined;
  if (f.figures.length > 0 || (f.date !== undefined && !/now|today/.test(f.date))) return undefined;
  const others = text
    .split(/[^a-z\d]+/)
    .filter((word) => word !== "" && !OF_LATEST.has(word) && !namesOf(parameter).has(word));
  if (/\bstand for\b/.test(text)) return undefined;
  const isDefinition =
    /^(?:what|whats) (?:is|are)? ?[a-z]+\d?$/.test(text) && f.tank === undefined && !/^whats/.test(text);
  // What begins as a yes-or-no question asks for more than a figure.
  const isYesOrNo =
    /^(?:is|are|do(?! you know)|does|has|have|did|will|would|am|was|were|any|can|could|if)\b/.test(text);
  if (others.length > 0 || isDefinition || isYesOrNo)
    return { intent: "latest", parameter, confidence: others.length > 1 ? 0.5 : 0.7 };
  return { intent: "latest", parameter, confidence: 0.9 };
};

/** All that "what is my nitrate" is made of, in its many wordings: with any other word, something else is asked. */
const OF_LATEST = new Set(
  "what whats is was are my the at now right current currently latest last most recent newest present reading readings value values level levels test tests result results number figure measurement do you know tell show give get got me us i we have had how hows high low much many in inside on of for water tank where wheres does did stand stands sit sits please today moment read reads measured measure measured just a our mine that this there again it s then and so ok salty saline warm hot cold cool quick check see can sitting standing showing".split(
    " ",
  ),
);

function namesOf(id: ParameterId): ReadonlySet<string> {
  return new Set(parameterById(id).spellings.flatMap((spelling) => spelling.split(/[ /]/)));
}

/** "how salty is my tank", "how warm is the water". */
function felt(text: string): Meaning["parameter"] {
  if (/^how (?:salty|saline)\b/.test(text)) return "salinity";
  return /^how (?:warm|hot|cold|cool)\b/.test(text) ? "temperature" : undefined;
}

export const RULES_OF_RECORD: readonly Rule[] = [trend, effect, until, lastEvent, value, latest];
