import { declineTo } from "./declines.ts";
import { type Frame, frameOf, type Surroundings } from "./frame.ts";
import { type Meaning, SURE, type Understood } from "./meaning.ts";
import { peopleFirst } from "./people-first.ts";
import { RULES_OF_RECORD } from "./rules-of-record.ts";
import { RULES_OF_SALT } from "./rules-of-salt.ts";
import { RULES_OF_STOCK } from "./rules-of-stock.ts";
import { RULES_OF_TALK } from "./rules-of-talk.ts";
import { RULES_OF_WATER } from "./rules-of-water.ts";
import { strangeWords } from "./words.ts";

const RULES = [...RULES_OF_TALK, ...RULES_OF_RECORD, ...RULES_OF_SALT, ...RULES_OF_WATER, ...RULES_OF_STOCK];
/** Below this a meaning is not worth offering. */
const WORTH_ASKING = 0.5;
/** Two meanings nearer than this are a question. */
const CLOSE = 0.02;
const MOST_CANDIDATES = 3;

/** Not ours, whatever trade words stand beside it. */
const ELSEWHERE =
  /\b(?:poem|joke|story|song|rap|weather|price|prices|cost|costs|cheap\w*|(?<!did (?:i|we) )buy|sell|for sale|brand|brands|token|password|prompt|instructions?|ignore|pretend|repeat after|delete|drop table|select \*|rm -|sudo|cook|recipe|eat him|wife|girlfriend|marry|football|match|movie|music|bitcoin|president|god|universe|capital|flight|hotel|meeting|click here|free gift|https?:|stupid|idiot|script|javascript|jailbreak|spectrum|lyrics|worth (?!it)|worth$|used for|cheat|account|influencers?|episode|lunch|dinner|beach|holiday|petrol|diesel|moon|tower|speed of|api key|farming|turtles?|music|translate|secret|hack)\b/;

/**
 * What a member asks in plain words. Somebody hurt comes before everything, then what belongs to a vet, an
 * electrician or an engineer, then the questions answered here. Same words, same meaning: nothing is learnt.
 */
export function understand(typed: string, surroundings: Surroundings): Understood {
  const people = peopleFirst(typed);
  if (people?.certainty === "certain") return declined("people");
  const frame = frameOf(typed, surroundings);
  if (frame.text === "") return { kind: "none" };
  const who = declineTo(frame.text);
  if (people !== undefined && who === undefined)
    return unsureOr([{ intent: "decline", who: "people", confidence: 0.6 }, ...meanings(frame)]);
  if (who !== undefined) return declined(who);
  if (ELSEWHERE.test(frame.text)) return { kind: "none" };
  const sure = meanings(frame);
  const found = sure.length > 0 ? sure : guesses(frame);
  const [best, second] = found;
  if (best === undefined || best.confidence < WORTH_ASKING) return { kind: "none" };
  if (best.confidence < SURE || (second !== undefined && best.confidence - second.confidence < CLOSE))
    return unsureOr(found);
  return { kind: "meaning", meaning: best };
}

/** Where only the parameter is plain, what is mostly asked of one is offered. */
function guesses({ parameter, tank, text }: Frame): readonly Meaning[] {
  if (parameter === undefined || strangeWords(text).length > 1) return [];
  const about = { parameter, ...(tank === undefined ? {} : { tank }) };
  return [
    { intent: "trend", ...about, confidence: 0.6 },
    { intent: "latest", ...about, confidence: 0.55 },
  ];
}

function declined(who: NonNullable<Meaning["who"]>): Understood {
  return { kind: "meaning", meaning: { intent: "decline", who, confidence: 1 } };
}

function unsureOr(candidates: readonly Meaning[]): Understood {
  const worth = candidates.filter(({ confidence }) => confidence >= WORTH_ASKING).slice(0, MOST_CANDIDATES);
  return worth.length === 0 ? { kind: "none" } : { kind: "unsure", candidates: worth };
}

/** Every meaning that fits, the likeliest first; of one intent only the best. */
function meanings(frame: Frame): readonly Meaning[] {
  const doubt = doubtOf(frame);
  const all = RULES.flatMap((rule) => rule(frame) ?? [])
    .map((meaning) => ({
      ...meaning,
      ...(frame.tank === undefined ? {} : { tank: frame.tank }),
      confidence: meaning.confidence - doubt * shareOf(meaning),
    }))
    .sort((a, b) => b.confidence - a.confidence);
  return all.filter((each, at) => all.findIndex(({ intent }) => intent === each.intent) === at);
}

/** Intents in which any word may stand: a log line, an animal, a substance. */
const FREE_WORDS: ReadonlySet<string> = new Set(["log", "help", "stocking-add", "dilute"]);

/** Intents that are only found beside a word nobody uses but of a tank. */
const OF_THE_TRADE: ReadonlySet<string> = new Set([
  "trend",
  "effect",
  "until",
  "value",
  "last-event",
  "ammonia",
]);

/** How much of the doubt counts: the more figures and names hang together, the less one odd word matters. */
function shareOf({ intent, quantities, limit, parameter, event }: Meaning): number {
  if (FREE_WORDS.has(intent)) return 0;
  const found = Object.keys(quantities ?? {}).length + [limit, parameter, event].filter(Boolean).length;
  if (found >= 3) return 0.3;
  return found === 2 || OF_THE_TRADE.has(intent) ? 0.5 : 1;
}

/** Words nobody uses for these questions make it likelier that another one was asked. */
function doubtOf(frame: Frame): number {
  const since = frame.since ?? "";
  const strange = strangeWords(since === "" ? frame.bare : frame.bare.replace(since, " "));
  if (strange.length === 0) return 0;
  const words = frame.bare.split(" ").length;
  return strange.length === 1 ? (words > 4 ? 0.15 : 0.2) : 0.5;
}
