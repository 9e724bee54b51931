import { correctedText, plainText } from "../questions/plain-text.ts";
import { speller } from "../questions/spelling.ts";
import type { Sign, SignCode } from "./facts.ts";
import { clausesOf, sentencesOf } from "./sentences.ts";

/** Words an alarm hangs on, so that a slip of the finger does not hide one. */
const SPELLED =
  "gasping gasps gulping panting breathing surface bottom lying laying listless lethargic motionless unresponsive sideways upside sinking dying dead died deaths floating heater boiling freezing burning melted melting smoke smoking sparks sparking tingle tingles tingling tingly shock shocked zapped leaking cracked bleach ammonia outage power stopped swimming".split(
    " ",
  );
const RIGHT = new Set(
  "grasping gaspar breeding bleaching beach playing laying paying saying buying tingly tangle tangles single lacking leading peaking speaking stocked snacked tracked packed smoked spoke start marks parks stock shocks shopped dropped stepped dread deal bread lead head read heaters heated healer cheater heather heat flower tower powder lower dried tied lied deeds trying drying crying trying flying frying soaking swimmer swimmers burring turning curing boring rolling failing floating flouting melding felted panting painting planting breathe sinks linking drinking spinning button bottle surfaces service".split(
    " ",
  ),
);
const spell = speller(SPELLED, RIGHT);

interface Rule {
  readonly code: SignCode;
  readonly pattern: RegExp;
  /** What the same words can mean without harm. */
  readonly unless?: RegExp;
}

const FISH =
  "(?:fish|fishes|they|them|all|everything|everyone|most|animals?|one|some|tetras?|guppy|guppies|betta|goldfish|shrimps?|snails?|corals?|clowns?|clownfish|tangs?|gobies|goby|wrasses?|inhabitants|livestock|babies|tank)";
const COUNT =
  "(?:two|three|four|five|six|seven|eight|nine|ten|[2-9]|\\d\\d+|several|many|lots|loads|half|most|all|both)";

