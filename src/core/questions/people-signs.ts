import { MINE, ONE, type Rule, rule, WHOM } from "./people-rule.ts";
import { CHEMICAL, FISH, KIN, LIMB, PART, POLYP, VENOMOUS } from "./people-words.ts";

// What a hurt person says without naming the injury: the signs it shows, what was touched before, and the
// questions asked in distress. Each rule joins two kinds of words that seldom meet otherwise.

/** Somebody, in any case. */
const PERSON = `(?:i|im|ive|id|me|myself|we|us|he|hes|she|shes|him|someone|somebody|everyone|everybody|guest|${KIN}|my|our)`;

/** What no fish does. */
const HUMAN_SIGN =
  "(?:cough(?:s|ed|ing)?|shiver(?:s|y|ed|ing)?|chills|wheez\\w+|vomit\\w*|puk(?:e|ed|es|ing)|retching|gagging|threw up|throw(?:s|ing)? up|being sick|been sick|drool(?:s|ing)|slurr\\w+|hives|palpitations|sweats|sweating(?! over| about| it| the)|migraine|diarrh?oe?a|pins and needles|goosebumps|hot flush\\w*|light ?headed|woozy|nauseous|nausea|feverish|foaming|delirious|hallucinat\\w+|blacking out|short of breath|out of breath|hyperventilat\\w+|struggl\\w+ for breath|gasping for (?:air|breath)|numb(?:ness)?|paraly[sz]ed|tingl\\w+|throbbing|in agony|in shock|in (?:a lot of|so much|severe|terrible|real|awful|horrible|bad|great|serious) pain|screaming in pain)";

/** The animal is the one that shows it. */
const OF_A_FISH = `\\b${FISH}(?: [a-z]+){0,2} (?:is|are|was|were|has|have|keeps?|started|starts|looks?|seems?|just|been)\\b|\\bwater shivers|\\bin shock (?:at|about|over)\\b`;

/** Signs weighed only where something harmful was handled. */
const ANY_SIGN = `(?:${HUMAN_SIGN}|sick|ill|unwell|poorly|rough|awful|weak|faint|fainty|dizzy|fever|flu|achy|aching|aches|ache|headache|tight|racing|pounding|swell\\w*|swollen|rash|itch\\w*|burn\\w*|sore|red|blurr\\w*|streaming|watering|cramps?|shak(?:y|ing)|metallic|sting\\w*|hurts?|hurting|pain\\w*)`;
const OF_A_PERSON = `(?:i (?:feel|felt|have|had|got|get|am|was|started|keep|cant|cannot|think)|im|ive (?:got|had|been|felt|started|a|come)|feeling|makes? me|made me|gave me|gives me|me|my (?:[a-z]+ ){0,2}(?:[LP][a-z]+|heart|pulse|vision|eyesight|breathing|head|skin|sinuses|lungs|K[a-z]+)|we (?:all|both|are|feel|have)|he (?:feels|is)|she (?:feels|is)|${KIN})`;
const HANDLED =
  "(?:fragg\\w*|frag|frags|cut|cuts|cutting|chopp\\w*|saw\\w*|slic\\w*|hack\\w*|scrap\\w*|scrub\\w*|boil\\w*|brush\\w*|blast\\w*|pressure wash\\w*|steam\\w*|microwav\\w*|peel\\w*|handl\\w*|touch\\w*|clean\\w*|remov\\w*|kill\\w*|crush\\w*|squirt\\w*|squish\\w*|smash\\w*|pull\\w*|rip\\w*|break\\w*|broke|mov(?:ed|ing)|picked up|rubb\\w*|juic\\w*|pour\\w*)";

/** Questions asked by one who fears for himself. */
const DISTRESS =
  "(?:am i (?:going to|gonna|in|ok|okay|alright|poisoned|at risk)|(?:should|do) i (?:worry|be worried|be concerned|panic|see|call|ring|phone|go (?:to|and see)|need (?:a|an|to see|to go|medical|help))|will i (?:be|die|lose|get)|could i (?:die|be|have been|lose)|can (?:it|this|that|they) (?:kill|hurt|harm|poison) (?:me|us|you|people|humans|someone)|dangerous (?:to|for) (?:me|us|humans|people|kids|children|the kids)|what (?:do|should|can|shall|must|to) (?:i |we )?do(?: now)?|what now|wat do i do|help|urgent|emergency|is (?:it|this|that) (?:dangerous|serious|bad|poisonous|toxic|deadly|venomous))";

