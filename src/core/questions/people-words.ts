import { correctedText, plainText } from "./plain-text.ts";
import { speller } from "./spelling.ts";

/**
 * Words are marked with the class they belong to before the rules look at them: “wife” becomes “Kwife”,
 * “hand” “Lhand”. A rule then names a class in a few letters, and stays quick to build and to run.
 */
const CLASSES: Readonly<Record<string, string>> = {
  // People.
  K: "wife husband partner son daughter kid child children toddler baby boy girl mum mom mother dad father brother sister friend mate neighbour neighbor guest helper colleague grandson granddaughter grandma grandpa girlfriend boyfriend nephew niece visitor roommate housemate flatmate coworker boss uncle aunt teen teenager gran nan grandmother grandfather cousin member volunteer plumber hubby missus spouse fiance fiancee stepson stepdaughter tot infant newborn grandad granddad nana student pupil employee colleague apprentice lad lass babysitter godson goddaughter",
  // Parts that fish and tanks do not have.
  L: "hand finger fingr fingertip thumb foot feet toe leg arm palm wrist elbow knee ankle shoulder ear nose tongue knuckle forearm heel fingernail toenail calf shin thigh hip rib pinky pinkie forefinger nail",
  // Parts that may be an animal's, and are a person's when someone owns them.
  P: "eye face mouth skin throat chest lip lung stomach head neck back belly eyelid eyebrow eyelash scalp cheek chin forehead nostril tummy",
  // Animals that sting or bite people badly.
  V: "lionfish stonefish scorpionfish rabbitfish stingray urchin jelly jellyfish conesnail firecoral fireworm bristleworm weeverfish toadfish foxface anemone catfish boxjelly octopus manowar hydroid waspfish weever surgeonfish",
  F: "fish fishes clown clownfish tang trigger triggerfish grouper eel moray damsel wrasse angel angelfish goby gobies blenny blennies shrimp snail crab coral ray shark puffer seahorse chromis anthias starfish invertebrate animal frag turtle goldfish koi betta discus cichlid tetra guppy guppies loach pleco platy platies molly mollies gourami oscar piranha arowana barracuda snapper butterflyfish hawkfish cardinalfish squirrelfish filefish boxfish cowfish hogfish batfish frogfish mantis lobster crayfish cuttlefish axolotl newt frog tadpole clam oyster mussel nudibranch slug cucumber minnow carp sturgeon corydoras cory aiptasia hammer torch tankmate livestock",
  // What may hold palytoxin.
  Z: "zoa zoanthid zoanthus paly palythoa protopaly polyp palytoxin zoas",
  // What hurts when swallowed, breathed in or splashed.
  C: "bleach acid vinegar kalk kalkwasser limewater peroxide ammonia chlorine ozone alcohol vodka ethanol methanol formalin copper dechlorinator conditioner salt caustic lye chemical medicine medication reagent solution algaecide antifreeze cleaner detergent potassium hydroxide carbonate bicarb",
};

const CLASS_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(CLASSES).flatMap(([mark, words]) =>
    words.split(" ").flatMap((word) => [[word, mark] as const, [`${word}s`, mark] as const]),
  ),
);

export const KIN = "K[a-z]+";
export const LIMB = "L[a-z]+";
export const PART = "[LP][a-z]+";
export const FISH = "[FV][a-z]+";
export const VENOMOUS = "V[a-z]+";
export const POLYP = "Z[a-z]+";
export const CHEMICAL = "C[a-z]+";

/** Names of two words, written as one. */
const JOINED =
  /\b(lion|stone|scorpion|rabbit|weever|toad|cat|jelly|sting|cone|fire|bristle|box|lime)[ -](fish|rays?|snails?|corals?|worms?|jelly|water)\b/g;
/** People named by another word. */
const FAMILY =
  /\b(?:my|our|the) (?:whole|entire) family\b|\b(?:my|our) (?:family|kiddo|other half|better half|(?:youngest|eldest)(?= (?:has|is|was|just|ate|drank|put|got|swallowed|cut|fell|touched)\b)|little (?:one|man|girl|boy|lad))\b|\b(?:a|the) little (?:one|girl|boy|lad)\b|\b(?:everyone|everybody) (?:in|at) (?:the|our|my) (?:house|room|club|shop)\b/g;