const RULES: readonly Rule[] = [
  {
    code: "gasping",
    pattern: /\b(?:gasp\w*|gulp\w*(?! food)|panting)\b/,
    unless: /\bgulp\w* (?:down|his|her|its|the|a) (?:food|pellet|snail)/,
  },
  {
    code: "gasping",
    pattern:
      /\b(?:breath\w*)\b.{0,30}\b(?:fast|heav\w*|hard|rapid\w*|quick\w*|like crazy|labou?red|trouble|weird\w*|surface|top)\b|\b(?:fast|heavy|heavily|hard|rapid|rapidly|quick|labou?red|trouble|struggling|struggle|cant|cannot|cant even)\b.{0,15}\bbreath\w*|\b(?:gills?)\b.{0,20}\b(?:fast|pumping|flared|flaring|going|rapid\w*|heav\w*)\b/,
  },
  {
    code: "gasping",
    pattern:
      /\b(?:mouths?|sucking|hanging|hang|staying|stay|stuck|huddl\w*|sitting|all|gather\w*|crowd\w*|swimming)\b.{0,30}\b(?:at|to|near|under|by|on)\b (?:the )?(?:very )?(?:surface|top(?! ?up| ?off))\b/,
    unless:
      /\b(?:feed\w*|eat\w*|hatchet\w*|gourami|plants?|duckweed|film|oil|scum|foam|bubbles?|always|like they always)\b/,
  },
  {
    code: "gasping",
    pattern:
      /\b(?:no|not enough|out of|lack of|low|zero|running out of) (?:dissolved )?oxygen\b|\bsuffocat\w*|\bcant get (?:any )?air\b|\bsucking air\b/,
  },
  {
    code: "mass deaths",
    pattern: new RegExp(
      `\\b${COUNT}\\b(?: \\w+){0,4}? (?:are |were |have |just |already |now |is |found |lay |lying )*(?:dead|died|dying|gone|perished|floating)\\b`,
    ),
    unless:
      /\b(?:gone (?:to|into|through|for|up|down|well|away for)|(?:plants?|leaves|algae|dead batter\w*|dead end) \w* ?(?:dead|died|dying)?|floating (?:plants?|around|food|base|valve))\b/,
  },
  {
    code: "mass deaths",
    pattern:
      /\b(?:lost|losing|buried|flushed|removed|scooped out|pulled out|found)\b(?: (?:my|our|another|about|already|like|at least|over|nearly|all|the|other|around|almost|us))* (?:two|three|four|five|six|seven|eight|nine|ten|[2-9]|\d\d+|several|many|half|most|all)\b(?! ?(?:%|per ?cent|seconds?|secs?|minutes?|mins?))(?: \w+){0,5}(?: dead)?$/,
    unless:
      /\bfound (?:two|three|four|five|[2-9]|several|many)(?!.*dead)|\blost (?:two|three|[2-9]|\d+) (?:litres?|liters?|l|gal\w*|cm|inch\w*|hours?|days?|points?|degrees?|leaves|plants?)\b/,
  },
  {
    code: "mass deaths",
    pattern: new RegExp(
      `\\b${FISH}(?: \\w+){0,3} (?:dying|dyin)\\b|\\b(?:dying|die|dead|died|dropping|drop) (?:one (?:by one|after (?:another|the other))|like flies|off|left and right|in (?:rows|numbers)|every (?:day|hour|few))|\\bkeep (?:dying|dieing|losing)|\\b(?:mass|total) (?:death|die ?off|wipe ?out|crash)|\\btank (?:crash|crashed|wipe ?out)|\\bwiped out\\b|\\bdie ?off\\b|\\bfish (?:are|r) dead\\b|\\b(?:more|another|others?)(?: one)? (?:are |is |have |has |just )*(?:dead|died|dying)\\b`,
    ),
    unless:
      /\b(?:plants?|algae|leaves|leaf|moss|bulb|light|pump|battery|diatoms?) (?:is|are|keeps?|keep)? ?(?:dying|dead|die)|\bdying to\b/,
  },
  {
    code: "mass deaths",
    pattern: /\b(?:dead (?:fish|bodies|ones)|deaths|corpses|bodies)\b/,
    unless: /\b(?:prevent|avoid|about|dead fish smell|a dead fish)\b/,
  },
  {
    code: "lying",
    pattern:
      /\b(?:lying|laying|lies|lays|layed|lain|sitting|resting|sinking|sunk|stuck)\b.{0,25}\b(?:bottom|floor|side|sides|gravel|sand|substrate)\b|\b(?:on|onto) (?:its|his|her|their|the) sides?\b|\bupside ?down\b|\bbelly ?up\b|\brolled over\b|\brolling over\b|\bside ?ways\b|\bcannot (?:swim|stay up)|\bcant (?:swim|stay up)|\b(?:lying|laying) down\b/,
    unless:
      /\b(?:pleco\w*|cory|corys|corydoras|loach\w*|flounder|flatfish|catfish leaf|eggs?|snail|leaf|plant|heater|thermometer|filter|pump|wood|stone|rock|equipment|light|upside ?down catfish|always (?:lies|lays|sits)|waste|poo|poop|food|dirt|detritus)\b/,
  },
  {
    code: "lying",
    pattern:
      /\b(?:listless|lethargic|motionless|unresponsive|not moving|barely moving|hardly moving|wont move|doesnt move|dont move|limp|convulsing|spasms?|seizing|spinning|spiralling|spiraling|corkscrew\w*|darting and crashing|crashing into|losing balance|lost balance|no balance|loss of balance)\b/,
    unless:
      /\b(?:snails?|anemone|pump|water|filter|thermometer|needle|plants?|worms?)\b.{0,12}\b(?:not|barely|hardly|wont|doesnt|dont|motionless|limp|spinning)|\b(?:impeller|propeller|wheel|rotor)\b/,
  },
  {
    code: "no flow",
    pattern:
      /\b(?:filter|pump|return|air ?stone|air ?pump|bubbler|skimmer|wavemaker|powerhead|flow|circulation|electricity|power)\b.{0,30}\b(?:stopped|stop|dead|died|off|broke|broken|failed|fails|not running|isnt running|not working|isnt working|quit|unplugged|gone|cut|out|seized)\b|\b(?:power ?cut|power ?outage|blackout|outage|no (?:flow|power|electricity|filter|filtration|circulation|aeration|air pump)|lost power|unplugged the (?:filter|pump))\b/,
    unless:
      /\b(?:should|can|do|shall|could|would) (?:i|we|you)\b.{0,25}\b(?:turn|switch|off|stop)|\b(?:at night|overnight|while feeding|when feeding|for feeding|when i feed|gave off|top ?off|water ?change|protein|years? ago|last year|\d+ ?(?:seconds?|secs?)|for a (?:second|moment|minute|few (?:seconds|minutes))|back on|came back|is back|running again|works again|what if|in case|prepare|backup|back ?up|ready for)\b|\bno filter (?:sock|floss|needed)|\b(?:power|flow) (?:is )?(?:off|cut) (?:for|during) (?:feeding|maintenance)/,
  },
  {
    code: "poisoned water",
    pattern:
      /\b(?:bleach|chlorine|soap|detergent|washing[- ]up liquid|cleaner|cleaning spray|window cleaner|air freshener|insect\w*|bug ?spray|fly ?spray|flea\w*|pesticide\w*|paint|solvent|perfume|sunscreen|hand ?cream|lotion|copper coin|coins?|aerosol|hairspray|disinfectant|weed ?killer|polish|petrol|diesel|glue fumes)\b.{0,50}\b(?:in|into|near|over|got in|fell|spilled|spilt|sprayed|tank|water|aquarium)\b|\b(?:sprayed|spilled|spilt|poured|tipped|dropped|fell|splashed|dumped)\b.{0,40}\b(?:bleach|soap|detergent|cleaner|spray|paint|perfume|insect\w*|pesticide|coffee|beer|wine|juice|milk|alcohol|vodka|vinegar|whole (?:tub|pot|bottle|jar|can))\b|\b(?:forgot|without|no|didnt (?:use|add)|ran out of|skipped) (?:the |any |my )?(?:dechlorinat\w*|water conditioner|conditioner|tap safe)\b|\boverdos\w*|\b(?:10|ten|double|twice|five|5) times the dose\b|\btoo much (?:medicine|medication|copper|fertili[sz]er|carbon source|vodka|kalk\w*|alkalinity)\b|\bwhole (?:bottle|tub|pot|jar|can) (?:of|went|fell)\b/,
    unless:
      /\b(?:snails? cleaner|cleaner (?:shrimp|wrasse|crew|goby)|magnet cleaner|(?:clean|rinsed?|soak\w*|wash\w*)\b.{0,30}\b(?:in|with) bleach\b.{0,40}\bbefore|is it (?:safe|ok)|can i (?:use|clean|paint)|paint(?:ed)? the (?:back|stand|wall|outside)|insects? as food)\b/,
  },
  {
    code: "too hot",
    pattern:
      /\b(?:heater|thermostat)\b.{0,30}\b(?:stuck|jammed|wont (?:turn|switch|go|shut) off|wouldnt (?:turn|switch|shut) off|cooked|cooking|overheat\w*|runaway|failed on|kept (?:heating|going)|on all night)\b|\b(?:water|tank)\b.{0,25}\b(?:boiling|really hot|very hot|too hot|way too warm|hot to (?:the )?touch|like a bath|feels hot|is hot|got hot|cooked|hot bath)\b|\bcooked (?:my|the) (?:fish|tank)|\boverheated (?:tank|water)\b|\btank (?:is )?overheat\w*|\bchiller\b.{0,20}\b(?:failed|broke|broken|stopped|died|dead|off)\b|\bheat ?wave\b/,
    unless: /\b(?:boiling (?:water )?(?:the )?(?:wood|rock|leaves|gravel)|boil\w* (?:wood|driftwood))\b/,
  },
  {
    code: "too cold",
    pattern:
      /\b(?:heater|thermostat)\b.{0,30}\b(?:broke|broken|failed|died|dead|not working|isnt working|stopped|off|unplugged|quit|gone)\b|\b(?:water|tank)\b.{0,25}\b(?:freezing|ice cold|stone cold|very cold|really cold|too cold|feels cold|is cold|got cold)\b|\bheating (?:is |was )?(?:off|broken|failed|went off)\b/,
    unless: /\b(?:goldfish|koi|pond|coldwater)\b|\bheater off while\b/,
  },
  {
    code: "overheating equipment",
    pattern:
      /\b(?:burn\w*|scorch\w*|charred|electrical|hot plastic|melting) (?:plastic |rubber |electrical )?(?:smell|stench|odou?r)|\bsmell\w*\b.{0,25}\b(?:burn\w*|burnt|scorch\w*|melt\w*|plastic|electrical|smoke)\b|\b(?:melt\w*|scorch\w*|smok(?:e|ing|ed)|spark\w*|arcing|charred|blackened|brown marks?|burn marks?|on fire|caught fire|flames?)\b.{0,40}\b(?:plug\w*|socket|outlet|adapter|adaptor|power ?strip|extension|cable|cord|wire|wires|heater|pump|light|lamp|ballast|timer|transformer|power supply|equipment|controller|chiller|filter|lead)\b|\b(?:plugs?|socket|outlet|adapter|adaptor|power ?strip|extension(?: lead| cord)?|cable|cord|wires?|pump|light|lamp|ballast|timer|transformer|power supply|equipment|controller|chiller|filter|lead)\b.{0,40}\b(?:melt\w*|scorch\w*|smok(?:e|es|ing)|spark\w*|arcing|charred|blackened|brown|burn\w*|burnt|on fire|caught fire|hot|overheat\w*|sizzl\w*|crackl\w*)\b/,
    unless:
      /\b(?:hot(?:ter)? day|hot (?:weather|water)|hot side|hot room|light (?:too )?hot for|(?:brown|burn\w*) (?:algae|diatoms?|leaves|tips?|out)|filter (?:wool|water|media|pad|floss|foam|sponge|sock)? ?(?:is |turned |gets |looks )?brown|burn\w* out)\b|\bbrown\b.{0,20}\b(?:algae|diatom\w*|dust|water|coating|slime)\b|\b(?:algae|diatom\w*|dust|coating|slime|film)\b.{0,30}\bbrown\b/,
  },
  {
    code: "electric tingle",
    pattern:
      /\b(?:tingl\w*|electric(?:al)? shock|electrocut\w*|zapp?\w*|live water|stray (?:voltage|current)|voltage in the (?:water|tank))\b|\b(?:shock|shocked|shocks|jolt|buzz)\b.{0,30}\b(?:touch\w*|hand|water|arm|finger\w*|tank|me)\b|\b(?:rcd|rcbo|gfci|breaker|fuse|residual current)\b.{0,30}\b(?:trip\w*|blow\w*|blew|goes|went|keeps?|pops?|popped)\b|\btrip(?:s|ped|ping)? the (?:rcd|gfci|breaker|fuse)\b/,
    unless:
      /\b(?:zapped the algae|osmotic|salinity|temperature|ph) shock\b|\btested the (?:rcd|gfci)|\btest button\b/,
  },
  {
    code: "leak",
    pattern:
      /\b(?:tank|aquarium|glass|seam|silicone|sump|panel|corner|bulkhead|stand)\b.{0,30}\b(?:leak\w*|crack\w*|burst|split|bowing|bulging|dripping|shattered|broke|broken|collapsed|collapsing)\b|\b(?:leak\w*|crack\w*|burst|shattered)\b.{0,30}\b(?:tank|aquarium|glass|seam|sump|panel|floor|bulkhead)\b|\bwater (?:is |all |running |pouring |dripping |everywhere )*(?:on|over|onto|all over|across) the (?:floor|carpet|sockets?|plugs?|power ?strip|extension)\b|\bflood(?:ed|ing)?\b/,
    unless:
      /\b(?:flood (?:light|test|risk|sensor|alarm|safe\w*)|leak test\w*|air leak|crack(?:ed|ing)? (?:corn|open|eggs?|of the lid|lid)|broke the cycle|stand (?:out|by|up))\b/,
  },
];

