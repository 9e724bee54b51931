import { EQUIPMENT } from "../log/read-event.ts";
import { speller } from "./spelling.ts";

/** Words of the trade that are put right when mistyped. */
const TRADE =
  "nitrate nitrates nitrite nitrites ammonia phosphate phosphates alkalinity calcium magnesium salinity temperature oxygen hardness conductivity gravity specific water change changes changed changing volume gallon gallons litre litres liter liters algae harvest harvested skimmer evaporated evaporation convert dilute dilution solution overstocked stocking stocked bioload trigger triggerfish grouper triggers trend trending rising falling dropping increasing decreasing climbing stable until reach reaches reading readings latest current average highest lowest tested dangerous toxic harmful saltwater topoff dosing percent system lagoon january february september october november december tuesday wednesday thursday saturday yesterday feeding feed carbon filter media copper medicine medication antibiotic disease treatment quarantine electrician wiring breaker extension thickness acrylic glass joists symptoms velvet parasite parasites bacterial infection formalin praziquantel saturation dissolved pumps record today degrees fahrenheit celsius";
/** Ordinary words that are right as they stand, and those a question is built of. */
const ORDINARY =
  "sea seawater freshwater saltwater fresh evaporate evaporates evaporating cup cups bucket buckets barrel brackish a about above added adding add after again ago all already also always am amount an and animal animals another any anything are around as at away back bad be because became been before began begin being below best better between big bigger bought box both bring bringing brings broke brought but buy by came can cant change check clean clear cleaned come comes coming could count creek cut cube currently daily date day days dear did didnt different difference do does doesnt doing done dont down draw drop dropped drops due during each early effect either else end enough even ever every everything exactly exceed exceeds fast faster fall fallen fell few figure find fine first fish fishes fit for forecast fresh from full gave get gets getting gimme give go goes going gone good got graph great had happen happened happening happens has have havent having he hello help helped helping helps here hey hi high higher his hit hits hold holding holds hours hour how i id if ill im impact in into is isnt it its ive just keep keeps kept know lately last later least left less let level levels like little live long longer look looking lose losing loss lost lot low lower lowered made make makes making many maximum max may me mean measure measured might mine minute mix mixing mixed moment month months more morning most move moving much must my near need needed needs never new next night no normal not note nothing now number numbers of off oh ok okay old on once one ones only or other our out over own paste past per plan please plot point pretty previous probably put quick quickly quite raise raised raising rate rates read really recent recently reaching replace replaced rest result results right rise rises rose room roughly run running runs safe said salt same saw say see seem seems set shall she should show showed shows side since slow slowly small so some someone something soon sort spike start started starting stay stayed staying steady still stop stops stopping stopped pump power stops stuff such sure swap swapped switch switched take takes tank tanks tell tested test testing than thank thanks that thats the their them then there theres these they thing things think this those through till time times tired to today tomorrow too took top total track trace tried try turn turned turns two type under up us use used using usual usually value values very wait want wants was wasnt way we week weeks well went were werent what whats when where wheres whether which while who whole why will with within without wont work worked working works worry worse worst would wrong year years yes yet you your mate fella pls thx lads folks actually basically though ran three four five six seven eight nine ten half quarter ask bot hand ready pour mark bucket barrel reservoir plain tap really truly hmm um er ok amount need gain gained jump jumped shift shifted trending curve line chart history days per week far size sized stand stands standing bring harvesting cups cup gets fully aerated aerate survive survives handle handles cope cope manage runs falls fails failed fail out hours survive breathe still hold alcohol vinegar acid bottle strong strength weak weaker concentrated concentrate want wanted wants required require requires mixing bag bags drum drums container containers tub bin garbage brute batch roughly nearly almost yet anymore nowadays cause caused causing due thanks guys everyone anyone tonight everything whole entire across inside outside behind please kindly quickly possible possibly maybe perhaps guess estimate estimated calculate calculation compute work figure sums sum math maths answer question questions wondering wonder curious remind remember recall find finding look up down next target goal aim aiming ideal safely level limit limits threshold bound mark reach under over past beyond exceed crossing cross shoot overshoot new newest old older oldest recent recently past previous former start beginning began begin middle mid eating eat eats roof compare compared comparing control controlled weekend weight weights fill filled filling land lands sense space problem problems trouble issue issues fits read centimetre centimetres millimetres setup aquarium aquariums reef pond act acting add adjust adjusted affect affected afternoon age ahead aim air allow allowed almost alone along although among angle annoying anybody anyhow apart arrive arrived asked asking assume avoid average aware baby balance balanced base based basic basis battle become becomes behind believe belong besides beyond bigger biggest bits blame bother bottom bought break bringing broken brown calculated calculating calm care careful carefully carry case catch caught certain certainly chance chances cheaper checked checking checks choose chose clearly close closer closest color colour combined common complete completely concern concerned concerning conclude condition conditions confirm confirmed confused confusing consider considering constant constantly consumed consuming consumption continue continued continues continuing corner correct corrected couldnt cover covered crazy creature creatures crossed current currently dealing decent decide decided deeper definitely depend depends detect detected detecting develop died differ digit digits dirty disappear discover does dose drastic dramatically drink drop due dude easily easy effective effects eight elevated empty ended ends ensure entering equal equals especially estimated eventually everyone evidence exact example except excess exceeded excuse existing expert explain explained extra extremely fact factor fairly false far farther feel feels few finally finished firm fix fixed flat floating follow following force form former fortnight found fraction frequently front full fully function further future garbage general generally genuinely getting glad goal golden gradual grams greater green ground group growth guessing guide happens hard hardly heaps heard hello helpful hence hide highest hobby hold hour however huge hundred ideal idea ideas imagine immediate immediately important impossible include included including indicate inform information initial inside instead interested interesting issue items job jumped keeper knew knowing knows lack large larger largest late leads leaking learn least leave leaving left lesser let lets lie lies light lights limits list listed liquid load local looked lose losing lost lousy lovely lower lowering luck main maintain major manage managed math matter matters maximum mean meaning means meant meantime measurement measurements measures meet mention messed method middle mild million min minimum missed missing mixture mode moderate modest moment month morning mostly moved multiple naturally nature necessary needing negative neither nervous nicely nobody none noon normally nothing noticeable nowhere obvious obviously occur occurred odd offset often older onto open opinion option order original others otherwise overall own owner page paid pair part particular particularly parts passing path pattern people percentage perfect perfectly period person phone pick piece place places plans plus pop possible post pour poured pouring practice precise predicted prefer prepare prepared preparing presence present previously price probable proper properly provide pull pulled pulling pure purpose push pushed puts quality quarter quickest quiet quietly random range ranges rapid rare rarely rather ratio raw react reaching reacting reality realise realize reason reasonable receive recommend reduce reduced reduces reducing reduction refill regard regarding regular regularly related relation relative release remain remains remove removed removing repeat replacing reported reset respond response rest restart resulting return returned rid rinse role rough round rule run safer sample samples satisfied save saved scale second seconds section seeing seemed seen send separate serious seriously serve several severe shape share sharp shoot shop short shortly shot shouldnt shown shows sick sign significant significantly silly simple simply single sit sits sitting situation size skip skipped sleep slight slow slowed slowing smaller smallest smell smooth solid solve somebody somehow somewhere sooner sorted sound sounds source speak specific spend spent split spot spring stage stand standard starts state stated status stayed steep step steps stick sticking stopping store stored story straight strip strips strongly struggling stuck stupid subtract succeed successful sudden suggest suggests suit summer supply support suppose supposed surface surprise surprised survive survived suspect switching symptom systems table taken taking talk talking target task temperatures ten tend tends term terms terrible texted thankfully theory therefore thing thinks third thirty thousand threw throughout throw tight till tiny together ton tonight touch touched toward towards track tracking treated trip true truth try twelve twenty twice type types typically unable under understand understood unit units unknown unless unlike unsure unstable upon upper upward upwards urgent useful user utterly valid valuable variable variation various vary version view visible visit wait waited waiting walk wanting watch watched watching  website weekends whats whatever wherever whoever willing winter wise wonderful wondering word words working world worried worrying worth wouldnt write writing written wrote yesterday younger yours zero recover recovers recovering plateau plateaued plateauing level leveled levelling bounce bouncing budge moved moves overcrowded crowded grow scare scared alarm serious running today tested got equals reader predicts predict dip dips tops topping early late heading headed swapping reckon whens gonna forgotten forget forgot worth salty warm hot cold hydrometer refractometer halve halving dent kill killing panic says meter kit reader probe sensor biofilter clown thinking planning real actual deep shallow keeping marine home house buddy man dude seems looks appear appears sudden suddenly lots loads plenty bunch couple several dozen similar precisely accurate rough ballpark approx approximately expected expect expecting keen hopefully hope hoping wish sorry fall weird odd strange normal usual typical feeling figured noticed notice noticed wondered wonders heard read told tells picture overview summary report data record records recorded logged entry entries log logs movement direction progress improving improve improved improvement worsen worsening worsened slower faster quicker heavily slightly gradually rapidly sharply steadily constantly overnight daytime dip dipped crash crashed soar soaring swing swinging swings fluctuate fluctuating climb climbed rocket creeping crept drift drifting drifted sink sinking sank slip slipping slipped build building built holding decline declining declined decrease decreased increase increased grow growing grew falling rising higher lower weekly monthly";
