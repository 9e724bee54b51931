import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";

/** Classes of substance that can hurt the person who pours them. */
export type HazardClass =
  | "hypochlorite"
  | "acid"
  | "ammonia"
  | "peroxide"
  | "alcohol"
  | "permanganate"
  | "formalin"
  | "caustic"
  | "solvent"
  | "sulphite"
  | "medicine";

interface HazardWords {
  readonly class: HazardClass;
  readonly words: RegExp;
}

/** Words as labels and members write them, matched whole. Source: general-chemistry, from memory. */
const WORDS: readonly HazardWords[] = [
  {
    class: "hypochlorite",
    words:
      /\b(bleach|hypochlorites?|hypochlorous|chlorine|pool shock|dichlor|trichlor|(di|tri)chloroisocyan\w*|naocl)\b/,
  },
  {
    class: "acid",
    words:
      /\b(\w*acids?|muriatic|vinegars?|hcl|hydrochloric|sulph?uric|nitric|phosphoric|citric|acetic|ascorbic|oxalic|formic|descaler|limescale remover|bisulph?ate)\b/,
  },
  { class: "ammonia", words: /\b(ammonia|ammonium|ammoniac|ammonia water|urea|nh4cl|nh3|nh4)\b/ },
  { class: "peroxide", words: /\b(peroxides?|h2o2|percarbonate|peracetic)\b/ },
  {
    class: "alcohol",
    words:
      /\b(alcohols?|ethanol|methanol|isopropanol|propanol|isopropyl|vodka|spirits?|methylated|denatured)\b/,
  },
  { class: "permanganate", words: /\b(permanganate|kmno4)\b/ },
  { class: "formalin", words: /\b(formal(in|deh?yde?)\w*|formol|paraformaldehyde)\b/ },
  {
    class: "caustic",
    words: /\b(caustic|lye|sodium hydroxide|potassium hydroxide|naoh|koh|drain cleaner|quicklime)\b/,
  },
  {
    class: "solvent",
    words:
      /\b(acetone|nail (polish|varnish) remover|turpentine|white spirit|petrol|gasoline|paint thinner)\b/,
  },
  {
    class: "sulphite",
    words: /\b((\w*sul(ph|f)ite)s?|thiosul(ph|f)ates?|dithionite|\w*sul(ph|f)inates?)\b/,
  },
  {
    class: "medicine",
    words: new RegExp(
      "\\b(" +
        [
          "medicines?|medications?|medicinal|drugs?|antibiotics?|antiparasitics?|antifungals?",
          "anti-?inflammator(y|ies)|painkillers?|an(a)?esthetics?|sedatives?|hormones?|steroids?|wormers?|dewormers?",
          "copper|cupric|chelated copper|cuso4|formalin|formaldehyde|permanganate|kmno4|methylene blue",
          "malachite green|acriflavine|gentian violet|potassium dichromate|silver nitrate",
          "praziquantel|levamisole|fenbendazole|flubendazole|mebendazole|metronidazole|dimetridazole|ivermectin",
          "emamectin|trichlorfon|dichlorvos|diflubenzuron|lufenuron|milbemycin|chloroquine|hydroxychloroquine|quinine",
          "toltrazuril|nitrofura\\w*|furazolidone|kanamycin|neomycin|gentamicin|amikacin|erythromycin|azithromycin",
          "\\w*cyclines?|\\w*oxacins?|\\w*cillins?|ceft\\w*|cef\\w*|florfenicol|chloramphenicol|sulfa\\w*(xazole|zine|thoxine)",
          "chloramine[- ]t|\\w*conazoles?|amprolium|cypermethrin|deltamethrin|sulphonamides?|sulfonamides?|trimethoprim|nystatin|ketoconazole|meloxicam|tricaine|ms-?222|eugenol",
          "clove oil|benzocaine|dexamethasone|glutaraldehyde|bronopol",
          // As they are written in haste: run together, shortened, a letter wrong.
          "copper\\w*|cupr\\w*|cu|cu2|formal\\w*|mala[ck]h?ite\\w*|methyl\\w* ?blue|praziq\\w*|prazi|ch?loroqu?in\\w*",
          "metronid\\w*|levami\\w*|\\w*bendazol\\w*|iverm\\w*|acrifl\\w*|nitrofur\\w*|\\w{3,}mycins?|\\w{2,}cides?",
          "cures?|remed(y|ies)|(ich|white ?spot|velvet|flukes?|worms?|parasites?|fungus|bacterial|disease|fin ?rot)[ -](treatments?|killers?|meds?)",
        ].join("|") +
        ")\\b",
    ),
  },
];

/** Acids only in name: food and trace additives, not liquids that burn or fume. */
const NOT_ACIDS = /\b(amino|fatty|nucleic|humic|fulvic)[ -]acids?\b/g;

/** Water, and salts and trace elements that keepers dose by the gram, none of which hurts the hand. Source: common-practice. */
const PLAIN_MINERALS =
  /\b(\w*carbonates?|\w*chlorides?|\w*sul(ph|f)ates?|\w*nitrates?|\w*phosphates?|\w*borates?|\w*silicates?|\w*gluconates?|\w*iod(ides?|ine)|\w*bromides?|baking soda|washing soda|soda ash|epsom|gypsum|kalk\w*|lime ?water|alkalinity|buffer|calcium|magnesium|potassium|strontium|iron|manganese|trace elements?|amino|sugar|vitamins?|salt|water)\b/;

/** Whether anything at all is known of a name: a class of hazard, or a plain mineral. */
export function isKnownSubstance(name: string): boolean {
  return (
    substanceHazard(name).classes.length > 0 || PLAIN_MINERALS.test(name.normalize("NFKC").toLowerCase())
  );
}