/** Said of another time or another tank, or as a wish to learn. */
const ELSEWHERE =
  /\b(?:years? ago|months ago|last (?:year|summer|winter|spring|autumn|month)|in (?:19|20)\d\d|in the past|used to|my friends?|my neighbou?rs?|my (?:uncle|aunt|cousin|colleague)s?|a friends?|in (?:a|the) (?:book|film|movie|video|article)|i (?:read|heard) that|what if|in case|how (?:do|would|can) (?:i|you|one) (?:know|tell|prevent|avoid|recogni[sz]e)|if (?:they|it|my fish|one) (?:ever )?(?:start|starts|started|begin|get|gets)|to (?:prevent|avoid)|before (?:they|it) (?:start|starts))\b/;
const NEGATION =
  /\b(?:no|not|none|nothing|nobody|no ?one|never|nor|neither|without|isnt|arent|wasnt|werent|dont|doesnt|didnt|hasnt|havent|aint|free of|stopped|zero)\b(?! (?:only|helps?|works?|helping|working|enough|sure|stop|stopped|stopping|breath\w*|moving|swimming|eating|able|know|understand|want|idea|matter|seen|clue|one knows|doubt)\b)/;
/** A new thought begins here: a “no” before it belongs to the old one. */
const NEW_THOUGHT = /\b(?:since|because|so|when|then|now|why|that|while|after|until|if)\b/g;
/** How many words a “no” reaches. */
const REACH = 5;
/** "gasping: no", "anything dead? none". */
const ANSWERED_NO =
  /^(?:no|nope|none|nothing|nah|no they are not|not at all|all (?:fine|good|ok|okay|well)|fine|n\/?a|-)\b/;