const HOSPITAL =
  "(?:hospital|doctors?|gp|a&e|a and e|er|casualty|emergency (?:room|department)|urgent care|medical (?:help|attention|advice|care)|tetanus(?: shot| jab)?|stitches|paramedics?|ambulance|poison (?:control|centre|center|line)|antivenom|antivenin|painkillers?|burn cream|999|911|112)";

/** What hands are for around a tank. */
const EVERYDAY_HANDS = `\\b(?:put|puts|putting|stuck|stick|sticks|sticking|dip|dipping|reach|reaching|get|getting|place|placing|wash|washing|washed|rinse|rinsing|wave|waving|clean|use|using|used|fit|with|by|size of|big as|than|to|out of|off|wet|dry|submerge|keep|take|have|having|see|nibbl\\w*|tickl\\w*|clean\\w*|at|under|hold|holding|tap\\w*|stretch\\w*|test with|both of)(?: [a-z]+){0,2} (?:${MINE}) (?:[a-z]+ ){0,2}${LIMB}\\b(?!.*\\b(?:now|since|burn\\w*|and)\\b)|\\b(?:eats?|fed|feeds?|feeding|eating|ate|takes?|taking|food|prawn|comes?|came|swims?|swam|sits?|sat|follows?|rests?|perch\\w*|hosts?|hosting|likes?|loves?)\\b.*\\b(?:from|out of|to|in|on|into|off|near|through|at)\\b (?:${MINE}) (?:[a-z]+ )?${LIMB}\\b|\\b(?:on|off) (?:my|our|his|her) hands\\b|\\b${MINE} (?:[a-z]+ )?${LIMB} (?:smells?|stinks?|is too|are too|wont fit|doesnt fit|fits?|gets? wet|are wet|in the (?:tank|water))\\b(?!.*\\b(?:now|since)\\b)|\\b${KIN}s? (?:[a-z]+ ){0,2}${LIMB} (?:feeds?|fed|me|over|it)\\b|\\bfish(?:s|es)? (?:fin|tail)`;

/** What is asked for against a sting. */
const RELIEF =
  "(?:treat\\w*|wears?|wear off|hot water|ice|vinegar|heal\\w*|remed\\w+|relief|relieve|first aid|cure|painkillers?|burning|swelling|fade|go away|goes away|lasts?|urine|pee|what now|what do i do|antihistamines?|soak)";