/** A speller with the member's own tank names among the words that are right. */
const KNOWN = new Set(ORDINARY.split(" "));
const spell = speller(TRADE.split(" "), KNOWN);

const SHORTCUTS: Readonly<Record<string, string>> = {
  wat: "what",
  wats: "whats",
  wut: "what",
  wen: "when",
  whn: "when",
  hw: "how",
  til: "till",
  untill: "until",
  untl: "until",
  goin: "going",
  u: "you",
  ur: "your",
  gimme: "give me",
  plz: "please",
  pls: "please",
  amonia: "ammonia",
  salinty: "salinity",
  lvl: "level",
  lvls: "levels",
  temps: "temp",
  tmp: "temp",
  whit: "white",
  whens: "when was",
  mag: "magnesium",
  phos: "phosphate",
  calc: "calcium",
  r: "are",
  w: "with",
  ph: "ph",
  niterate: "nitrate",
  meds: "medicine",
  med: "medicine",
  whatre: "what are",
  hows: "how is",
  didnt: "did not",
  youre: "you are",
};

/** Shortcuts of quick typing written out, and slips of the finger put right. */
export function puttingRight(word: string): string {
  return SHORTCUTS[word] ?? (MORE.test(word) ? word : spell(word));
}

/** Short words are written out where they stand as words of their own. */
export function writtenOut(text: string): string {
  return text.replace(/(?<![\p{L}\d/])(?:hw|u|ur|r|w)(?![\p{L}\d/])/gu, (word) => SHORTCUTS[word] ?? word);
}

