import type { RightPerson } from "./meaning.ts";

interface Decline {
  readonly who: RightPerson;
  readonly pattern: RegExp;
  readonly unless?: RegExp;
}

const ANIMAL =
  "(?:fish(?:es)?|clown(?:fish)?s?|tangs?|triggers?|triggerfish|groupers?|eels?|morays?|damsels?|wrasses?|angel(?:fish)?s?|gob(?:y|ies)|blenn(?:y|ies)|shrimps?|rays?|sharks?|lionfish|puffers?|anemones?|seahorses?|chromis|anthias|stingrays?|starfish|snails?|corals?|goldfish|betta|discus|cichlids?|koi|animals?|crabs?|him|her|he|she)";
const ILLNESS =
  "(?:ich|ick|whitespot|(?:white|black|red) (?:spots?|dots?|specks?|patch(?:es)?|sores?)|velvet|brooklynella|brook|flukes?|fin ?rot|dropsy|pop ?eyes?|cloudy eyes?|ulcers?|fungus|fungal|bacterial|columnaris|lymphocystis|uronema|tumou?rs?|parasites?|parasitic|worms|lice|hole in the head|head and lateral line|septic|infection|infected|disease[ds]?|symptoms?|swim bladder|bloat(?:ed|ing)?|constipated|sick|ill|lethargic|gasping|clamped fins?|wasting|starving|swollen (?:belly|eye|gill|mouth|fin)|lesions?|mucus|slime coat|vet|diagnos\\w+|swimming (?:upside down|sideways|in circles|funny|weird\\w*)|upside down|on its side|lying on (?:the|its)|laying on (?:the|its)|breathing (?:fast|hard|heav\\w+|rapid\\w*)|breathes fast|scratching|flashing|rubbing|not eating|wont eat|stopped eating|isnt eating|refus\\w+ (?:to eat|food)|off its food|losing colou?r|lost (?:its )?colou?r|torn fins?|bitten fins?|stringy poo\\w*|raised scales|pineconing)";
const MEDICINE =
  "(?:copper|formalin|formaldehyde|malachite|methylene|praziquantel|prazi|chloroquine|metronidazole|antibiotics?|erythromycin|kanamycin|nitrofurazone|furan|doxycycline|tetracycline|minocycline|amoxicillin|penicillin|levamisole|fenbendazole|ivermectin|medic(?:ine|ines|ation|ations|ated?)|meds?|drugs?|dewormer|anti ?parasitic|acriflavine|sulfa|hyposalinity|hypo|freshwater dips?|fresh water dips?|sedat\\w+|anaesthe\\w+|anesthe\\w+|clove oil|euthan\\w+|potassium permanganate|quinine|trichlorfon)";

const to = (who: RightPerson, pattern: string, unless?: string): Decline => ({
  who,
  pattern: new RegExp(pattern),
  ...(unless === undefined ? {} : { unless: new RegExp(unless) }),
});

/** Asks of when something happened, or logs it: the record answers, nobody is being treated. */
const OF_THE_RECORD =
  "^(?:when (?:did|was|were|have)|how long (?:since|ago)|last |date of|how many|log |record |save |note |write down |did i |have i )";

