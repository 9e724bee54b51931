/** A word of the trade in plain words. */
export interface Term {
  readonly term: string;
  /** Other words for the same. */
  readonly also?: readonly string[];
  readonly means: string;
}

const t = (term: string, means: string, ...also: string[]): Term => ({
  term,
  means,
  ...(also.length === 0 ? {} : { also }),
});

/** Words of the trade in the club's own plain words: each in a line or two, none explained by another unexplained. */
export const GLOSSARY: readonly Term[] = [
  t(
    "acclimate",
    "To let new animals get used to your water bit by bit, before they go in.",
    "acclimation",
    "drip acclimation",
  ),
  t(
    "aeration",
    "Getting air into the water, by bubbles or by a rippling surface.",
    "air stone",
    "airstone",
    "air pump",
  ),
  t("aerobic", "Where there is air. The bacteria that clean the water need it."),
  t("algae", "Simple green, brown or red plants that grow on glass and stones, or float in the water."),
  t(
    "alkalinity",
    "How much acid the water can take before its pH drops. Think of it as a savings account.",
    "KH",
    "dKH",
    "carbonate hardness",
    "buffer",
  ),
  t(
    "ammonia",
    "The first waste of animals and rotting food. Harmful even in small amounts, and you cannot see it.",
    "NH3",
    "NH4",
    "ammonium",
  ),
  t(
    "ammonia binder",
    "A powder or liquid that holds on to ammonia for a while. Many test kits still show what it holds.",
    "ammonia remover",
    "detoxifier",
  ),
  t("anaerobic", "Where there is no air, such as deep in sand. Other bacteria live there.", "anoxic"),
  t(
    "active carbon",
    "Charcoal that takes colour, smells and some poisons out of the water. It fills up within weeks.",
    "carbon",
    "activated carbon",
  ),
  t("backwash", "To run water through a filter the wrong way round, to flush the dirt out."),
  t(
    "bacterial bloom",
    "Water gone milky because bacteria grow very fast in it. They use up air.",
    "milky water",
  ),
  t("biofilm", "The slippery layer of bacteria on anything under water. Most of the cleaning happens in it."),
  t(
    "biological filter",
    "The part of a filter where bacteria live that turn harmful waste into milder waste.",
    "biofilter",
    "bio media",
  ),
  t("bioload", "How much waste all the animals and their food make.", "load", "biological load"),
  t("brackish", "Between fresh water and sea water in saltiness, like a river mouth."),
  t("bulkhead", "A fitting that lets a pipe go through the wall of a tank without leaking."),
  t("calcium", "What shells and coral skeletons are built from. Measured in mg/L.", "Ca"),
  t("canister filter", "A closed filter pot outside the tank, with a pump on top.", "external filter"),
  t(
    "chlorine",
    "What many waterworks put in tap water to kill germs. It also harms fish and filter bacteria.",
    "chloramine",
  ),
  t("chiller", "A machine that cools the water, like a small fridge."),
  t(
    "clean-up crew",
    "Snails, shrimps and other animals that eat algae and leftovers. They still make waste.",
    "cleanup crew",
    "CUC",
  ),
  t(
    "conductivity",
    "How well water carries electricity. Salty water carries it well, so it tells how salty it is.",
    "EC",
  ),
  t(
    "copper",
    "A metal that kills snails, shrimps and corals even in traces. In medicine it belongs in a vet's hands.",
    "Cu",
  ),
  t("coralline algae", "Hard pink or purple algae, a good sign in a salt-water tank."),
  t(
    "cycling",
    "Letting the right bacteria grow in a new filter before it has to serve many animals. It takes weeks.",
    "cycle",
    "nitrogen cycle",
    "fishless cycle",
    "new tank syndrome",
  ),
  t(
    "dechlorinator",
    "A liquid that takes chlorine out of tap water at once.",
    "water conditioner",
    "conditioner",
  ),
  t("denitrification", "Bacteria turning nitrate into harmless gas, in places without air."),
  t("detritus", "Dirt that settles: food bits, droppings, dead leaves.", "mulm"),
  t("diatoms", "Brown dust algae, common in new tanks. They mostly go by themselves.", "brown algae"),
  t("dosing", "Adding a measured amount of something to the water again and again.", "dosing pump", "doser"),
  t(
    "drip loop",
    "A cable that hangs lower than its plug, so that drops fall off and do not run into the socket.",
  ),
  t("fallow", "A tank left without fish for some weeks, so that parasites die out."),
  t("feeding pause", "A day without food. Healthy fish bear it well, and the water rests.", "fasting"),
  t(
    "filter media",
    "What is inside a filter: sponge, rings, stones. Bacteria live on it.",
    "media",
    "bio rings",
  ),
  t("filter sock", "A bag of felt that catches dirt. Wash it every few days.", "filter floss", "filter wool"),
  t("flow", "How fast and where the water moves. Measured in litres an hour.", "turnover", "circulation"),
  t(
    "gasping",
    "Fish hanging at the surface with mouths open. They lack air, or their gills are hurt.",
    "piping",
  ),
  t(
    "gravity",
    "How heavy water is against plain water, such as 1.026. It needs two temperatures to mean anything.",
    "specific gravity",
    "SG",
  ),
  t("half-life", "The time in which half of something is gone."),
  t(
    "hardness",
    "How much calcium and magnesium is in the water. Rain water has none, chalk water much.",
    "GH",
    "general hardness",
    "dGH",
  ),
  t("head", "How high a pump has to lift the water. The higher, the less comes out.", "head height"),
  t("heater", "An electric rod that warms the water. It has to be under water while it is on."),
  t("hospital tank", "A small bare tank where a sick animal can be watched alone.", "quarantine tank", "QT"),
  t("hydrometer", "A float or needle that shows how heavy, and so how salty, the water is."),
  t("inert", "Something that gives nothing off into the water."),
  t("invertebrate", "An animal without a backbone: shrimp, snail, coral, star.", "inverts"),
  t("ion", "A tiny part of a salt, floating by itself in the water."),
  t("light cycle", "How many hours of light a tank gets each day.", "photoperiod"),
  t("live rock", "Porous stone full of bacteria and small life, for salt-water tanks."),
  t("livestock", "All the animals in a tank.", "stock", "stocking"),
  t("macroalgae", "Large algae grown on purpose, to take waste out of the water.", "refugium", "algae tank"),
  t("magnesium", "A mineral of sea water that keeps calcium from falling out as chalk.", "Mg"),
  t("mechanical filter", "The part of a filter that catches dirt you can see."),
  t("mg/L", "Milligrams in each litre. Nearly the same as ppm.", "ppm", "parts per million"),
  t("nitrate", "The end of the waste chain. Mild, but it builds up until you change water.", "NO3"),
  t("nitrite", "The middle of the waste chain. Harmful in fresh water; in salt water much less so.", "NO2"),
  t("nutrients", "Nitrate and phosphate: food for plants and algae."),
  t(
    "old tank",
    "A tank where waste has built up for years and the pH has sunk. Change its water slowly.",
    "old tank syndrome",
  ),
  t("overflow", "An edge or box where water runs out of the tank by itself to the filter below.", "weir"),
  t(
    "oxygen",
    "The part of air that animals breathe. Warm water holds less of it.",
    "O2",
    "dissolved oxygen",
    "DO",
  ),
  t("parasite", "A small creature that lives on an animal and harms it. A vet tells which one."),
  t("pH", "How sour or soapy water is, from 0 to 14. Seven is in the middle. One step is ten times as much."),
  t("phosphate", "Food for algae, which comes with fish food.", "PO4"),
  t("plumbing", "All the pipes, valves and fittings."),
  t(
    "ppt",
    "Grams of salt in each kilogram of water. The sea has about 35.",
    "psu",
    "parts per thousand",
    "permille",
  ),
  t(
    "protein skimmer",
    "A tube full of fine bubbles. Waste sticks to them and leaves as dirty foam.",
    "skimmer",
  ),
  t("quarantine", "Keeping a new animal apart for some weeks, so that it brings nothing in."),
  t("rated power", "How many watts it says on a device.", "wattage", "watts"),
  t("redox", "A number in millivolts for how clean the water is. Its trend says more than its value.", "ORP"),
  t(
    "refractometer",
    "A small tube you look through: it shows how salty a drop of water is. Check its zero first.",
  ),
  t(
    "residual-current device",
    "A switch that cuts the power at once when current goes astray. Every tank needs one.",
    "RCD",
    "GFCI",
    "RCBO",
  ),
  t("return pump", "The pump that sends water back up to the tank."),
  t(
    "reverse osmosis",
    "Pressing tap water through a very fine skin, which leaves nearly pure water.",
    "RO",
    "RODI",
    "RO/DI",
    "osmosis water",
  ),
  t("salinity", "How much salt is in the water.", "salt content"),
  t("salt creep", "White crusts where salt water splashed and dried. Keep it away from plugs."),
  t("salt mix", "Salts that turn pure water into sea water. Kitchen salt is not that."),
  t("sand bed", "The layer of sand on the floor of a tank.", "substrate", "gravel"),
  t("sump", "A second tank below the first, for filter and heater."),
  t("siphon", "A hose that draws water over an edge and down, by itself once it runs."),
  t("source water", "The water you begin with: tap, rain, or purified."),
  t(
    "stray current",
    "Electricity that leaks into the water from a broken device. Switch off at the breaker first.",
    "stray voltage",
  ),
  t("surface film", "A thin oily skin on the water. It keeps air out.", "oil film"),
  t("surface movement", "Ripples on the water. They let air in.", "agitation"),
  t("thermostat", "The switch that turns a heater on and off. Some get stuck."),
  t(
    "top off",
    "Filling up with fresh water what has dried away. Salt stays behind, so no salt goes in.",
    "top-off",
    "topoff",
    "ATO",
    "top up",
  ),
  t("total ammonia", "The mild and the harmful kind of ammonia together. Most kits read it.", "TAN"),
  t("trace elements", "What sea water holds in tiny amounts."),
  t("UV clarifier", "A lamp in a tube that kills what floats past it.", "UV", "UV sterilizer"),
  t("water change", "Taking some water out and putting fresh, matched water in.", "WC", "water changes"),
  t(
    "white spot",
    "White grains on a fish's skin or fins. What they are, and what helps, is for a vet to say.",
    "ich",
    "ick",
  ),
];

const key = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

const BY_WORD: ReadonlyMap<string, Term> = new Map(
  GLOSSARY.flatMap((each) => [each.term, ...(each.also ?? [])].map((word) => [key(word), each] as const)),
);

/** The term a word means; a plural is taken for its singular. */
export function termNamed(word: string): Term | undefined {
  const wanted = key(word);
  return (
    BY_WORD.get(wanted) ?? BY_WORD.get(wanted.replace(/e?s$/, "")) ?? BY_WORD.get(wanted.replace(/s$/, ""))
  );
}

/** Every word that is explained, for suggestions. */
export const GLOSSARY_WORDS: readonly string[] = GLOSSARY.flatMap(({ term, also = [] }) => [term, ...also]);