/** Limbs that are nobody's. */
const IDIOMS =
  /\b(?:second|first|by|on the other|on one|at|off|other)[ -]hands?\b(?! (?:and|is|was|got))|\bhands? ?[- ]?(?:feed\w*|fed|pumps?|made|held|shake)\b|\bhands[ -]on\b(?! (?:the|my|an?|some)\b)|\bfoot valves?\b|\b(?:pipe|pvc|90) elbows?\b|\belbows? (?:\d+|joint|fitting|burst|leak\w*)\b|\bhead (?:loss|height|pressure|room|tank)\b|\bfingers crossed\b|\btoe kick\b|\b(?:rule of|green) thumb\b|\bthumbs (?:up|down)\b|\barms? length\b|\bswing[- ]arm\b|\ban arm and a leg\b|\bhands down\b|\bhands? full\b(?! of)|\bmy hands are full\b|\bget my hands dirty\b|\b(?:give|giving|lend|need) (?:me |us )?a hand\b|\b(?:\d+|one|two|three|four|five|six|eight|square|cubic)[ -]?(?:foot|feet|ft)\b|\b(?:its|anemones?|snails?|clams?) foot\b|\b(?:its|their) (?:neighbou?rs?|mates?|partners?)\b|\bits (?:friend|mother|father|brother|sister|bab(?:y|ies))s?\b|\bits (?:arm|leg|nose)s?\b|\btank ?mates?\b|\bon (?:its|their) last legs?\b/g;
const MIXTURES =
  /\b(?:(?:dosing|alk|alkalinity|calcium|magnesium|buffer|carbon)(?: dosing)? (?:liquid|fluid|mix|water)|tank water|test (?:kit|fluid)|soda ash|washing soda|fish food|medicated food)\b/g;

/** The text as the rules see it: slips put right, marks of speech gone, words marked with their class. */
export function marked(typed: string): string {
  return correctedText(plainText(typed), spell)
    .replace(/[.,;:!?()]+/g, " ")
    .replace(/ +/g, " ")
    .replace(/\b(?:shok|schock|shcok)(?=ed|s|\b)/g, "shock")
    .replace(
      /\b(?:(?:\d+|one|two|three|four|five|six) (?:year|yr|month)s?[ -]old|\d{1,2} ?(?:yo|y\/o|yr old))s?\b/g,
      "child",
    )
    .replace(FAMILY, "my child")
    .replace(IDIOMS, " ")
    .replace(
      /\b(?:bab(?:y|ies)|mother|father) (?=(?:clown|tang|trigger|eel|fish|shark|ray|seahorse|snail|shrimp|cichlid|guppy|brine)[a-z]*\b)/g,
      "",
    )
    .replace(JOINED, "$1$2")
    .replace(MIXTURES, "chemical")
    .replace(/[a-z]+/g, (word) => `${CLASS_OF.get(word) ?? ""}${word}`);
}

/** A rule's own words marked likewise, so that they meet those of the text. */
export function markedPattern(source: string): string {
  return source.replace(
    /(\\[bBwdsS]|[A-Z]\[a-z\]\+)?([a-z]*)/g,
    (_, mark: string | undefined, word: string) => {
      return `${mark ?? ""}${CLASS_OF.get(word) ?? ""}${word}`;
    },
  );
}

const SPELLED =
  "stung sting stings bitten shocked zapped electrocuted electric swallowed swallow drank drunk ingested inhaled breathe breathing unconscious collapsed fainted faint dizzy bleeding bleeds swollen swelling poisoned poisoning poison finger fingers thumb throat chest lionfish stonefish urchin stingray jellyfish allergic reaction anaphylaxis palytoxin chlorine bleach ozone fumes myself daughter husband toddler monoxide headache burned burning splashed crushed tingles tingling vomiting dechlorinator peroxide kalkwasser anemone scorpionfish rabbitfish bristleworm zoanthid palythoa coughing wheezing shivering blistered blisters electricity hospital ambulance stabbed numbness".split(
    " ",
  );
const RIGHT = new Set(
  "shock breathed breathes stings ingest ingests poisons swallows faints burnt burns burner burners bleed electrics shocking zapping zaps crushes collapses splashes chests throats poisonings inhale inhales inhaling tingle tingled reactions swallowing sung swung strung stun stunt stuns slung clung sling slings swing swings stink stinks shaken blacked crashed brushed flushed cashed washed dashed smashed string strings stocked blocked locked turned bitter faint point chess splash breather stinging single linger fungus thump drain drains drunk shocks chlorinate bleached tangles poisonous bitty stingy anemones coughs laughing touching hospitals glistening blistering hospitality stable stabled stabbing covering electrical spinning swimming skimming springing bringing singing ringing spelling electrician reacting reduction relation relations shallow beach invented breeding zone zones breach breaking coloring colouring colorize counting electron finder finer inserted inverted reactive rejection visiting smelling threat threats cheat fuses fumed buried burped crusted swabbed stubbed wheeling silvering tickling trickling tangling injected infected invested indented chloride chlorite stunk fainter crusher blending bleaching breaching swilling spilling selling stalling shelling dwelling filling billing breathtaking needing feeding treading spreading bleeping coaching couching crashing voting editing bedding blooming".split(
    " ",
  ),
);
const spell = speller(SPELLED, RIGHT);