export interface SubstanceHazard {
  readonly name: string;
  readonly classes: readonly HazardClass[];
}

/** Which classes of hazard a name belongs to. An empty list means "not recognised", never "safe". */
export function substanceHazard(name: string): SubstanceHazard {
  const text = name.normalize("NFKC").toLowerCase().replace(/[_–—]/g, " ").replace(NOT_ACIDS, " ");
  return { name, classes: WORDS.filter(({ words }) => words.test(text)).map((entry) => entry.class) };
}

/** What the two classes make when they meet. Source: general-chemistry, from memory. */
const NEVER_TOGETHER: readonly (readonly [HazardClass, HazardClass, string])[] = [
  ["hypochlorite", "acid", "chlorine, a poisonous gas"],
  ["hypochlorite", "ammonia", "chloramines, poisonous gases"],
  ["hypochlorite", "alcohol", "chloroform and other poisonous vapours"],
  ["hypochlorite", "solvent", "chloroform and other poisonous vapours"],
  ["hypochlorite", "peroxide", "a sudden burst of oxygen and heat that can burst a container"],
  ["hypochlorite", "formalin", "heat and poisonous vapours"],
  ["peroxide", "acid", "peracids, which burn skin, eyes and lungs"],
  ["peroxide", "permanganate", "a violent burst of oxygen and heat"],
  ["peroxide", "alcohol", "a mixture that can catch fire or explode"],
  ["peroxide", "solvent", "explosive peroxides"],
  ["sulphite", "acid", "sulphur dioxide, a choking gas"],
  ["permanganate", "solvent", "fire"],
  ["permanganate", "formalin", "violent heat and poisonous vapour"],
  ["permanganate", "alcohol", "fire"],
  ["permanganate", "acid", "poisonous gas or fire, depending on the acid"],
  ["acid", "formalin", "poisonous vapours"],
  ["caustic", "acid", "violent heat that throws the liquid about"],
  ["caustic", "ammonia", "ammonia gas"],
];

/** What two substances make, or undefined when no pair of their classes is on the list. */
function meeting(a: readonly HazardClass[], b: readonly HazardClass[]): string | undefined {
  return NEVER_TOGETHER.find(
    ([one, other]) => (a.includes(one) && b.includes(other)) || (a.includes(other) && b.includes(one)),
  )?.[2];
}

export interface MixingVerdict {
  readonly a: SubstanceHazard;
  readonly b: SubstanceHazard;
}

/**
 * Whether two substances may meet. A dangerous pair is refused with what it makes; any other pair is
 * answered with the warning that the list is short.
 */
export function mixingHazard(a: string, b: string): Answer<MixingVerdict> | NoAnswer {
  const one = substanceHazard(a);
  const other = substanceHazard(b);
  const result = meeting(one.classes, other.classes);
  if (result !== undefined) {
    return noAnswer("never-mix", { a, b, result }, [caution("leave-and-air", {}, "danger")]);
  }
  const medicine = [one, other].find((substance) => substance.classes.includes("medicine"));
  if (medicine !== undefined) {
    return noAnswer("medicine-not-dosed", { medicine: medicine.name }, [
      caution("medicine-needs-a-vet", {}, "danger"),
    ]);
  }
  return {
    kind: "answer",
    value: { a: one, b: other },
    method: "Names looked up in a short list of substances that must not meet",
    working: [
      `${a}: ${one.classes.join(", ") || "not recognised"}`,
      `${b}: ${other.classes.join(", ") || "not recognised"}`,
      "No pair of these classes is on the list",
    ],
    constants: [],
    sources: ["general-chemistry"],
    assumptions: ["the name says what is in the bottle"],
    cautions: [
      ...handlingCautions(one.classes),
      ...handlingCautions(other.classes),
      caution("hazard-list-not-complete", {}, "warning"),
    ].filter((item, index, all) => all.findIndex(({ code }) => code === item.code) === index),
  };
}

/** How to handle each class, as cautions; alcohol has its own, with a flash point, in the alcohol question. */
export function handlingCautions(classes: readonly HazardClass[]): Caution[] {
  const cautions: Caution[] = [];
  if (classes.includes("acid")) cautions.push(caution("acid-into-water", {}, "danger"));
  if (classes.includes("caustic")) cautions.push(caution("caustic-burns", {}, "danger"));
  if (classes.includes("hypochlorite")) cautions.push(caution("bleach-keep-apart", {}, "danger"));
  if (classes.includes("peroxide")) cautions.push(caution("oxidiser-burns", {}, "danger"));
  if (classes.includes("ammonia")) cautions.push(caution("ammonia-is-toxic", {}, "warning"));
  if (classes.includes("solvent")) cautions.push(caution("solvent-vapour-burns", {}, "danger"));
  if (classes.includes("alcohol")) cautions.push(caution("alcohol-dose-elsewhere", {}, "danger"));
  return cautions;
}

/** What a named substance adds to a sum: a refusal for a medicine, cautions for the rest. */
export function screenSubstance(name: string | undefined): NoAnswer | readonly Caution[] {
  if (name === undefined) return [];
  const { classes } = substanceHazard(name);
  if (classes.includes("medicine")) {
    return noAnswer("medicine-not-dosed", { medicine: name }, [
      caution("medicine-needs-a-vet", {}, "danger"),
    ]);
  }
  return handlingCautions(classes);
}

/** As `screenSubstance`, for what is to go where animals live: a disinfectant is refused as well. */
export function screenForTank(name: string | undefined): NoAnswer | readonly Caution[] {
  if (name !== undefined) {
    const { classes } = substanceHazard(name);
    if (classes.includes("hypochlorite")) {
      return noAnswer("not-into-a-tank", { substance: name }, [caution("bleach-keep-apart", {}, "danger")]);
    }
  }
  return screenSubstance(name);
}
