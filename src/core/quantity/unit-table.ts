import { alkalinityToMeq } from "../carbonate/alkalinity-units.ts";

/** One unit as members spell it, and its size in the canonical unit of its kind. */
export interface Unit {
  /** As shown, and one of the texts that read back as this unit. */
  readonly id: string;
  /** Canonical units in one of this unit. */
  readonly factor: number;
  /** What this unit shows at canonical zero, for scales whose zeros differ: 32 for °F. */
  readonly zero?: number;
  /** In lower case; a space stands for any spaces or full stops, or none. The closed list. */
  readonly spellings: readonly string[];
  /** Set on a spelling that names two units: the ids between which the member must choose. */
  readonly asks?: readonly string[];
}

const FOOT_CM = 30.48;
const INCH_CM = 2.54;
const US_GALLON_L = 3.785411784;
const IMP_GALLON_L = 4.54609;
const POUND_KG = 0.45359237;
const HOURS_PER_DAY = 24;

/** Canonical: L. Source: nist-sp-811, B.8 (gallon, pint, cubic foot …); imp gallon exact since 1985. */
const VOLUME = [
  { id: "L", factor: 1, spellings: ["l", "litre", "litres", "liter", "liters", "ltr", "ltrs"] },
  { id: "mL", factor: 1e-3, spellings: ["ml", "millilitre", "millilitres", "milliliter", "milliliters"] },
  {
    id: "US gal",
    factor: US_GALLON_L,
    spellings: [
      "us gal",
      "us gals",
      "us gallon",
      "us gallons",
      "u s gal",
      "u s gallon",
      "u s gallons",
      "gal us",
      "gal (us)",
      "gallon us",
      "gallons us",
      "gallons (us)",
      "usg",
    ],
  },
  {
    id: "imp gal",
    factor: IMP_GALLON_L,
    spellings: [
      "imp gal",
      "imp gals",
      "imp gallon",
      "imp gallons",
      "imperial gal",
      "imperial gallon",
      "imperial gallons",
      "uk gal",
      "uk gals",
      "uk gallon",
      "uk gallons",
      "u k gal",
      "u k gallons",
      "gal imp",
      "gal (imp)",
      "gal uk",
      "gal (uk)",
      "gallons imperial",
      "gallons uk",
    ],
  },
  {
    id: "gal",
    factor: US_GALLON_L,
    spellings: ["gal", "gals", "gallon", "gallons"],
    asks: ["US gal", "imp gal"],
  },
  {
    id: "m³",
    factor: 1000,
    spellings: ["m^3", "m3", "cubic metre", "cubic metres", "cubic meter", "cubic meters", "cu m"],
  },
  { id: "cm³", factor: 1e-3, spellings: ["cm^3", "cm3", "cc", "cubic centimetre", "cubic centimetres"] },
  {
    id: "ft³",
    factor: FOOT_CM ** 3 / 1000,
    spellings: ["ft^3", "ft3", "cu ft", "cubic foot", "cubic feet"],
  },
  {
    id: "in³",
    factor: INCH_CM ** 3 / 1000,
    spellings: ["in^3", "in3", "cu in", "cubic inch", "cubic inches"],
  },
  {
    id: "US qt",
    factor: US_GALLON_L / 4,
    spellings: ["us qt", "us quart", "us quarts", "qt", "qts", "quart", "quarts"],
  },
  {
    id: "US pt",
    factor: US_GALLON_L / 8,
    spellings: ["us pt", "us pint", "us pints", "pt", "pts", "pint", "pints"],
  },
  { id: "US cup", factor: US_GALLON_L / 16, spellings: ["us cup", "us cups", "cup", "cups"] },
  {
    id: "US fl oz",
    factor: US_GALLON_L / 128,
    spellings: [
      "us fl oz",
      "us fluid ounce",
      "us fluid ounces",
      "fl oz",
      "floz",
      "fluid ounce",
      "fluid ounces",
    ],
  },
  {
    id: "US tbsp",
    factor: US_GALLON_L / 256,
    spellings: ["us tbsp", "tbsp", "tbsps", "tablespoon", "tablespoons", "us tablespoon", "us tablespoons"],
  },
  {
    id: "US tsp",
    factor: US_GALLON_L / 768,
    spellings: ["us tsp", "tsp", "tsps", "teaspoon", "teaspoons", "us teaspoon", "us teaspoons"],
  },
  {
    id: "imp qt",
    factor: IMP_GALLON_L / 4,
    spellings: [
      "imp qt",
      "imp quart",
      "imp quarts",
      "imperial quart",
      "imperial quarts",
      "uk qt",
      "uk quart",
    ],
  },
  {
    id: "imp pt",
    factor: IMP_GALLON_L / 8,
    spellings: [
      "imp pt",
      "imp pint",
      "imp pints",
      "imperial pint",
      "imperial pints",
      "uk pt",
      "uk pint",
      "uk pints",
    ],
  },
  { id: "imp cup", factor: IMP_GALLON_L / 16, spellings: ["imp cup", "imp cups", "imperial cup", "uk cup"] },
  {
    id: "imp fl oz",
    factor: IMP_GALLON_L / 160,
    spellings: [
      "imp fl oz",
      "imperial fl oz",
      "imp fluid ounce",
      "imp fluid ounces",
      "imperial fluid ounces",
      "uk fl oz",
    ],
  },
] as const satisfies readonly Unit[];