/** Words that no question of ours needs, so that one of them makes a meaning doubtful. */
export function strangeWords(text: string): readonly string[] {
  return [...text.matchAll(/(?<![\p{L}\d])\p{L}{2,}(?![\p{L}\d])/gu)]
    .map(([word]) => word)
    .filter((word) => !KNOWN.has(word) && !TRADE_WORDS.has(word) && !MORE.test(word));
}

const TRADE_WORDS = new Set(TRADE.split(" "));
/** Short names and units. */
const MORE = new RegExp(
  `^(?:${EQUIPMENT}|meq|ms|psu|lph|alk|kh|dkh|gh|dgh|ph|no|po|nh|tan|orp|redox|sg|ppt|psu|ppm|ppb|mg|ml|gal|gals|temp|cm|mm|kg|oz|lb|lbs|lph|gph|wc|wcs|pwc|ca|do|rodi|ro|ato|fed|dose|doses|dosed|harvests|skimming|floss|sponge|socks?|resin|prawn|squid|bicarb|kalk|vodka|vinegar|livestock|tang|tangs|clownfish|damsels?|eel|wrasse|june|july|april|august|march|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|mon|tues?|wed|thurs?|fri|sat|sun|monday|friday|sunday|spring|summer|autumn|winter|evening|afternoon|midnight|noon|night|net|capacity|deadly|lethal|harm|free|un-?ionised|unionized|per|cent|litre|grams?|inch(?:es)?|feet|deg|us|imp|imperial|uk|die|died|dies|death|deaths|installed|reach(?:ed)?|passe?s?|passed|cross(?:es)?|trigger|corals?|frags?|phosphorus|sump|refugium|drums?|rock|stock|litres|ammonium)$`,
  "u",
);