/** Signs that life is in danger, each code once, most pressing first. A “no” before the word takes it back. */
export function readSigns(texts: readonly string[]): readonly Sign[] {
  const found = new Map<SignCode, Sign>();
  for (const text of texts) {
    const sentences = sentencesOf(text);
    sentences.forEach((sentence, at) => {
      const next = plainText(sentences[at + 1] ?? "");
      if (ANSWERED_NO.test(next) && isShortQuestion(text, sentence)) return;
      if (ELSEWHERE.test(plainText(sentence))) return;
      for (const clause of clausesOf(sentence)) {
        for (const code of codesIn(clause)) if (!found.has(code)) found.set(code, { code, words: clause });
      }
    });
  }
  return ORDER.flatMap((code) => found.get(code) ?? []);
}

/** "Anything gasping? No." — the asking words are no news. */
function isShortQuestion(text: string, sentence: string): boolean {
  const after = text.slice(text.indexOf(sentence) + sentence.length).trimStart();
  return after.startsWith("?") || after.startsWith(":");
}

function codesIn(clause: string): readonly SignCode[] {
  const text = correctedText(plainText(clause), spell);
  return RULES.flatMap(({ code, pattern, unless }) => {
    const match = pattern.exec(text);
    if (match === null || unless?.test(text) === true) return [];
    return isDenied(text, match.index, match[0], code) ? [] : [code];
  });
}