const DECLINES: readonly Decline[] = [
  // Animals: what ails them and what to give them.
  to("vet", `\\b${MEDICINE}\\b`, `${OF_THE_RECORD}|\\bcopper (?:pipe|wire|tube|fitting)`),
  to("vet", `\\b${ILLNESS}\\b.*\\b${ANIMAL}\\b|\\b${ANIMAL}\\b.*\\b${ILLNESS}\\b`, OF_THE_RECORD),
  to(
    "vet",
    `\\b(?:treat\\w*|cure\\w*|heal\\w*|help|remedy|get rid of|kill|medicate)\\b.*\\b${ILLNESS}\\b|\\b${ILLNESS}\\b.*\\b(?:treat\\w*|cure|help|remedy|medicat\\w+|what (?:now|do i do|to use|to do))\\b`,
  ),
  to(
    "vet",
    "\\b(?:disease|illness|diagnos\\w+|(?:need|find|call|see) an? vet)\\b|\\b(?:lost|losing|lose) (?:\\d+|a|another|my|some|all|more|two|three) (?:more )?(?:fish|corals?|animals)\\b.*\\b(?:why|wrong|happen\\w*|what)\\b",
    OF_THE_RECORD,
  ),
  to(
    "vet",
    "^(?:is (?:it|this|that) )?(?:ich|ick|whitespot|white spot|marine velvet|velvet|fin ?rot|pop ?eye|flukes|dropsy|brooklynella)\\b",
  ),
  to("vet", `\\b(?:treat|medicate|dip|deworm|cure|bathe)\\b.*\\b${ANIMAL}\\b`),
  to(
    "vet",
    `\\b(?:whats|what is|something|anything|somethings)\\b.*\\b(?:wrong|killing|kills|matter)\\b.*\\b${ANIMAL}\\b|\\bwhy\\b.*\\b${ANIMAL}\\b.*\\b(?:die|died|dying|dead|die ?off|sick|hiding|swim\\w*|breath\\w*)\\b|\\bwhy (?:is|are|did|has|do)\\b.*\\b${ANIMAL}\\b.*\\b(?:dying|die)\\b`,
  ),
  to(
    "vet",
    `\\b${ANIMAL}\\b.*\\b(?:is|are|keeps?|keep|looks?|look|seems?|almost|nearly|might be|going to) (?:all )?(?:dying|die|dead|hurt|injured|poorly|bleeding|weak|pale|unwell|stressed)\\b|\\b(?:is|are) (?:my|the|our) ${ANIMAL} (?:dying|dead|ill|sick|ok|okay|alright|hurt)\\b`,
    OF_THE_RECORD,
  ),
  to(
    "vet",
    `\\b${ANIMAL}\\b.*\\b(?:has|have|had|got|with|developed)\\b.*\\b(?:spots?|patch(?:es)?|lump|bump|growth|swell\\w*|swollen|cloudy|bulging|wound|sores?|bites?|cuts?|rash|redness|film|white|hole)\\b`,
  ),

  // Mains power.
  to(
    "electrician",
    "\\b(?:gfci|gfi|rcd|rcbo|elcb|residual current|stray voltage|earth(?:ing|ed)? (?:leak\\w*|rod|wire|fault)|ground(?:ing|ed)? (?:probe|rod|wire|fault)|extension (?:lead|cord|cable)|power strips?|daisy chain\\w*|multi ?plug|socket outlet|fuse ?box|consumer unit|junction box|conduit)\\b",
  ),
  to(
    "electrician",
    "\\b(?:fuses?|breakers?|wiring|rewir\\w+|wire (?:gauge|size)|(?:size|gauge|thickness) (?:of )?(?:cable|wire)|cable (?:size|gauge)|circuit breakers?|mains|contactor|relay|sockets?|outlets?|220 ?v|230 ?v|240 ?v|110 ?v|120 ?v|live wire|neutral wire|amp(?:s|ere)? (?:breaker|circuit|fuse|socket|outlet))\\b",
    "\\bmains water\\b|\\boutlets? (?:pipe|of the)\\b|\\b(?:drain|water) outlets?\\b",
  ),
  to(
    "electrician",
    "\\b(?:wire|hard ?wire|splice|solder|rewire)\\b.*\\b(?:up|in|the|a|an|my|pump|heater|switch|light|lamp|cable|controller|chiller|float|socket|plug)\\b|\\b(?:splice|cut|repair|extend|shorten|damaged|frayed)\\b.*\\b(?:cable|cord|power lead|flex)\\b",
  ),
  to(
    "electrician",
    "\\b(?:ground|earth)\\b (?:my|the|a) (?:tank|sump|water|system|aquarium|stand|pump|light)\\b|\\belectric(?:al|s|ity|ian)?\\b.*\\b(?:install\\w*|connect\\w*|safe|fault|work|leak\\w*|plug|switch)\\b|\\bplug\\b.*\\b(?:in|into|together)\\b.*\\b(?:one|same|lead|strip|socket|outlet|adapter|adaptor)\\b",
  ),

  // What carries the weight, and what holds the water.
  to(
    "engineer",
    "\\b(?:floors?|joists?|floorboards?|second floor|first floor|upstairs|slab|balcony|beams?|ceiling|apartment|storey|story|subfloor|foundation)\\b.*\\b(?:hold|take|carry|bear|support|reinforce\\w*|strong|strength|weight|load|collapse|safe|kg|ton(?:ne)?s?|tank|litres?|gal\\w*|l)\\b|\\b(?:hold|take|carry|bear|support|reinforc\\w*|strong|strength|weight|weigh|load|put|place|go through|fall through|heavy|kg|tons?|tonnes?|pounds|lbs)\\b.*\\b(?:floors?|joists?|floorboards?|upstairs|balcony|beams?|ceiling|subfloor)\\b",
  ),
  to(
    "engineer",
    "\\b(?:stand|cabinet|frame|rack|shelf|shelves|bench)\\b.*\\b(?:strong|strength|hold|support|carry|take|build|made|safe|thick\\w*|2x4\\w*|plywood|brace|weight|design)\\b|\\b(?:build|strong|make|design|hold|brace)\\b.*\\b(?:stand|cabinet|rack)\\b",
  ),
  to(
    "engineer",
    "\\b(?:thick|thickness|thicker|how thin|deep|depth|high|tall|mm|strong enough|hold)\\b.*\\b(?:glass|acrylic|panel|pane|wall|perspex|plywood|tank|polycarbonate|sheet)\\b|\\b(?:glass|acrylic|panel|pane|wall|perspex|plywood|polycarbonate)\\b.*\\b(?:thick|thickness|thicker|mm thick|deep|tall|high)\\b|\\b(?:euro ?brac\\w+|bracing|braces?|crossbar|cross brace|safety factor|silicone seam|glass (?:bow\\w*|crack\\w*)|\\b(?:crack\\w*|split|bulge)\\b.{0,15}\\b(?:glass|pane|panel|seam|acrylic|wall)|(?:seam|panel|glass|acrylic|wall)s? (?:is |are )?(?:bowing|bulging|crack\\w*|split\\w*))\\b",
  ),
];

/** Who can answer this better than a bot may; undefined when it is nobody's trade but ours. */
export function declineTo(text: string): RightPerson | undefined {
  return DECLINES.find(({ pattern, unless }) => pattern.test(text) && unless?.test(text) !== true)?.who;
}