/** Canonical: kg. Source: nist-sp-811, B.8 (pound, ounce avoirdupois). */
const MASS = [
  { id: "g", factor: 1e-3, spellings: ["g", "gram", "grams", "gramme", "grammes"] },
  {
    id: "kg",
    factor: 1,
    spellings: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"],
  },
  { id: "mg", factor: 1e-6, spellings: ["mg", "milligram", "milligrams"] },
  { id: "lb", factor: POUND_KG, spellings: ["lb", "lbs", "pound", "pounds"] },
  { id: "oz", factor: POUND_KG / 16, spellings: ["oz", "ounce", "ounces"] },
  { id: "t", factor: 1000, spellings: ["t", "tonne", "tonnes", "metric ton", "metric tons"] },
] as const satisfies readonly Unit[];

/** Canonical: cm. Source: nist-sp-811, B.8 (foot, inch). */
const LENGTH = [
  { id: "cm", factor: 1, spellings: ["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"] },
  { id: "mm", factor: 0.1, spellings: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"] },
  { id: "m", factor: 100, spellings: ["m", "metre", "metres", "meter", "meters"] },
  { id: "in", factor: INCH_CM, spellings: ["in", "inch", "inches", '"', "''"] },
  { id: "ft", factor: FOOT_CM, spellings: ["ft", "foot", "feet", "'"] },
] as const satisfies readonly Unit[];

/** Canonical: °C. Source: nist-sp-811, B.8 (degree Fahrenheit). */
const TEMPERATURE = [
  {
    id: "°C",
    factor: 1,
    spellings: [
      "°c",
      "° c",
      "c",
      "degc",
      "deg c",
      "degree c",
      "degrees c",
      "celsius",
      "°celsius",
      "degree celsius",
      "degrees celsius",
      "centigrade",
    ],
  },
  {
    id: "°F",
    factor: 5 / 9,
    zero: 32,
    spellings: [
      "°f",
      "° f",
      "f",
      "degf",
      "deg f",
      "degree f",
      "degrees f",
      "fahrenheit",
      "degree fahrenheit",
      "degrees fahrenheit",
    ],
  },
] as const satisfies readonly Unit[];

/** Canonical: °C apart, which is the same as kelvins apart. */
const TEMPERATURE_DIFFERENCE = [
  { id: "°C", factor: 1, spellings: [...TEMPERATURE[0].spellings, "k", "kelvin", "kelvins"] },
  { id: "°F", factor: 5 / 9, spellings: TEMPERATURE[1].spellings },
] as const satisfies readonly Unit[];

/** Canonical: L/h. Source: definition, with the gallons of the volume table. */
const FLOW = [
  {
    id: "L/h",
    factor: 1,
    spellings: [
      "l/h",
      "l/hr",
      "l/hour",
      "lph",
      "l per h",
      "l per hour",
      "litres per hour",
      "liters per hour",
      "litres/hour",
      "liters/hour",
    ],
  },
  {
    id: "L/min",
    factor: 60,
    spellings: [
      "l/min",
      "l/minute",
      "lpm",
      "l per min",
      "l per minute",
      "litres per minute",
      "liters per minute",
    ],
  },
  {
    id: "L/s",
    factor: 3600,
    spellings: ["l/s", "l/sec", "l per second", "litres per second", "liters per second"],
  },
  { id: "mL/min", factor: 0.06, spellings: ["ml/min", "ml per min", "ml per minute"] },
  {
    id: "L/d",
    factor: 1 / HOURS_PER_DAY,
    spellings: [
      "l/d",
      "l/day",
      "lpd",
      "l per day",
      "litres per day",
      "liters per day",
      "litres/day",
      "liters/day",
      "litres a day",
      "l a day",
    ],
  },
  { id: "mL/d", factor: 1e-3 / HOURS_PER_DAY, spellings: ["ml/d", "ml/day", "ml per day", "ml a day"] },
  {
    id: "m³/h",
    factor: 1000,
    spellings: ["m^3/h", "m3/h", "m^3/hr", "m3/hr", "cubic metres per hour", "cubic meters per hour"],
  },
  ...flowsOf("US gal", US_GALLON_L, ["us gal", "us gallons", "u s gal"], ["us "]),
  ...flowsOf("imp gal", IMP_GALLON_L, ["imp gal", "imperial gallons", "uk gal"], ["imp ", "uk "]),
  ...flowsOf("gal", US_GALLON_L, ["gal", "gals", "gallons"], [""], ["US gal", "imp gal"]),
] satisfies readonly Unit[];

/** Canonical: W. Source: nist-sp-811, B.8 (horsepower of 550 ft·lbf/s, with standard gravity 9.80665 m/s²). */
const POWER = [
  { id: "W", factor: 1, spellings: ["w", "watt", "watts"] },
  { id: "kW", factor: 1000, spellings: ["kw", "kilowatt", "kilowatts"] },
  { id: "hp", factor: 550 * (FOOT_CM / 100) * POUND_KG * 9.80665, spellings: ["hp", "horsepower"] },
] as const satisfies readonly Unit[];

/** Canonical: h. Source: definition. */
const SPAN = [
  { id: "h", factor: 1, spellings: ["h", "hr", "hrs", "hour", "hours"] },
  { id: "min", factor: 1 / 60, spellings: ["min", "mins", "minute", "minutes"] },
  { id: "s", factor: 1 / 3600, spellings: ["s", "sec", "secs", "second", "seconds"] },
  { id: "d", factor: HOURS_PER_DAY, spellings: ["d", "day", "days"] },
  { id: "weeks", factor: 7 * HOURS_PER_DAY, spellings: ["w", "wk", "wks", "week", "weeks"] },
] as const satisfies readonly Unit[];

/** Canonical: mg/L, of a substance taken as it is named. */
const MASS_CONCENTRATION = [
  {
    id: "mg/L",
    factor: 1,
    spellings: [
      "mg/l",
      "mg/ltr",
      "mg/litre",
      "mg/liter",
      "mg per l",
      "mg per litre",
      "mg per liter",
      "mg l^-1",
    ],
  },
  { id: "ppm", factor: 1, spellings: ["ppm", "parts per million"] },
  { id: "µg/L", factor: 1e-3, spellings: ["μg/l", "ug/l", "mcg/l", "μg per l", "ug per l"] },
  { id: "ppb", factor: 1e-3, spellings: ["ppb", "parts per billion"] },
  { id: "g/L", factor: 1000, spellings: ["g/l", "g per l", "g per litre", "g per liter"] },
] as const satisfies readonly Unit[];

/** Meq in one of each printed unit. Source: standard-atomic-weights. */
const MEQ_PER_DKH = alkalinityToMeq(1, "dKH");
const MEQ_PER_MG_CACO3 = alkalinityToMeq(1, "ppm CaCO3");

/** Canonical: meq/L; a mole of bicarbonate carries one charge. Source: definition (1 °dH is 10 mg CaO per litre). */
const ALKALINITY = [
  {
    id: "dKH",
    factor: MEQ_PER_DKH,
    spellings: [
      "dkh",
      "°dkh",
      "° dkh",
      "kh",
      "°kh",
      "° kh",
      "deg kh",
      "degrees kh",
      "°dh",
      "° dh",
      "dh",
      "deg dh",
      "degrees dh",
      "°",
      "degree",
      "degrees",
      "german degrees",
    ],
  },
  {
    id: "meq/L",
    factor: 1,
    spellings: ["meq/l", "meq", "mval/l", "mval", "meq per l", "meq per litre", "meq per liter"],
  },
  { id: "mmol/L", factor: 1, spellings: ["mmol/l", "mmol per l"] },
  {
    id: "ppm CaCO3",
    factor: MEQ_PER_MG_CACO3,
    spellings: ["ppm caco3", "ppm as caco3", "ppm (caco3)", "ppm"],
  },
  {
    id: "mg/L CaCO3",
    factor: MEQ_PER_MG_CACO3,
    spellings: ["mg/l caco3", "mg/l as caco3", "mg/l (caco3)", "mg/l", "mg caco3/l"],
  },
] as const satisfies readonly Unit[];

/** Every unit whose conversion is a matter of factors alone, by kind; the first of a kind is the usual one to show. */
export const UNITS = {
  volume: VOLUME,
  mass: MASS,
  length: LENGTH,
  temperature: TEMPERATURE,
  "temperature difference": TEMPERATURE_DIFFERENCE,
  flow: FLOW,
  power: POWER,
  span: SPAN,
  concentration: MASS_CONCENTRATION,
  alkalinity: ALKALINITY,
} as const satisfies Record<string, readonly Unit[]>;

export type UnitKind = keyof typeof UNITS;

export const CANONICAL_UNIT = {
  volume: "L",
  mass: "kg",
  length: "cm",
  temperature: "°C",
  "temperature difference": "°C",
  flow: "L/h",
  power: "W",
  span: "h",
  concentration: "mg/L",
  alkalinity: "meq/L",
} as const satisfies Record<UnitKind, string>;

export function toCanonical(value: number, unit: Unit): number {
  return (value - (unit.zero ?? 0)) * unit.factor;
}

export function fromCanonical(value: number, unit: Unit): number {
  return value / unit.factor + (unit.zero ?? 0);
}

/** The unit a spelling stands for, in a kind or, with none named, in the first kind that has it. */
export function unitNamed(spelling: string, kind?: UnitKind): Unit | undefined {
  const plain = spelling
    .trim()
    .replace("³", "^3")
    .replace("µ", "μ")
    .replace(/[A-Z]/g, (c) => c.toLowerCase());
  const tables: readonly (readonly Unit[])[] = kind === undefined ? Object.values(UNITS) : [UNITS[kind]];
  for (const table of tables) {
    const unit = table.find(({ id, spellings }) => id === spelling || spellings.includes(plain));
    if (unit !== undefined) {
      return unit;
    }
  }
  return undefined;
}

/**
 * The same quantity in another unit of one kind; undefined when no kind has both, or a spelling names two units.
 * Source: nist-sp-811, appendix B; the tables above.
 */
export function convert(value: number, from: string, to: string): number | undefined {
  for (const kind of Object.keys(UNITS) as UnitKind[]) {
    const source = unitNamed(from, kind);
    const target = unitNamed(to, kind);
    if (source !== undefined && target !== undefined) {
      const isDoubtful = source.asks !== undefined || target.asks !== undefined;
      return isDoubtful
        ? undefined
        : source === target
          ? value
          : fromCanonical(toCanonical(value, source), target);
    }
  }
  return undefined;
}

/** Gallons per hour, minute and day; `short` are the openings of "gph" and its like. */
function flowsOf(
  gallon: string,
  litres: number,
  spelled: readonly string[],
  short: readonly string[],
  asks?: readonly string[],
): Unit[] {
  const spans = [
    { id: "h", hours: 1, endings: ["/h", "/hr", "/hour", " per h", " per hour", " an hour"], short: "gph" },
    { id: "min", hours: 1 / 60, endings: ["/min", "/minute", " per min", " per minute"], short: "gpm" },
    { id: "d", hours: HOURS_PER_DAY, endings: ["/d", "/day", " per day", " a day"], short: "gpd" },
  ];
  return spans.map((span) => ({
    id: `${gallon}/${span.id}`,
    factor: litres / span.hours,
    spellings: [
      ...spelled.flatMap((name) => span.endings.map((ending) => name + ending)),
      ...short.map((opening) => opening + span.short),
    ],
    ...(asks === undefined ? {} : { asks: asks.map((each) => `${each}/${span.id}`) }),
  }));
}
