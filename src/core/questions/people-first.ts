import { type Harm, MINE, ONE, type Rule, rule, WHOM } from "./people-rule.ts";
import { SIGNS } from "./people-signs.ts";
import { CHEMICAL, FISH, KIN, LIMB, marked, PART, VENOMOUS } from "./people-words.ts";

export type { Harm } from "./people-rule.ts";

export interface PeopleFirst {
  readonly harm: Harm;
  /** "certain": the words leave no other reading. "possible": worth asking whether somebody is hurt. */
  readonly certainty: "certain" | "possible";
}

/**
 * Whether a text says that a person is hurt, whatever else it asks. Words of injury alone are not enough
 * (“salinity shock”, “bite size food”): somebody must have been hurt, or the words can mean nothing else.
 * What befalls fish is not meant.
 */
export function peopleFirst(typed: string): PeopleFirst | undefined {
  const text = marked(typed);
  const certain = [...CERTAIN, ...SIGNS].find(
    ({ pattern, unless }) => pattern.test(text) && unless?.test(text) !== true,
  );
  if (certain !== undefined) return { harm: certain.harm, certainty: "certain" };
  const possible = POSSIBLE.find(({ pattern, unless }) => pattern.test(text) && unless?.test(text) !== true);
  return possible === undefined ? undefined : { harm: possible.harm, certainty: "possible" };
}

const WAS =
  "(?:was|were|got|gets?|been|am|is|being|just|have|has|had|nearly|almost|just got|keep(?:s)? getting|getting)";
const HURT_BY_FISH =
  "stung|stings?|stinging|bit|bitt|bites?|bitten|spiked|pricked|jabbed|speared|stabbed|nipped";
const PASSIVE =
  "stung|bitten|bit|bitt|zapped|shocked|shock|electrocuted|burned|burnt|scalded|poisoned|gassed|crushed|pricked|spiked|stabbed|jabbed|cut|hurt|injured|speared|envenomated|concussed";

/** The harm a passive verb names, for the card's first line. */
const PASSIVES: readonly (readonly [Harm, string])[] = [
  ["sting", "stung|pricked|spiked|speared|jabbed|stabbed|envenomated"],
  ["bite", "bitten|bit|bitt|nipped"],
  [
    "shock",
    "zapped|shocked|electrocuted|(?:an? )?(?:(?:electric|electrical|nasty|mild|bad|small|little|big|static|huge) )*(?:shock|zap)",
  ],
  ["burn", "burned|burnt|scalded"],
  ["swallowed", "poisoned"],
  ["gas", "gassed"],
  ["wound", "crushed|cut|hurt|injured|concussed|knocked out"],
];

/** A shock at a figure or a price. */
const ONLY_SURPRISED =
  "\\bshocked (?:me|us) (?:with|by|at|how|that)\\b|\\bshocked (?:to|that|how|when i (?:saw|read|heard)|(?:by|at) (?:how|the (?:price|cost|result|results|reading|level|bill|number)|(?:my |the )?(?:nitrate|phosphate|reading|price|result|bill|test)))\\b";

/** A headache that is only a bother. */
const ONLY_A_NUISANCE =
  "\\b(?:is|are|its|been|was|what|such) a (?:[a-z]+ ){0,3}headache\\b|\\b(?:nitrates?|phosphates?|algae|maths?|sums?|dosing|plumbing|salinity|numbers|units)\\b.{0,20}\\bheadaches?\\b|\\bheadaches? (?:of|with) (?:the|my|this|these|all)\\b";

/** What happens to limbs, and to nothing a limb may be beside by chance. */
const LIMB_HARM =
  "stung|sting|stings|stinging|bitten|raw|peeling|peels|torn|shredded|agony|agoni[sz]ing|excruciating|throb|aches|aching|itchy|itching|itches|inflamed|bruised|mangled|oozing|pus|pins and needles|cramps|cramping|cramped|paraly[sz]ed|spasms?|trapped|pinned|puffy|bleed|bleeds|bleeding|blood|swollen|swelling|swelled|numb|throbbing|throbs|gash|infected|infection|burned|burnt|burns|burning|zapped|shocked|shock|tingling|tingles|blisters?|blistered|rash|poisoned|spines?|spike|spiked|barb|bristles|venom|painful|hurts|hurting|stitches|fractured|sprained|crushed|lacerated|punctured|cut open|jellyfish sting";