export const SIGNS: readonly Rule[] = [
  // Signs of a person.
  rule("unwell", `\\b${PERSON}\\b.*\\b${HUMAN_SIGN}\\b`, OF_A_FISH),
  rule(
    "unwell",
    `\\b${HUMAN_SIGN}\\b.*\\b(?:since|after|when|while|from)\\b.*\\b(?:i|we|handling|touching|cleaning|fragging|cutting)\\b`,
    OF_A_FISH,
  ),
  rule(
    "unwell",
    `\\b(?:${MINE}|the) (?:heart|pulse)(?: (?:is|was|keeps?|rate|been|has|started|feels?|like|its))* (?:racing|pounding|fluttering|skipping|beating|irregular|going)\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:${KIN}|i am|im|he is|she is) (?:is |are |has |have |keeps? |been |started |just |all |now )*(?:shaking(?! the| a| my| it| up)|trembling|choking|limp|turning blue|gone blue|turned blue|unresponsive|twitching|not responding|gasping)\\b`,
    `\\b${FISH}s?\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:cant|cannot|can not|can hardly|can barely|couldnt|hard to|struggl\\w+ to) (?:see (?:out|properly|straight|clearly)|swallow|stand|walk|speak|talk properly|stay awake|breath|catch (?:my|his|her) breath)\\b`,
    `\\b${FISH}\\b|\\bsee (?:out|clearly|properly) (?:of |in |into |through )?(?:the|my) (?:tank|glass|water|front)|\\bcant stand (?:the|this|that|it|my|these|algae|how)\\b`,
  ),
  rule(
    "burn",
    "\\b(?:blurr\\w+|double|foggy|hazy|lost my|losing my|tunnel) (?:vision|eyesight|sight)\\b|\\bmy (?:vision|eyesight|sight) (?:is|has|went|gone|keeps)\\b|\\bi (?:am |have |ve )?(?:going|gone|went) blind\\b",
  ),
  rule(
    "unwell",
    "\\b(?:hives|rash|welts?|blisters?|bumps|spots|itch\\w*|burn\\w*|stings?|cuts|blood) (?:[a-z]+ )?(?:all over|over|on|down) (?:me|myself|him|himself|her|herself|us)\\b",
    `\\b(?:on|over) her (?:tail|fins?|body|belly|scales)\\b|\\b${FISH}\\b`,
  ),
  rule(
    "unwell",
    "\\b(?:it|this|that) (?:really |still |now |just )*(?:hurts?|burns?|stings?|aches?|throbs?|itches) (?:like|so|a lot|bad|badly|really|loads|to touch|when i)\\b",
    `\\b${FISH}\\b|\\bhurts? to (?:see|watch|think)\\b|\\b(?:wallet|budget|bank|price|bill|pay)\\b`,
  ),

  // Something harmful was handled, and now somebody is unwell.
  rule(
    "unwell",
    `\\b(?:${POLYP})\\b.*\\b${OF_A_PERSON}\\b.*\\b${ANY_SIGN}\\b|\\b${OF_A_PERSON}\\b.*\\b${ANY_SIGN}\\b.*\\b${POLYP}\\b|\\b${ANY_SIGN}\\b.*\\b(?:after|since|from)\\b.*\\b${HANDLED}\\b.*\\b${POLYP}\\b`,
    `\\b(?:${FISH}|${POLYP}) (?:is|are|was|were|looks?|has|have|had|got) (?:[a-z]+ )*(?:sick|ill|red|weak|sore|swollen|closed|burn\\w*|sting\\w*)\\b|\\bsting\\w* (?:my|the|each|other|its) (?:other|${FISH}|${POLYP})|\\bred ${POLYP}\\b|\\bmy (?:[a-z]+ )?(?:red|burning)\\b`,
  ),
  rule(
    "unwell",
    `\\b${HANDLED}\\b.*\\b(?:${POLYP}|${VENOMOUS}|corals?)\\b.*\\b${DISTRESS}\\b`,
    `\\b(?:for|to|with) (?:the|my|other|our) (?:other )?(?:${FISH}|tank|water)|\\bhelp (?:with|them|it|him|her|the)\\b|\\b(?:is|are|was) (?:closed|dying|dead|bleaching)\\b|\\bmov(?:ed|ing)\\b`,
  ),
  rule(
    "unwell",
    `\\b${POLYP}\\b.*\\b(?:in|into|on|onto)\\b (?:${MINE}|the|an?|both|one) (?:[a-z]+ ){0,2}(?:${PART}|cut|wound|graze|scratch)\\b`,
    `\\bin (?:the|my) (?:back|face)\\b(?! of)|\\b(?:on|in|at) the (?:back|face|bottom|left|right)\\b`,
  ),
  rule(
    "burn",
    `\\b(?:squirted|sprayed|splashed|spat|spit|hit|shot|poked|struck|jabbed|splattered|spritzed)\\b(?: [a-z]+){0,3} (?:in|into|on|across) (?:the|${MINE}|one|both|an?) (?:left |right )?(?:${PART})\\b`,
    `\\b${FISH}s? (?:was|got|were|has|have|is)\\b|\\bon the back\\b`,
  ),
  rule(
    "burn",
    `\\b(?:${MINE}|both|one|left|right|an) (?:own |left |right |poor )?(?:eyes?|eyelids?|skin|lips?|mouth|throat|face)\\b(?: [a-z]+){0,4} (?:red|sore|watering|streaming|bloodshot|stuck|glued|shut|sealed|weeping|painful|hurts?|hurting|itch\\w*|blurr\\w*|peeling|raw|blistered|blistering|numb|tingl\\w*|on fire)\\b`,
    `\\b(?:his|her|their|one|an|both|right|left) (?:own |left |right )?(?:eyes?|mouth|lips?|skin|face)\\b|\\b${FISH}s?\\b(?!.*\\bmy P)|\\bmy ${FISH}`,
  ),
  rule(
    "wound",
    `\\b(?:super)?(?:glued|glue|stuck|epoxied)\\b(?: [a-z]+){0,2} (?:${MINE} )(?:[a-z]+ )?(?:${PART})s?\\b|\\b(?:glue|epoxy|putty)\\b.*\\b(?:in|on|to)\\b (?:${MINE}) (?:[a-z]+ )?(?:eyes?|eyelids?|lips?|${LIMB})\\b`,
    `\\bstuck (?:${MINE} )(?:[a-z]+ )?${LIMB} (?:in|into)\\b`,
  ),
  rule(
    "wound",
    `\\b(?:lumps?|sores?|bumps?|ulcers?|nodules?|boils?|scabs?|punctures?|scratch(?:es)?|scrapes?|grazes?|nicks?|splinters?|marks?|spots?|wounds?|cuts?|gash|stings?|bites?|bruises?|abscess)\\b(?: [a-z]+){0,3}? (?:on|in|to|across|down|up) (?:the (?:back|side|tip|top) of )?${MINE} (?:[a-z]+ )?(?:${PART})\\b`,
    `\\b(?:his|her|their) (?:[a-z]+ )?P[a-z]+\\b|\\b${FISH}s? (?:has|have|got|with)\\b|\\bin my hands? (?:is|are)\\b`,
  ),
  rule(
    "wound",
    `\\b(?:tank water|dirty water|salt ?water|pond water|sump water|chemical|${CHEMICAL}|slime|gunk|mucus|venom|juice)\\b(?: [a-z]+){0,3} (?:in|into|on) (?:an?|my|the|his|her) (?:open |fresh |deep |small )?(?:cuts?|wounds?|graze|scratch|sore|nick)\\b`,
    `\\b${FISH}\\b`,
  ),

  // Struck, with a verb of striking and somebody struck.
  rule(
    "sting",
    `^(?:(?!\\b${FISH}).)*\\b(?:i|ive|just|got|been|was|were|get|getting|am|hes|shes) (?:[a-z]+ ){0,2}?(?:poked|pricked|pierced|punctured|impaled|nailed|tagged|jabbed|spiked|barbed|slashed|sliced|pinched|nipped|clawed|whacked|smacked|slapped|hit|struck|attacked|scratched|grabbed|latched|envenomed|harpooned) (?:[a-z]+ )?(?:by|from) (?:an? |the |my |his |her |our |their |one of )?(?:[a-z]+ ){0,3}?${FISH}\\b`,
    `\\b(?:${MINE}|the) (?:new |other |poor )?(?:pump|heater|probe|coral|rock|frag|glass|skimmer)\\b.*\\b(?:hit|scratched|attacked|grabbed)\\b`,
  ),
  rule(
    "sting",
    `\\b${FISH}(?: [a-z]+){0,3}? (?:poked|pricked|pierced|punctured|impaled|nailed|tagged|jabbed|spiked|stabbed|slashed|sliced|pinched|nipped|clawed|whacked|smacked|slapped|struck|attacked|scratched|grabbed|bit|bites|latched|clamped|lunged|shocked|zapped|stung|got|cut|gored|speared|punched|savaged|drew)(?: [a-z]+)?(?: onto| on to| on| at| through)? (?:me|myself|him|us|someone|somebody|(?:my|his|her|our|the|a) (?:[a-z]+ )?(?:${KIN}|${LIMB}))\\b`,
    `\\b(?:got|shocked|struck|stung) (?:me|us|him) (?:a|an|the|some|to|into|thinking|wondering|hooked|started|worried|with how|how|as|by how|that)\\b|\\b(?:bit|bites|attacked|grabbed|nipped) him\\b(?!.*\\b${LIMB}\\b)|\\b(?:takes?|took|eats?|feeds?) (?:food )?from (?:my|the) ${LIMB}|\\bthe back\\b`,
  ),
  rule(
    "bite",
    `\\b${FISH}\\b.*\\b(?:drew|drawn|drawing) blood\\b|\\b(?:tip|end|top|bit|piece|chunk|half) (?:of|off) (?:${MINE} )(?:[a-z]+ )?(?:${LIMB})\\b`,
    `\\b${FISH} (?:[a-z]+ )*(?:drew|drawing) blood (?:from|on) (?:the|my|another|its) (?:${FISH})`,
  ),
  rule(
    "sting",
    `\\b(?:stung|sting|stings|stinging|bite|bitten|bit|wound|venom|spine|barb|puncture|burn|rash)\\b.*\\b(?:i|me|my|mine|he|she|him|we|${KIN})\\b.*\\b${HOSPITAL}\\b|\\b${HOSPITAL}\\b.*\\b(?:stung|stings?|bite|bites|bitten|bit|spine|barb|venom|burn|burnt|burned|cut|fumes|gas|shock|swallowed|drank|swelling)\\b`,
    `\\bhospital (?:tank|system)\\b|\\b${HOSPITAL} (?:for|treat\\w*) (?:my|the|a) ${FISH}\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:should|do|must|shall|need to|have to|going to|off to|on (?:my|our) way to|rushed|taken|took (?:him|her|me|my ${KIN})) (?:i |we |he |she )?(?:[a-z]+ )?(?:need|go|see|get|call|ring|phone|visit|to|be)? ?(?:to |in )?(?:the |a |an |my )?(?:[a-z]+ )?${HOSPITAL}\\b`,
    `\\bhospital (?:tank|system)\\b|\\bfish doctor\\b|\\b(?:for|my|the|this) (?:sick )?${FISH}s?\\b`,
  ),
  rule("sting", `\\b${VENOMOUS}\\b.*\\b(?:agony|excruciating|antivenom|antivenin|hot water on)\\b`),

  // Mains, fire, weight, air.
  rule(
    "shock",
    `\\b${PERSON}\\b.*\\b(?:thrown|knocked|flung|blown|jolted) (?:back|backwards?|across|off (?:my|his|her|their) feet|to the floor)\\b`,
    `\\b${FISH}\\b|\\bknocked back (?:a|some|the)\\b`,
  ),
  rule(
    "burn",
    `\\b(?:${MINE}) (?:[a-z]+ )?(?:sleeve|shirt|hair|clothes|clothing|jumper|trousers|jeans|beard|eyebrows|glove|gloves|eyebrows)\\b.*\\b(?:fire|alight|singed|burn\\w*|caught|flames?|melted)\\b|\\b(?:set|caught) (?:me|myself|himself|herself) (?:on fire|alight)\\b|\\b(?:singed|scorched) ${MINE}\\b`,
  ),
  rule(
    "wound",
    `\\b(?:${ONE})(?: [a-z]+){0,2} (?:trapped|pinned|crushed|squashed|buried|stuck) (?:under|underneath|beneath|between|by)\\b|\\b(?:trapped|pinned|crushed|squashed) (?:${WHOM}|${MINE} (?:[a-z]+ )?(?:${PART}))\\b`,
    `\\b${FISH}s? (?:is |are |got |was )*(?:trapped|stuck|pinned|crushed)`,
  ),
  rule(
    "gas",
    "\\b(?:room|house|garage|basement|cellar|shed|kitchen|bathroom|place|flat)\\b.*\\b(?:full of|filled (?:up )?with|fills with|stinks of|reeks of|thick with|hazy with)\\b(?: [a-z]+){0,2} (?:gas|fumes?|smoke|co2|carbon dioxide|vapou?rs?|chlorine|ozone|bleach|ammonia|acids?)\\b",
    "\\bif\\b.*\\bwould\\b",
  ),
  rule(
    "gas",
    `\\b(?:${CHEMICAL}|fumes?|gas|co2|carbon dioxide|smoke|vapou?rs?|generator|burner|cylinder|regulator|reactor)\\b.*\\b${OF_A_PERSON}\\b.*\\b${ANY_SIGN}\\b|\\b${OF_A_PERSON}\\b.*\\b${ANY_SIGN}\\b.*\\b(?:after|since|from|with|near|in|by|when|while)\\b.*\\b(?:fumes?|gas|smoke|co2|carbon dioxide|chlorine|ozone|bleach|acids?|formalin|peroxide|vapou?rs?)\\b`,
    `\\b(?:fish|${FISH}s?|tank|corals?|reading|test|algae|fin|gills?)\\b`,
  ),

  // Swallowed.
  rule(
    "swallowed",
    `\\b${KIN}(?: [a-z]+){0,4} (?:eaten|eating|drunk|drinking|chewing|chewed|sucked|sucking|tasted|gulped|sipped|sipping|downed|necked|guzzled|licking|munched)\\b`,
    "\\b(?:lunch|dinner|breakfast|coffee|tea|beer|wine|juice)\\b",
  ),
  rule(
    "swallowed",
    `\\b(?:${KIN}|he|she|hes|shes|i|ive)\\b.*\\b(?:put|got|stuck|has|had|popped|found)\\b.*\\b(?:in|into|round|around) (?:his|her|their|my) mouth\\b`,
    `\\b${FISH}\\b`,
  ),
  rule(
    "swallowed",
    `\\b(?:${KIN}|i|we|he|she)\\b(?: [a-z]+){0,4} (?:drank|drunk|swallowed|ate|eaten|sipped|gulped|tasted)\\b.*\\b(?:bottle|jug|tablets?|sachet|powder|liquid|fluid|additive|supplement|kit|media|gel|granules|pellets?|battery|magnet|silica|carbon|resin|glue|putty)\\b`,
    `\\b${FISH}s? (?:[a-z]+ ){0,2}(?:ate|drank|eaten|swallowed)\\b|\\bhe (?:[a-z]+ )?(?:ate|eaten) (?:[a-z]+ ){0,2}pellets?\\b`,
  ),

  // A part of a person's body told of beside anything but everyday handling.
  rule("wound", `\\b(?:${MINE}|${KIN}) (?:[a-z]+ ){0,2}${LIMB}\\b`, EVERYDAY_HANDS),
  rule(
    "wound",
    `\\b(?:my|our) ${KIN}s? (?:left |right |whole )?P[a-z]+\\b|\\b${KIN}s (?:left |right |whole )?P[a-z]+\\b`,
    "\\b(?:his|her) mind\\b",
  ),
  rule(
    "unwell",
    `\\b(?:my|his|her|our) (?:poor )?heads? (?:is |was |keeps? |has been |started |feels? )*(?:spinning|swimming|pounding|splitting|banging|thumping|throbbing|hurts?|hurting|fuzzy|foggy|light|woozy|swimmy|killing)\\b|\\b(?:room|everything|world)s? (?:is |was |started |keeps )*spinning\\b|\\b(?:seeing|see|saw) (?:double|stars)\\b|\\boff balance\\b|\\blost (?:my|his|her) balance\\b|\\bvertigo\\b|\\bunsteady on\\b|\\bfrostbite?\\b`,
    `\\b(?:maths?|numbers|figures|sums|units|formulas?|formulae|equations|choices|options)\\b|\\b${FISH}s?\\b`,
  ),
  rule(
    "unwell",
    `\\b(?:${KIN}|he|she|i) (?:[a-z]+ ){0,2}(?:went|gone|turned|turning|going|looks|looking|is) (?:very |all |really |a bit |completely )*(?:grey|gray|white|pale|blue|limp|floppy|clammy|green|glassy eyed|cold and)\\b`,
    `\\b(?:he|she|it)\\b.*\\b(?:fin|gills?|scales|belly|colou?r)\\b|\\b${FISH}s?\\b|^(?:he|she) (?:is|went|turned|looks)\\b`,
  ),
  rule(
    "unwell",
    `\\b${KIN}\\b.*\\b(?:wont wake|not waking|isnt moving|not moving|not responding|isnt responding|no pulse|stopped breathing|on the floor|slid down|keeled over|flopped|slumped)\\b|\\b(?:cpr|defibrillator|no pulse)\\b`,
    `\\b${FISH}s?\\b`,
  ),
  rule(
    "wound",
    `\\b(?:i|ive|${KIN}|we) (?:just |nearly |almost |have |has |had )*(?:fell|fallen|slipped|tripped|tumbled|slid) (?:off|down|over|from|in|into|on|backwards?|headfirst)\\b`,
    `\\b(?:fell|slipped|fallen) (?:over|on|off) (?:the |my )?(?:schedule|dosing|wagon|water changes|feeding|testing|habit)\\b|\\bin love\\b`,
  ),
  rule(
    "wound",
    `\\b(?:came|come|crashed|tipped|landed|dropped|slid|toppled|collapsed|smashed|rolled|swung|fell|tumbled)\\b(?: [a-z]+){0,2} (?:on|onto|on top of|over|against|into) (?:${WHOM})(?! (?:to|that|how|why))\\b`,
    `\\b(?:on|over) (?:her|the|a) (?:[a-z]+ )?${FISH}`,
  ),
  rule(
    "wound",
    `\\b(?:cut|cutting|sliced|stabbed|drilled|sawed|sawn|stuck|jabbed|poked|pricked|injected|burned|burnt|scalded|shocked|zapped|gassed|poisoned|concussed|electrocuted|impaled|gashed|nicked|scraped|grazed|injured|hurt|hurting) (?:the [a-z]+ out of )?(?:myself|himself|herself|ourselves)(?! (?:some|a))\\b`,
  ),
  rule(
    "wound",
    `\\b(?:put|threw|pulled|did|done|wrenched|strained|twisted|sprained|tweaked|dislocated|fractured|popped) (?:out )?${MINE} (?:[a-z]+ )?(?:back|neck|${LIMB})(?! (?:in|into|up to))\\b|\\bpulled a muscle\\b|\\bslipped (?:a )?dis[ck]\\b|\\bhernia\\b`,
    `\\bput ${MINE}|\\bpulled ${MINE} ${LIMB} (?:out of|back|away)`,
  ),
  rule(
    "sting",
    "^(?:just |help |i |ive |have |been |so |well |um |uh |ow+ |ouch |argh+ )*(?:got |been |was |getting )(?:barbed|spined|spiked|jabbed|stabbed|poked|pricked|gassed|gashed|sliced|scratched|tagged|nailed|scalded|clawed|pinched)(?: (?:by|in|on|again|real|pretty|really|badly|bad|hard|good|off|while|when|through|cleaning)\\b| *$)",
  ),
  rule(
    "sting",
    "\\b(?:spines?|spikes?|barbs?|tooth|teeth|fangs?|shards?|needles?|nails?|nails?|hooks?|glass|wires?|claws?|blade|drill|screwdriver|scalpel|knife)\\b.*\\b(?:through|into|thru|in) (?:the |my |his |her )?(?:[a-z]+ )?(?:gloves?|boots?|shoes?|waders?|sandals?|wetsuit|socks?|flesh|skin|skin|trainers?|flip ?flops?)\\b",
    "\\bfilter socks?\\b|\\bin (?:the|my) socks?\\b",
  ),
  rule(
    "sting",
    `\\b${VENOMOUS}\\b.*\\b(?:stings?|jab|venom|spines?|barbs?|spike|prick|poke|puncture|wound|burn)\\b.*\\b${RELIEF}\\b|\\b${RELIEF}\\b.*\\b${VENOMOUS}\\b.*\\b(?:stings?|jab|venom|spines?|barbs?|spike|prick|poke|puncture|wound|burn)\\b`,
    "\\bF[a-z]+\\b|\\bhow (?:venomous|strong|bad|dangerous|potent)\\b",
  ),
  rule(
    "wound",
    "\\bstill (?:really |very |a bit |so )?(?:burning|burns|hurting|hurts|throbbing|stinging|swollen|numb|sore|itching|itchy|in pain|bleeding|tingling|dizzy|coughing)\\b",
    `\\b(?:${FISH}s?|lamp|light|bulb|burner|through|halide|gills?|fins?)\\b`,
  ),

  // A current that is felt.
  rule(
    "shock",
    `\\b(?:felt|feel|feeling|get|got|getting|gave me|gives me|had) (?:an? |some |the |slight |little |weird |this |like )*(?:current|electricity|electric|voltage|prickle|prickling|pulse|vibration|jerk|tickle|buzzing|zing|hum)\\b.*\\b(?:through|from|up|off|when|touch\\w*|${LIMB}|lifting|water)\\b`,
    `\\bflow\\b|\\b(?:wave|powerhead|wavemaker)s?\\b|\\b${FISH}s?\\b|\\bcurrent (?:reading|level|value|nitrate|ph|price|salinity|data)`,
  ),
  rule(
    "shock",
    `\\b(?:tank|water|hood|rim|lamp|light|lights|pump|heater|metal|stand|cable|wire|switch|sump|lid|fixture|ballast)s?\\b.*\\b(?:bites?|biting|bit|kicks?|kicked|tickl\\w+|prickl\\w+|nips?|snaps?)\\b.*\\b(?:me|him|her|us|you|when (?:i|we|he|she|you|someone) touch\\w*)\\b`,
    `\\b${FISH}s?\\b|\\bkick(?:s|ed)? (?:me|us) (?:off|out)\\b`,
  ),

  // More ways to swallow, to be splashed and to be gassed.
  rule(
    "swallowed",
    `\\b(?:gulps?|sips?|swigs?|mouthfuls?|lick|swallow|glug|slurp) of (?:[a-z]+ ){0,3}(?:${CHEMICAL}|tank water|the (?:tank|sump|bottle))\\b`,
    `\\b${FISH}s?\\b`,
  ),
  rule(
    "swallowed",
    `\\b(?:swigged|glugged|slurped|swallowed|necked|downed|sipped|gulped|sampled|drank|drunk)\\b.*\\b(?:bottle|jug|kit|tank|sump|alkalinity|calcium|magnesium|nitrate|${CHEMICAL})\\b`,
    `\\b(?:log|alkalinity|calcium|magnesium|nitrate|it|tank|reactor|coral|${FISH}s?)s? (?:[a-z]+ )?(?:swallowed|drank|gulped|downed)\\b|\\bcoffee|\\btea\\b`,
  ),
  rule(
    "swallowed",
    `\\b${KIN}(?: [a-z]+){0,2} (?:had (?:the|some|a bit of|all|a taste of|a drink of)|got into|got at|got hold of|been at|been into|been drinking|played with|been playing with)\\b.*\\b(?:${CHEMICAL}|bottle|tablets?|powder|reagents?)\\b`,
  ),
  rule(
    "burn",
    `\\b(?:${CHEMICAL}|dip|liquid|boiling|treatment|steam|hot)\\b.*\\b(?:splashed|sprayed|squirted|doused|soaked|spattered|scalded|hit|burned|burnt|went down|all down|all over)\\b(?: [a-z]+){0,2} (?:me|us|myself|him|himself|herself|${MINE} (?:[a-z]+ )?(?:${PART}|legs?))\\b|\\bflash burns?\\b|\\b(?:first|second|third) degree burns?\\b|\\b(?:blew|blown|puffed|went|got|powder|dust)\\b.*\\b(?:in|into) (?:${MINE}|the) (?:face|eyes?|mouth|nose|nostrils?)\\b`,
    `\\b${FISH}s? (?:was|got|is|has)\\b`,
  ),
  rule(
    "gas",
    "\\bco2\\b.*\\b(?:cylinder|bottle|tank)\\b.*\\b(?:hissing|venting|ruptured|exploded|burst|blew)\\b|\\b(?:acids?|vinegar|ammonia)(?: [a-z]+)? (?:and|with|into|onto|on|in|to) (?:the |some |my )?bleach\\b|\\bCbleach (?:on|onto|in|to|over) (?:the |some |my )?(?:acids?|vinegar|ammonia)\\b",
    "\\b(?:store|stored|keep|apart|separate\\w*|difference|never|instead|or)\\b",
  ),
  rule(
    "unwell",
    `\\b(?:cellulitis|sepsis|septic shock|marinum|granuloma|tetanus|blood poisoning)\\b|\\bmycobacter\\w*\\b.*\\b(?:${LIMB}|me|my skin|humans?|people)\\b`,
    `\\b${FISH}s? (?:has|have|with|got)\\b`,
  ),
];
