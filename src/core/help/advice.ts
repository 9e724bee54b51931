/** One step a helper wrote down, as far as it is still open. */
export interface AdviceStep {
  readonly number: number;
  readonly text: string;
}

/** Two steps that cannot both be done; told without taking sides. */
export interface Contradiction {
  readonly first: AdviceStep;
  readonly second: AdviceStep;
  readonly about: string;
  /** The fact that would settle it. */
  readonly settledBy: string;
}

interface Topic {
  readonly about: string;
  readonly pattern: RegExp;
  /** Words that say "more" or "yes"; absent, every step on the topic does unless it says no. */
  readonly more?: RegExp;
  readonly less: RegExp;
  readonly settledBy: string;
}

const NO =
  "\\b(?:no|not|never|dont|do not|don't|stop|avoid|without|skip|leave|hold off|wait with|pause|less|fewer)\\b";

const TOPICS: readonly Topic[] = [
  {
    about: "changing water",
    pattern:
      /\b(?:water changes?|change (?:\w+ |\d+ ?% )*water|wc|change (?:a |the )?(?:third|half|quarter|\d+))\b/,
    less: new RegExp(NO),
    settledBy: "the ammonia and nitrite readings, with the pH",
  },
  {
    about: "feeding",
    pattern: /\b(?:feed\w*|food)\b/,
    more: /\b(?:more|twice|as usual|normal\w*|daily|keep feeding|well)\b/,
    less: new RegExp(`${NO}|\\b(?:nothing|half|little|sparingly|fast(?:ing)?)\\b`),
    settledBy: "the ammonia reading",
  },
  {
    about: "the temperature",
    pattern: /\b(?:temp\w*|heater|warm\w*|heat|cool\w*|degrees?)\b/,
    more: /\b(?:raise|increase|up|warm\w*|higher|hotter|on|heat)\b/,
    less: /\b(?:lower|reduce|decrease|down|cool\w*|cold\w*|off|unplug)\b/,
    settledBy: "the temperature, and which animals they are",
  },
  {
    about: "salt",
    pattern: /\bsalt\b/,
    more: /\b(?:add|put|dose|raise|more|use)\b/,
    less: new RegExp(`${NO}|\\b(?:lower|remove|dilute)\\b`),
    settledBy: "which animals they are, and the salinity",
  },
  {
    about: "the filter",
    pattern: /\bfilter|\bsponge|\bmedia\b/,
    more: /\b(?:clean\w*|rins\w*|wash\w*|replac\w*|chang\w*|swap\w*|new)\b/,
    less: new RegExp(`${NO}|\\b(?:alone|untouched)\\b`),
    settledBy: "the ammonia and nitrite readings, and whether water still runs through it",
  },
  {
    about: "the light",
    pattern: /\blights?\b/,
    more: /\b(?:on|longer|more|brighter|leave on)\b/,
    less: /\b(?:off|shorter|less|dim\w*|dark|blackout)\b/,
    settledBy: "what is seen in the water and on the animals",
  },
  {
    about: "new animals",
    pattern:
      /\b(?:add|buy|get|more|stock\w*) (?:\w+ ){0,3}(?:fish|animals?|snails?|shrimps?|friends|tankmates|shoal|school)\b|\b(?:no|any) (?:new|more) (?:fish|animals?)\b/,
    less: new RegExp(`${NO}|\\bno (?:new|more)\\b`),
    settledBy: "ammonia and nitrite over two weeks",
  },
  {
    about: "moving the animals",
    pattern:
      /\b(?:move|take|put|return|bring|rehome|isolate|quarantine)\b.{0,40}\b(?:fish|animals?|them|it|him|her|shop|store|bucket|hospital|quarantine)\b/,
    less: new RegExp(`${NO}|\\bleave\\b`),
    settledBy: "how the animals are, and the readings of both waters",
  },
  {
    about: "air",
    pattern: /\b(?:air ?stone|air pump|aerat\w*|surface movement|bubbler)\b/,
    less: new RegExp(`${NO}|\\boff\\b`),
    settledBy: "how the animals breathe",
  },
  {
    about: "the pH",
    pattern: /\bph\b/,
    more: /\b(?:raise|up|increase|higher|buffer)\b/,
    less: /\b(?:lower|down|reduce|drop)\b/,
    settledBy: "pH, alkalinity and ammonia, measured together",
  },
];

/** A share changed that differs from another by more than this is another advice. Source: assumption. */
const SHARES_APART = 2;

/** Open steps that cannot both be done, each pair once. */
export function contradictions(steps: readonly AdviceStep[]): readonly Contradiction[] {
  const stances = steps.map((step) => ({ step, ...stanceOf(step.text) }));
  return stances.flatMap((first, at) =>
    stances.slice(at + 1).flatMap((second): readonly Contradiction[] => {
      const topic = TOPICS.find(({ about }) => {
        const [a, b] = [first.stands.get(about), second.stands.get(about)];
        if (a === undefined || b === undefined) return false;
        return a !== b || (about === "changing water" && a === "more" && differ(first.share, second.share));
      });
      return topic === undefined
        ? []
        : [{ first: first.step, second: second.step, about: topic.about, settledBy: topic.settledBy }];
    }),
  );
}

function stanceOf(text: string): {
  readonly stands: ReadonlyMap<string, "more" | "less">;
  readonly share?: number;
} {
  const stands = new Map<string, "more" | "less">();
  let share: number | undefined;
  for (const clause of text
    .toLowerCase()
    .replace(/[’']/g, "")
    .split(/[.;,]|\bbut\b|\band\b/)) {
    for (const { about, pattern, more, less } of TOPICS) {
      if (!pattern.test(clause)) continue;
      if (less.test(clause)) stands.set(about, "less");
      else if (more === undefined || more.test(clause)) stands.set(about, "more");
    }
    const percent = /(\d+) ?(?:%|per ?cent)/.exec(clause);
    if (percent !== null) share = Number(percent[1]) / 100;
    else if (/\bhalf\b/.test(clause)) share = 0.5;
    else if (/\bthird\b/.test(clause)) share = 1 / 3;
    else if (/\bquarter\b/.test(clause)) share = 0.25;
  }
  return { stands, ...(share === undefined ? {} : { share }) };
}

function differ(a: number | undefined, b: number | undefined): boolean {
  return a !== undefined && b !== undefined && Math.max(a, b) > SHARES_APART * Math.min(a, b);
}

/** Advice that only a vet may give. */
export function isMedicine(text: string): boolean {
  return /\b(?:medicat\w*|medicine|antibiotic\w*|copper|formalin|malachite|methylene|praziquantel|levamisole|metronidazole|kanamycin|erythromycin|peroxide|dewormer|anti-?parasit\w*|dose \d+ ?(?:mg|ml|drops))\b/i.test(
    text,
  );
}