const ANIMAL_SUBJECT = `\\b${FISH} (?:${WAS} )*(?:${PASSIVE})\\b(?!.*\\b(?:me|myself|${MINE} (?:[a-z]+ )?${LIMB})\\b)`;

const CERTAIN: readonly Rule[] = [
  // Words that have no other meaning.
  rule(
    "shock",
    "\\b(?:electrocuted|electrocution|electric(?:al)? shock)\\b",
    `\\b${FISH} (?:${WAS} )*electrocuted\\b`,
  ),
  rule(
    "gas",
    "\\b(?:carbon monoxide|co|gas|smoke|co2) (?:alarm|detector)\\b.*\\b(?:went|going|goes|off|beep\\w*|ring\\w*|sound\\w*|trigger\\w*|now)\\b",
  ),
  rule(
    "gas",
    "\\b(?:ozone|gas|chlorine|chlorine gas|co2|carbon dioxide|propane) (?:leak|leaking|leaked|fumes)\\b|\\bleaking (?:gas|ozone|chlorine)\\b|\\bchlorine gas\\b|\\btoxic (?:fumes|gas)\\b",
  ),
  rule(
    "gas",
    "\\b(?:smell|smells|smelling|stinks?|stench|whiff)\\b.*\\b(?:chlorine|gas|ozone|bleach fumes|burning plastic|chemicals?)\\b|\\b(?:chlorine|gas|chemical|ozone) (?:smell|stench|odou?r|fumes)\\b",
    "\\b(?:no|not|without)\\b.{0,12}\\bsmell|\\begg|\\b(?:tap|mains|city|well)\\b|\\bwater smells?\\b|\\bnormal\\b|\\bof the sea\\b",
  ),
  rule(
    "gas",
    "\\bmix(?:ed|ing)?\\b.*\\bbleach\\b.*\\b(?:acid|vinegar|ammonia|peroxide)\\b|\\bmix(?:ed|ing)?\\b.*\\b(?:acid|vinegar|ammonia|peroxide)\\b.*\\bbleach\\b|\\bbleach (?:and|with|into) (?:acid|vinegar|ammonia)\\b",
  ),
  rule(
    "gas",
    `\\b(?:inhaled?|inhaling|breath(?:e|ed|ing)(?: in)?|sniffed)\\b.*\\b(?:${CHEMICAL}|fumes?|gas|co2|smoke|dust|vapou?rs?)\\b`,
    `\\b${FISH}\\b.*\\bbreath`,
  ),
  rule(
    "gas",
    `\\b(?:${CHEMICAL}|fumes?|gas|co2|smoke|generator)\\b.*\\b(?:cough|coughing|choking|wheezing|gagging|make me|making me|makes me|light ?headed)\\b|\\b(?:cough|coughing|choking|wheezing)\\b.*\\b(?:${CHEMICAL}|fumes?|gas|smoke)\\b`,
    `\\b${FISH}\\b`,
  ),
  rule("unwell", "\\b(?:palytoxin|anaphyla\\w*|epipen|envenomation)\\b", "\\bwhat is\\b"),
  rule(
    "unwell",
    "\\b(?:unconscious|passed out(?! (?:the |some |my |our |free )?(?:flyers?|frags?|leaflets?|samples?|copies|forms|tickets|cards))|blacked out|fainted|heart attack|seizure|cardiac arrest|convulsing|drowning|drowned)\\b",
    `\\b${FISH}\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:${ONE}) (?:has |have |just |is |are |was )*(?:collapsed|fainted|unresponsive|fallen|fell|fall) *(?:in|into|over|down|off|on|next|near|by|beside|$|and)`,
  ),
  rule(
    "unwell",
    `\\b(?:${ONE})\\b.{0,50}\\b(?:(?:not|stopped|isnt|trouble|cant|cannot|can not|hard to|struggling to|difficulty) (?:breathe|breathing))\\b`,
    `\\b${FISH} (?:is|are|was|has|cant|cannot|not|stopped|struggling|having|trouble)\\b`,
  ),
  rule(
    "unwell",
    "\\b(?:cant|cannot|can not|hard to|struggling to|difficulty|trouble) (?:breathe|breathing)\\b",
    `\\b(?:${FISH}|he|she|it|they)\\b.*\\bbreath`,
  ),
  rule(
    "unwell",
    "\\b(?:dizzy|light ?headed|headaches?|migraine|nauseous|nausea|vomiting|threw up|throwing up|fever|chills|chest pains?|chest (?:hurts|is tight|tightness)|metallic taste|double vision)\\b",
    `\\b${FISH} (?:is|are|was|has|looks?|seems?)\\b|\\b(?:dizzy|light ?headed) ${FISH}\\b|${ONLY_A_NUISANCE}`,
  ),
  rule(
    "unwell",
    `\\b(?:i|im|we|he|she|my ${KIN}) (?:am |is |are |was |now |suddenly |really |do |been )*(?:feel|feels|feeling|felt)\\b.{0,20}\\b(?:sick|faint|ill|unwell|weak|numb|funny|strange|terrible|awful|bad|woozy|queasy|poisoned)\\b|\\bfeel(?:s|ing|t)? (?:[a-z]+ )?(?:sick|faint|ill|unwell|woozy|nauseous|poorly)\\b|\\b(?:made|makes|making|make) (?:me|us|him|her) (?:feel )?(?:really |very |so )?(?:ill|sick|dizzy|faint|unwell|cough|vomit|nauseous|poorly|throw up)\\b`,
    `\\bfeel(?:ing)? (?:bad|terrible|awful|sick) (?:about|for)\\b|\\b${FISH} (?:[a-z]+ )?feels?\\b`,
  ),
  rule(
    "unwell",
    `\\ballergic\\b|\\b(?:throat|tongue|lips?|face|airway)\\b.{0,20}\\b(?:swell\\w*|swollen|clos\\w*|tight\\w*)\\b`,
    `\\b${FISH}\\b.*\\b(?:lips?|face|throat)\\b|\\b${FISH}s? (?:lips?|face|throat)\\b`,
  ),
  rule(
    "unwell",
    "\\b(?:call|need|calling|called) (?:an? )?(?:ambulance|paramedics?|doctor)\\b|\\bfirst aid\\b|\\bpoison (?:line|control|centre|center)\\b|\\bemergency room\\b",
  ),

  // Somebody was struck by an animal.
  rule(
    "sting",
    `\\b(?:${HURT_BY_FISH})\\b (?:[a-z]+ )?(?:by|from) (?:an? |the |my |his |her |our )?(?:[a-z]+ )?${VENOMOUS}\\b`,
    ANIMAL_SUBJECT,
  ),
  rule(
    "sting",
    `\\b${VENOMOUS} (?:sting|stung|stings|spine|spines|wound|venom|bite)\\b`,
    `^(?:do|does|can|will|could|would|why|how (?:bad|painful|strong|dangerous)|are|is)\\b.*\\b(?:sting|stings|venom)\\b|\\bstung (?:the|a|my|an|another|our) ${FISH}\\b`,
  ),
  rule(
    "sting",
    `\\b(?:stepped|stood|trod|tread|knelt|sat|leaned|landed) on (?:an? |the |my )?(?:[a-z]+ )?(?:${VENOMOUS}|glass|nail|spines?)\\b`,
  ),
  rule(
    "sting",
    `\\b(?:spines?|thorns?|barbs?|bristles?|splinters?|needles?|hook|glass|shards?|metal|wire)\\b.*\\b(?:in|into|under|through|from)\\b (?:[a-z]+ )?(?:${MINE} |the )?(?:[a-z]+ )?(?:${LIMB}|skin)\\b`,
  ),
  rule(
    "sting",
    `\\b(?:stung|stings|spiked|pricked|speared|jabbed|stabbed|poked|got)\\b (?:[a-z]+ )?(?:${WHOM}|(?:${MINE}|the) (?:[a-z]+ )?${LIMB})\\b`,
    `\\bgot (?:[a-z]+ )?(?:me|us|him|her) (?:a|an|the|some|to|into|thinking|wondering|one|two|\\d)|\\bgot (?:the|a|his|her|my|our) (?!${KIN}|(?:[a-z]+ )?${LIMB})|\\bgot (?:my|our|his|her|the|a) (?:[a-z]+ )?${KIN}\\b|\\bgot (?:my|the) hands? on\\b`,
  ),
  rule(
    "bite",
    `\\b(?:bit|bitt|bites?|bitten|nipped|nips|chomped|attacked|savaged|mauled)\\b (?:[a-z]+ )?(?:${WHOM}|(?:${MINE}|the|a) (?:[a-z]+ )?${LIMB})\\b`,
    "\\bbites? (?:of|from) (?:my|his|her) (?:food|hand)\\b",
  ),
  rule(
    "bite",
    `\\b(?:chunk|piece|bite|nip) (?:out )?(?:of|out of|from) (?:${MINE}|the|me) ?(?:[a-z]+ )?(?:${LIMB})?\\b.*`,
    `^(?!.*\\b(?:me|${LIMB})\\b)`,
  ),
  rule("bite", `\\b(?:${FISH}|shark|octopus|turtle) bite\\b`, "\\b(?:do|does|can|will|could|would|size)\\b"),

  // Somebody was hurt, said in the passive.
  ...PASSIVES.map(([harm, verbs]) =>
    rule(
      harm,
      `\\b(?:${ONE})(?: ${WAS})+(?: [a-z]+ly| badly| just| really| kind of| a bit)*? (?:${verbs})\\b`,
      `${ONLY_SURPRISED}|\\bcut (?:back|down|off the|the|some|up|out)\\b|\\bcut (?!my|me|by|on|it)[a-z]+ (?:ration|food|prawn|glass|pipe|hole)`,
    ),
  ),
  rule(
    "shock",
    `\\b(?:got|getting|get|felt|feel|gave me|gives me|received|had|having|gave (?:him|her|us))\\b (?:[a-z]+ ){0,3}?(?:shock|shocks|zap|zaps|jolt|tingle|tingles|tingling|buzz)\\b`,
    "\\b(?:sticker|price|bill|osmotic|salinity|temperature|ph) shock",
  ),
  rule(
    "shock",
    `\\b(?:zapped|zaps|shocked|shocks|electrocutes?|jolted)\\b (?:[a-z]+ )?(?:${WHOM}|when|while|as|touching|by|from|off|off of)\\b`,
    `\\b${FISH} (?:${WAS} )*(?:zapped|shocked)\\b(?! (?:${WHOM}))|${ONLY_SURPRISED}`,
  ),
  rule(
    "shock",
    `\\b(?:${LIMB}|skin|water)\\b.{0,30}\\b(?:tingl\\w+|buzz(?:es|ing)?)\\b|\\btingl\\w+\\b.*\\b(?:water|sump|tank|${LIMB}|touch\\w*)\\b`,
  ),
  rule("sting", "^(?:just |help )?(?:got |been )?stung\\b", `\\bstung (?:the|a|my|another) ${FISH}\\b`),
  rule(
    "bite",
    "^(?:just |help )?(?:got |been )?bitten\\b(?! fins?)",
    `\\bbitten (?:the|a|my|another) ${FISH}\\b`,
  ),
  rule(
    "shock",
    "^(?:just |help )?(?:got |been )(?:zapped|shocked|electrocuted)\\b|^(?:zapped|shocked) (?:by|when|touching|off)\\b",
    ONLY_SURPRISED,
  ),
  rule("burn", "^(?:just |help )?(?:got |been )(?:burned|burnt|scalded)\\b(?! out)"),
  rule("wound", "^(?:just |help )?(?:got |been )(?:cut|crushed|injured|hurt)\\b(?! back| down| off)"),

  // Wounds.
  rule(
    "wound",
    `\\b(?:caught|trapped|jammed|pinched|slammed|shut|wedged)\\b ${MINE} (?:[a-z]+ )?(?:${LIMB}|head|hair)\\b|\\blet go of ${MINE} (?:[a-z]+ )?${LIMB}\\b`,
  ),
  rule(
    "wound",
    `\\b(?:slipped|fell|tripped|hit|banged|knocked|struck)\\b.*\\b(?:hit|banged|hurt|broke|knocked|bumped|cut)? ?${MINE} (?:[a-z]+ )?(?:${LIMB}|head|back|face)\\b|\\b(?:${ONE}) (?:${WAS} )+(?:hit|struck|knocked over) by\\b`,
  ),
  rule("bite", "^(?:just |help |got )*bit(?:ten)? by\\b"),
  rule(
    "shock",
    "\\bzapp(?:ed|ing)\\b|\\b(?:shocks?|zaps?|jolts?|tingles?) (?:from|off|through|when|every time|each time)\\b",
    `\\b${FISH} (?:${WAS} )*zapped\\b|\\b(?:salinity|ph|temperature|osmotic|thermal|price|sticker) shocks?\\b|${ONLY_SURPRISED}`,
  ),
  rule(
    "swallowed",
    `\\b${KIN} (?:[a-z]+ ){0,2}(?:ate|swallowed|drank|licked|chewed)\\b`,
    "\\b(?:ate|drank) (?:lunch|dinner|breakfast|coffee|tea|beer)\\b",
  ),
  // A limb and an injury in one sentence: no fish has a hand.
  rule(
    "wound",
    `\\b${LIMB}\\b.*\\b(?:${LIMB_HARM})\\b|\\b(?:${LIMB_HARM})\\b.*\\b${LIMB}\\b`,
    `\\b(?:pump|heater|light|skimmer|chiller|arm of|leg of|foot of)\\b.*\\bburned out|\\bburning question`,
  ),
  rule(
    "wound",
    "\\bblood\\b(?! worms?)",
    `\\b${FISH}\\b(?!.*\\b(?:me|my ${LIMB}|${LIMB})\\b)|\\bblood (?:red|worms?|parrot|shrimp|test)`,
  ),
  rule(
    "wound",
    `\\bmy (?:cut|wound|burn|bite|sting|blister|gash|scratch)\\b.*\\b(?:infect\\w*|swell\\w*|swollen|pus|red|hot|worse|bleed\\w*|throb\\w*|hurts?)\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:lips?|tongue|mouth|face|cheeks?|throat|eyes?) (?:is|are|feels?|feel|has|have|keeps?|went|going|gone|start\\w*) (?:[a-z]+ )?(?:tingl\\w*|numb|burn\\w*|swell\\w*|swollen|on fire|sting\\w*)\\b`,
    `\\b${FISH}\\b(?!.*\\b(?:after|from|since)\\b)`,
  ),
  rule(
    "unwell",
    `\\b(?:${KIN}|someone|somebody|he|she|i) (?:[a-z]+ ){0,2}(?:collapsed|fainted|unresponsive|electrocuted|choking|convulsing)\\b`,
    `\\b${FISH}\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:someone|somebody|${KIN}) (?:is |got |has been |has |was |badly |seriously )*(?:hurt|injured|bleeding|unconscious|dying)\\b`,
  ),
  rule(
    "wound",
    `\\b(?:cut|sliced|slashed|gashed|slit|lacerated|crushed|smashed|broke|broken|trapped|pinched|stuck|impaled|nicked|scraped|grazed|punctured|hurt|injured|tore|split|severed|jammed)\\b (?:[a-z]+ )?(?:(?:${MINE}|a|the) (?:[a-z]+ )?(?:${LIMB})|${MINE} (?:[a-z]+ )?(?:head|face|back|skin|eye)|open (?:${MINE} )?(?:${LIMB})|myself|himself|herself|me(?! (?:some|a|back|off|down|out))|us|him)\\b`,
    `\\b(?:stuck|put|broke)\\b.{0,10}\\b${MINE} (?:hand|arm)s? in(?:to)? the (?:tank|water|sump)(?! and)`,
  ),
  rule(
    "wound",
    `\\b(?:fell|fallen|falls|dropped|landed|collapsed|toppled|slipped|tipped)\\b.{0,14} (?:on|onto|over|against) (?:[a-z]+ )?(?:${WHOM}|(?:${MINE}|the|a) (?:[a-z]+ )?${PART})\\b`,
  ),
  rule(
    "wound",
    "\\bbleed(?:ing|s)?\\b(?! (?:me|us) dry)|\\bbled\\b(?! (?:the|air|a|off|it|out))|\\bblood (?:everywhere|all over|wont stop|in the water from)\\b|\\blosing blood\\b|\\bneed stitches\\b",
    `\\b${FISH}s?\\b(?! bite| bit| bitt| sting| stung)(?!.*\\b(?:me|my ${PART}|${LIMB})\\b).*\\bbleed|\\bbleed(?:ing|s)? (?:the )?(?:air|valve|line|pipe|pump)|\\bair bleed`,
  ),
  rule(
    "wound",
    `\\b(?:${MINE}|the|a) (?:[a-z]+ )?${LIMB}\\b.{0,40}\\b(?:swollen|swelling|swelled|bleed\\w*|blood|numb|infected|infection|red|rash|blister\\w*|burn\\w*|throbbing|hurts?|hurting|painful|pain|cut|sliced|broken|crushed|turned (?:white|black|blue|red)|turning (?:white|black|blue|red)|itch\\w*|stinging|peeling|stuck|purple|puffy|pus|tender|sore)\\b`,
    `\\b${FISH}s? (?:fin|tail)`,
  ),
  rule(
    "wound",
    `\\b(?:infected|swollen|bleeding|numb|burned|burnt|crushed|broken|cut|blistered|throbbing|itchy|injured|sore|sliced|bitten|stung) (?:${MINE} |the )?(?:[a-z]+ )?${LIMB}\\b`,
  ),
  rule(
    "wound",
    `\\b(?:red (?:line|streak)s?|rash|swelling|pain|blisters?|burn|burns|numbness|hives|welts?|infection|cut|gash|wound)\\b.{0,20}\\b(?:on|up|in|down|across|of|to)\\b (?:${MINE} |the )?(?:[a-z]+ )?${LIMB}\\b`,
  ),
  rule(
    "wound",
    `^(?:i |ive |just |help |badly )*cut (?:myself|himself|herself|${MINE} (?:[a-z]+ )?${PART})\\b`,
  ),

  rule(
    "wound",
    `(?:^|\\b(?:${ONE}) )(?:just |have |has |think i have )*(?:got|have|has|had) an? (?:[a-z]+ ){0,2}(?:cut|gash|burn|bite|sting|wound|blister|rash|splinter|concussion)\\b`,
    "\\bcut (?:of|in) (?!my|the)|\\ba (?:price|power|water) cut|\\bbite (?:to eat|size)",
  ),
  rule(
    "wound",
    `\\b(?:cant|cannot|can not|can hardly) (?:feel|move|bend|lift|open|use) ${MINE} (?:[a-z]+ )?${PART}\\b`,
  ),
  rule("wound", `\\b${LIMB} (?:infections?|injur(?:y|ies)|wounds?|bleeds?|pains?|numbness)\\b`),
  rule(
    "wound",
    "\\b(?:exploded|blew up|shattered|burst)\\b.*\\b(?:in my face|at me|on me|hurt|injured|near me)\\b",
  ),
  rule(
    "swallowed",
    `\\b(?:drank|drunk|swallowed|ate|eaten|licked|ingested)\\b.*\\b${CHEMICAL}\\b.*\\b${KIN}\\b`,
  ),

  // Burns and splashes.
  rule(
    "burn",
    `\\b(?:${CHEMICAL}|hot water|salt ?water|sand|glue|epoxy|resin|cement|juice|toxin|slime)\\b.*\\b(?:in|into) eyes?\\b|\\b${CHEMICAL}\\b.*\\b(?:in|into|on|onto|over|to|up)\\b (?:both |${MINE} |the |one |her |his )+(?:[a-z]+ )?(?:${PART})\\b|\\b${CHEMICAL}\\b.*\\b(?:on|over|onto) (?:me|myself|himself|herself|him|us)\\b`,
    `\\bin (?:the|my) (?:head ?tank)\\b|\\b${FISH}s? ${PART}\\b`,
  ),
  rule(
    "burn",
    `\\b(?:splash\\w*|squirt\\w*|sprayed|spilled|spilt|spill|dripped|poured|got)\\b.*\\b(?:${MINE}) (?:[a-z]+ )?(?:${PART})\\b.*|\\bin (?:both )?my eyes?\\b`,
    `^(?!.*\\b(?:${CHEMICAL}|eyes?|hot|burn\\w*|face|skin)\\b)`,
  ),
  rule(
    "burn",
    `\\b(?:burned|burnt|scalded|burning|burns?|burn)\\b (?:[a-z]+ )?(?:${WHOM}|(?:${MINE}|the) (?:[a-z]+ )?(?:${PART}))\\b|\\b${MINE} (?:[a-z]+ )?(?:${PART})s? (?:is |are |was |were |keeps? |feels? like |started )*(?:burn\\w*|sting\\w*|on fire)\\b`,
  ),

  // Swallowed.
  rule(
    "swallowed",
    `\\b(?:${ONE})(?: [a-z]+){0,3}? (?:swallowed|swallow|ingested|gulped|licked)\\b`,
    `\\b${FISH}(?: [a-z]+){0,2} (?:swallowed|swallow|gulped|ingested)\\b`,
  ),
  rule(
    "swallowed",
    `\\b(?:${ONE})(?: [a-z]+){0,3}? (?:drank|drunk|drinks?|ate|eaten|tasted|eating|drinking|sipped)\\b.*\\b(?:${CHEMICAL}|pellets|resin|from the (?:tank|reservoir|jug|bottle)|some|media|test)\\b`,
    "\\b(?:drank|had|drinking) (?:coffee|tea|beer|water while)\\b",
  ),
  rule(
    "swallowed",
    `^(?:accident\\w* |just |help |oops )*(?:swallowed|swallow|ingested|drank|gulped)\\b`,
    `\\b${FISH}\\b|^swallowed (?:by|up)\\b|\\bwater level\\b|\\bdrank (?:the )?(?:water|reservoir) (?:level|down)\\b`,
  ),
  rule(
    "swallowed",
    `\\bmouthful of\\b|\\b(?:in|into) my mouth\\b.*\\b(?:${CHEMICAL})\\b|\\b(?:${CHEMICAL})\\b.*\\b(?:in|into) my mouth\\b`,
    `\\b${FISH} (?:takes?|took|has|with|spits?)\\b`,
  ),
  rule(
    "swallowed",
    `\\b(?:${KIN}|someone|somebody|i|we|he|she)\\b.*\\bpoison(?:ed|ing)?\\b|\\b(?:palytoxin|chemical|ciguatera|ammonia|chlorine|copper|vinegar|carbon monoxide|co) poisoning\\b`,
    `\\b${FISH}\\b.*\\bpoison|\\bpoison(?:ed|ing)? (?:my|the|our) ${FISH}|\\bwill (?:they|it) (?!(?:kill|hurt|harm|affect|make|poison)\\b.*\\b(?:me|us|him|her)\\b|hurt\\b|go away)`,
  ),
];

/** Worth one question before anything else. */
const POSSIBLE: readonly Rule[] = [
  rule("wound", `\\b(?:my|his|her) (?:[a-z]+ )?${LIMB}\\b`, "\\bin my hands?\\b"),
  rule(
    "sting",
    `\\b(?:${VENOMOUS})\\b.*\\b(?:sting|stings|stung|venom|venomous|poisonous|spines)\\b|\\bstung\\b`,
    `\\bstung (?:by )?(?:the|an?|my) (?:anemone|coral|one|other|others|${FISH})\\b`,
  ),
  rule(
    "wound",
    "\\bi (?:cut|hurt|injured)\\b|\\bam i (?:ok|hurt|in danger)\\b|\\bis (?:it|this) an emergency\\b|\\bwe need help now\\b",
    "\\bi cut (?:the|back|down|a|some|my (?:food|feeding|light|dose|algae|pipe|acrylic|glass|prawn|rock))\\b",
  ),
  rule("unwell", `\\b(?:${ONE}) (?:is |are |was |am |got |feel |feels )*(?:sick|ill|unwell|hurt|numb)\\b`),
  rule("gas", "\\b(?:fumes|suffocat\\w+)\\b"),
];