/** Whether a “no” stands within reach before the words, and does not itself make the alarm. */
function isDenied(text: string, at: number, words: string, code: SignCode): boolean {
  if (
    /^\S*\s*(?::|=)?\s*(?:no|none|nope|nothing)$/.test(text.slice(at + words.length).trim()) &&
    code !== "no flow"
  )
    return true;
  if (/^(?:no|not|without|forgot|didnt|skipped|ran out)\b/.test(words)) return false;
  const ahead = text.slice(0, at);
  const fresh = [...ahead.matchAll(NEW_THOUGHT)].at(-1);
  return NEGATION.test(
    ahead
      .slice(fresh?.index ?? 0)
      .trim()
      .split(/\s+/)
      .slice(-REACH)
      .join(" "),
  );
}

const ORDER: readonly SignCode[] = [
  "electric tingle",
  "overheating equipment",
  "leak",
  "gasping",
  "no flow",
  "poisoned water",
  "mass deaths",
  "lying",
  "too hot",
  "too cold",
];

const ONE_DEATH =
  /\b(?:died|dead|death|passed away|lost (?:a|one|my|his|her|the)|one (?:is |was |has )?(?:gone|dead|died))\b/;

/** One animal lost, by the same rules. */
export function tellsOfDeath(texts: readonly string[]): boolean {
  return texts.some((text) =>
    sentencesOf(text).some(
      (sentence) =>
        !ELSEWHERE.test(plainText(sentence)) &&
        clausesOf(sentence).some((clause) => {
          const plain = correctedText(plainText(clause), spell);
          const match = ONE_DEATH.exec(plain);
          return (
            match !== null &&
            !/\b(?:plants?|leaves|algae|battery|bulb|moss)\b/.test(plain) &&
            !isDenied(plain, match.index, match[0], "mass deaths")
          );
        }),
    ),
  );
}
