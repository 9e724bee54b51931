import { readLogLine } from "../log/read-log-line.ts";
import type { Frame } from "./frame.ts";
import type { Rule } from "./rules-of-record.ts";
import { parts } from "./rules-of-salt.ts";

const ORDER =
  /^(?:i (?:want|need|would like) to |lets |let me |now )?(?:(?:log|record|save|enter|add(?= a reading| reading| the reading)|jot down|note down|write down|put in|put down|track|register)(?: (?:that|in|down|this|my|a reading(?: of)?|the reading(?: of)?|reading(?: of)?|:))*:?|note(?: that|:|(?= [a-z0-9]+ [\d.]))|(?:new )?(?:reading|test result|entry):?) (?:i |we |my |that )*(.+)$/;
const TOLD =
  /^(?:(?:i|we) )?(?:(?:just|have|had|only|finally|also) )*(?:(?:did|done|performed|finished|completed|made|tested|measured|got|logged) )(?:(?:just|an?|the|another|my) )*(.+)$/;
const STATEMENT_EVENT =
  /^(?:(?:i|we) )?(?:(?:just|have|ive|weve) )*((?:fed|changed|dosed|harvested|added|replaced)\b.+)$/;
/** A volume or a share that was changed is water: the log wants it said. */
const CHANGED_WATER =
  /^(?:changed|replaced) (?:about |around )?([\d.,]+ ?(?:%|percent|l|lit(?:re|er)s?|gal(?:lon)?s?))(?! (?:of )?(?!water|the water)[a-z]+ (?:media|carbon|resin))(?: (?:of )?(?:the )?water)?(?= |$)/;
const QUESTION =
  /^(?:whats?|when|where|which|who|why|how|hows|is|are|am|was|were|do|does|did|can|could|should|would|will|has|have|if|convert|make|mix|dilute|compare|give|show|tell)\b|\?$|\b(?:bad|safe|toxic|dangerous|worry|should|enough|how much|how many|how long)\b/;

/** One figure to be counted in another way is no reading. */
const RECOUNTED =
  /\b(?:as|in|into|to) (?:nitrates?|nitrites?|ammonia|ammonium|phosphates?|phosphorus|nitrogen|no3|no2|nh3|nh4|po4|n|p)$/;

const log: Rule = (f) => {
  const ordered = ORDER.exec(f.text)?.[1];
  if (ordered !== undefined && isLoggable(ordered))
    return { intent: "log", ...parts({ line: ordered }), confidence: 0.95 };
  if (RECOUNTED.test(f.text)) return undefined;
  if (QUESTION.test(f.text) && !TOLD.test(f.text)) return undefined;
  const done = TOLD.exec(f.text)?.[1];
  if (done !== undefined && f.figures.length > 0 && isLoggable(done))
    return { intent: "log", ...parts({ line: done }), confidence: 0.9 };
  if (QUESTION.test(f.text) || f.isMarked) return undefined;
  const event = STATEMENT_EVENT.exec(f.text)?.[1]?.replace(CHANGED_WATER, "water change $1");
  if (event !== undefined && f.figures.length > 0 && isLoggable(event))
    return { intent: "log", ...parts({ line: event }), confidence: 0.88 };
  const isStatement = f.parameter !== undefined && f.figures.length > 0 && isLoggable(f.text);
  return isStatement ? { intent: "log", ...parts({ line: f.text }), confidence: 0.88 } : undefined;
};

/** The line without the words that tell how a reading was come by: what the log reads. */
export function logLine(told: string): string {
  return told
    .replace(
      /\b(?:came (?:in|out) at|came back(?: at| as)?|tested(?: at)?|that (?=[a-z]+ (?:is|was)))\s*/g,
      "",
    )
    .replace(/ +/g, " ")
    .trim();
}

/** Whether the log can read it as it stands, times and filling words aside. */
function isLoggable(line: string): boolean {
  const plain = line
    .replace(
      /\b(?:today|yesterday|just now|right now|now|this (?:morning|evening|afternoon)|last night|tested|came (?:in|out) at|came back(?: at| as)?|reads?|at)\b/g,
      " ",
    )
    .replace(
      / (?:on|last|this) (?:mon|tues|wednes|thurs|fri|satur|sun)day\b| \d+ (?:days?|hours?|weeks?) ago\b/g,
      " ",
    )
    .replace(/ +/g, " ")
    .trim();
  const read = readLogLine(plain, {});
  return read.kind !== "unreadable";
}

const HELP =
  /^(?:help(?: me)?|(?:hi|hello|hey|hiya|yo)(?: bot| there| everyone| all)?|good (?:morning|evening|afternoon)|start|menu|commands?|\?+|what|who are you|what are you|what is this|how do you work|what else(?: can you do)?)$|\bwhat (?:(?:sort|kind|type) of (?:things|questions|stuff) )?(?:(?:can|could) (?:you|this bot|it) (?:do|answer|help with)|do you (?:do|know|answer)|(?:can|could) i (?:ask|type|say|do here))\b|\bhow (?:do|can|should) i (?:use|talk to|ask|work|start|begin)\b.{0,12}\b(?:this|you|it|bot)?$|\b(?:what|which|list|show) (?:the |all |your |me |are )*(?:commands|questions)\b|\bhow does (?:this|the|it|that) ?(?:bot|thing)? ?work$|\bwhat are you (?:able|good)\b|\bcan you help(?: me)?$|^(?:explain|(?:show|tell) me|describe)? ?what (?:do )?you (?:know|can do|do)\b|\bi need help$/;

const help: Rule = (f: Frame) => (HELP.test(f.text) ? { intent: "help", confidence: 0.95 } : undefined);

export const RULES_OF_TALK: readonly Rule[] = [help, log];
