import { salinityFromConductivity, salinityFromConductivityAt25 } from "../water/conductivity.ts";
import { practicalFromAbsolute, salinityFromGramsPerLitre } from "../water/salinity-scales.ts";
import { salinityFromSpecificGravity, specificGravity } from "../water/specific-gravity.ts";
import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import { type Estimate, mapEstimate } from "./estimate.ts";
import { type Amount, type Grammar, Misread } from "./grammar.ts";
import type { DecimalMark } from "./number-text.ts";
import type { GravityScale, Habits, Read } from "./read.ts";
import { ask, readText, showTyped, writeEstimate } from "./reader.ts";
import { type GravityText, gravityText, splitConditions } from "./salinity-conditions.ts";
import { showEstimate } from "./show.ts";
import type { Unit } from "./unit-table.ts";
import {
  as,
  type DegreesC,
  type MilliSiemensPerCm,
  type PracticalSalinity,
  type SpecificGravity,
} from "./units.ts";

export type SalinityScale = "PSU" | "g/kg" | "g/L" | "SG" | "conductivity";

/** A salinity, and what it was read from. */
export interface SalinityEntry {
  readonly salinity: Estimate<PracticalSalinity>;
  readonly scale: SalinityScale;
  /** The figures on that scale; conductivity in mS/cm. */
  readonly typed: Estimate<number>;
  readonly gravity?: GravityScale;
  readonly compensation?: "at 25 °C" | "as measured";
  /** Of the sample, where the conversion needs it. */
  readonly temperatureC?: DegreesC;
}

interface ScaledUnit extends Unit {
  readonly scale: SalinityScale;
}

const USUAL_C = as<DegreesC>(25);
const SALTIEST = 100;
const EXAMPLES = "“35 ppt”, “1.026 SG 25/25” or “53 mS/cm at 25 °C”";
const UNITS_OF_SALINITY: readonly ScaledUnit[] = [
  { id: "ppt", scale: "PSU", factor: 1, spellings: ["ppt", "‰", "o/oo", "0/00", "parts per thousand"] },
  { id: "PSU", scale: "PSU", factor: 1, spellings: ["psu", "pss", "pss-78", "practical salinity"] },
  { id: "g/kg", scale: "g/kg", factor: 1, spellings: ["g/kg", "g per kg", "g/1000 g"] },
  {
    id: "g/L",
    scale: "g/L",
    factor: 1,
    spellings: ["g/l", "g per l", "g per litre", "g per liter", "g/litre", "g/liter"],
  },
  { id: "SG", scale: "SG", factor: 1, spellings: ["sg", "s g", "specific gravity", "spec gravity", "sp gr"] },
  {
    id: "mS/cm",
    scale: "conductivity",
    factor: 1,
    spellings: ["ms/cm", "ms", "ms cm^-1", "ds/m", "millisiemens"],
  },
  {
    id: "µS/cm",
    scale: "conductivity",
    factor: 1e-3,
    spellings: ["μs/cm", "us/cm", "μs", "us", "microsiemens"],
  },
  { id: "S/m", scale: "conductivity", factor: 10, spellings: ["s/m"] },
];
const GRAMMAR: Grammar = {
  noun: "a salinity",
  examples: EXAMPLES,
  units: UNITS_OF_SALINITY,
  isPrefixed: true,
  hasArithmetic: false,
  min: 0,
  max: 200_000,
  about: {
    halfWidth: (unit) => (unit?.id === "SG" ? 0.001 : scaleOf(unit) === "conductivity" ? 2 : 1),
    words: "± 1 ppt, 0.001 SG or 2 mS/cm",
  },
};
/** Conventions in use, each as a member would type it. */
const CONVENTIONS = ["25/25", "20/20", "60/60 °F", "15.6/4"];

/**
 * A salinity on any of the hobby's scales, as practical salinity. Bare figures are told apart by size:
 * 1.026 is a specific gravity, 35 is ppt. A gravity whose two temperatures are not known, and a
 * conductivity whose compensation is not, are asked about.
 */
export function readSalinity(typed: string, habits: Habits): Read<SalinityEntry> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isPointDecimal: true,
    isLikely: ({ salinity }) => salinity.high <= SALTIEST,
    read: (text, mark) => readCleaned(text, mark, habits),
  });
}

/** Reads back as the same entry. */
export function formatSalinity(entry: SalinityEntry): string {
  const unit = entry.scale === "conductivity" ? "mS/cm" : entry.scale;
  const figure = writeEstimate(entry.typed, unit);
  if (entry.gravity !== undefined) {
    return `${figure} ${gravityText(entry.gravity)}`;
  }
  if (entry.compensation === "at 25 °C") {
    return `${figure} at 25 °C`;
  }
  const at = entry.temperatureC === undefined ? figure : `${figure} at ${entry.temperatureC} °C`;
  return entry.compensation === "as measured" ? `${at} uncompensated` : at;
}

function readCleaned(text: string, mark: DecimalMark, habits: Habits): Read<SalinityEntry> {
  const conditions = splitConditions(text);
  const amount = readAmount(conditions.figure, GRAMMAR, mark);
  const again = (next: string) => readSalinity(next, habits);
  const scale = scaleOf(amount.unit);
  if (scale === undefined) {
    return readBare(text, mark, conditions, amount, habits);
  }
  if (amount.unitSpans.some(({ unit }) => scaleOf(unit) !== scale)) {
    throw new Misread(`${quote(text)} mixes two scales of salinity. Keep to one, like ${EXAMPLES}.`);
  }
  if (conditions.gravity !== undefined && scale !== "SG") {
    throw new Misread(
      `${quote(text)} has the temperatures of a specific gravity, but another unit. Try ${EXAMPLES}.`,
    );
  }
  switch (scale) {
    case "SG":
      return readGravity(text, conditions, amount, habits, again);
    case "conductivity":
      return readConductivity(text, conditions, amount, habits, again);
    case "g/L": {
      const t = conditions.temperatureC ?? USUAL_C;
      refuseBrine(text, amount);
      return entry(amount, { scale, temperatureC: t }, ` at ${t} °C`, (gL) =>
        salinityFromGramsPerLitre(as<Parameters<typeof salinityFromGramsPerLitre>[0]>(gL), t),
      );
    }
    case "g/kg":
      refuseBrine(text, amount);
      return entry(amount, { scale }, "", (sa) =>
        practicalFromAbsolute(as<Parameters<typeof practicalFromAbsolute>[0]>(sa)),
      );
    case "PSU":
      refuseBrine(text, amount);
      return entry(amount, { scale }, "", (sp) => as<PracticalSalinity>(sp));
  }
}

function readGravity(
  text: string,
  conditions: GravityText,
  amount: Amount,
  habits: Habits,
  again: (text: string) => Read<SalinityEntry>,
): Read<SalinityEntry> {
  if (conditions.temperatureC !== undefined) {
    throw new Misread(
      `A specific gravity has two temperatures, its own and that of the pure water it is compared with. Try “1.026 SG 25/25”.`,
    );
  }
  const gravity = conditions.gravity ?? habits.gravity;
  if (gravity === undefined) {
    return ask(
      "A specific gravity means little without its two temperatures. Which are printed on your instrument?",
      CONVENTIONS.map((convention) => `${conditions.figure} ${convention}`),
      again,
      scaleHabit,
    );
  }
  const sampleC = as<DegreesC>(gravity.sampleC);
  const referenceC = as<DegreesC>(gravity.referenceC);
  const pure = specificGravity(as<PracticalSalinity>(0), sampleC, referenceC);
  const heaviest = specificGravity(as<PracticalSalinity>(SALTIEST), sampleC, referenceC);
  const { low, high } = amount.estimate;
  if (low < pure - GRAVITY_SLACK || high > heaviest) {
    throw new Misread(
      `${quote(text)} is no specific gravity of sea water: that runs from 1.000 to about 1.075. Try ${EXAMPLES}.`,
    );
  }
  return entry(amount, { scale: "SG", gravity }, ` (${gravityText(gravity)})`, (sg) =>
    salinityFromSpecificGravity(as<SpecificGravity>(sg), sampleC, referenceC),
  );
}

/** How far under pure water an instrument's last digit may fall. */
const GRAVITY_SLACK = 0.0004;

function readConductivity(
  text: string,
  conditions: GravityText,
  amount: Amount,
  habits: Habits,
  again: (text: string) => Read<SalinityEntry>,
): Read<SalinityEntry> {
  const { figure, temperatureC, isCompensated } = conditions;
  if (amount.estimate.high > MOST_MS_CM) {
    throw new Misread(`${quote(text)} conducts more than any sea water. Try ${EXAMPLES}.`);
  }
  const at25 = () =>
    entry(amount, { scale: "conductivity", compensation: "at 25 °C" }, " at 25 °C", (c) =>
      salinityFromConductivityAt25(as<MilliSiemensPerCm>(c)),
    );
  if (isCompensated === true || (isCompensated === undefined && temperatureC === USUAL_C)) {
    return at25();
  }
  const isAsMeasured = isCompensated === false || habits.conductivity === "as measured";
  if (temperatureC !== undefined && isAsMeasured) {
    return entry(
      amount,
      { scale: "conductivity", compensation: "as measured", temperatureC },
      ` as measured at ${Number(temperatureC.toPrecision(4))} °C`,
      (c) => salinityFromConductivity(as<MilliSiemensPerCm>(c), temperatureC),
    );
  }
  if (isAsMeasured) {
    throw new Misread(
      `${quote(text)} as measured needs the temperature of the sample. Try ${quote(`${figure} at 24 °C uncompensated`)}.`,
    );
  }
  if (habits.conductivity === "at 25 °C" && temperatureC === undefined) {
    return at25();
  }
  const temperatures = temperatureC === undefined ? LIKELY_TANK_C : [Number(temperatureC.toPrecision(4))];
  return ask(
    "Is that figure brought to 25 °C by the meter, or as it is in water of that temperature?",
    [`${figure} at 25 °C`, ...temperatures.map((t) => `${figure} at ${t} °C uncompensated`)],
    again,
    ({ compensation }) => (compensation === undefined ? undefined : { conductivity: compensation }),
  );
}

/** The scale of a member's instrument, once they have said so. */
function scaleHabit({ gravity }: SalinityEntry): Habits | undefined {
  return gravity === undefined ? undefined : { gravity };
}

/** The equation's own search stops near 128 mS/cm at 25 °C. */
const MOST_MS_CM = 100;
const LIKELY_TANK_C = [22, 24, 26, 28];

/** A figure with no unit: told apart by size where that is safe, asked about where it is a likely slip. */
function readBare(
  text: string,
  mark: DecimalMark,
  conditions: GravityText,
  amount: Amount,
  habits: Habits,
): Read<SalinityEntry> {
  const { best, low, high } = amount.estimate;
  const { figure } = conditions;
  const again = (next: string) => readSalinity(next, habits);
  const gravities = (sg: string) =>
    habits.gravity === undefined ? CONVENTIONS.map((convention) => `${sg} SG ${convention}`) : [`${sg} SG`];
  const isGravity = (low >= 0.99 && high < 1.1 && amount.decimals >= 3) || (low > 1 && high < 1.1);
  if (isGravity || conditions.gravity !== undefined) {
    return readCleaned(withUnit(text, figure, "SG"), mark, habits);
  }
  if (conditions.isCompensated !== undefined) {
    throw new Misread(`${quote(text)} has no unit. Try ${quote(withUnit(text, figure, "mS/cm"))}.`);
  }
  if (low >= 1000 && high <= 1045 && low === high) {
    return ask(
      `Is ${quote(text)} a specific gravity of ${best / 1000}?`,
      gravities(String(best / 1000)),
      again,
      scaleHabit,
    );
  }
  if (low >= SLIP_FROM && high < SLIP_TO && low === high) {
    const gravity = Number((1 + best / 1000).toFixed(6));
    return ask(
      `Is ${quote(text)} ppt, or the last digits of ${gravity}?`,
      [`${figure} ppt`, ...gravities(String(gravity))],
      again,
      scaleHabit,
    );
  }
  if (high > SURELY_PPT && low <= MOST_MS_CM) {
    return ask(`Is ${quote(text)} ppt, or mS/cm?`, [`${figure} ppt`, `${figure} mS/cm at 25 °C`], again);
  }
  if (high > SURELY_PPT) {
    throw new Misread(`${quote(text)} has no unit, and fits no scale of salinity. Try ${EXAMPLES}.`);
  }
  return readCleaned(withUnit(text, figure, "ppt"), mark, habits);
}

/** A bare whole number from here to there may be the digits after "1.0". */
const SLIP_FROM = 18;
const SLIP_TO = 30;
/** Bare figures above this are more often a conductivity. */
const SURELY_PPT = 45;

function entry(
  amount: Amount,
  rest: Omit<SalinityEntry, "salinity" | "typed">,
  condition: string,
  convert: (value: number) => PracticalSalinity,
): Read<SalinityEntry> {
  const salinity = mapEstimate(amount.estimate, convert);
  const typed = amount.estimate;
  const about = amount.about === undefined ? "" : `about, taken as ${aboutWords(amount.unit)}: `;
  const figure = rest.scale === "SG" ? gravityFigures(typed) : showTyped(amount, amount.unit?.id ?? "");
  const isItself = rest.scale === "PSU";
  const nearlyFresh = salinity.high < 1 ? ", nearly fresh water" : "";
  return {
    kind: "read",
    value: { salinity, typed, ...rest },
    readAs: `${about}${figure}${condition}${isItself ? "" : ` = ${showEstimate(salinity, "ppt", { significant: 3 })}`}${nearlyFresh}`,
  };
}

function gravityFigures({ best, low, high }: Estimate): string {
  return low === high
    ? `${best.toFixed(4)} SG`
    : `${best.toFixed(4)} SG (${low.toFixed(4)}–${high.toFixed(4)})`;
}

function aboutWords(unit: Unit | undefined): string {
  const scale = scaleOf(unit);
  return scale === "SG" ? "± 0.001" : scale === "conductivity" ? "± 2 mS/cm" : `± 1 ${unit?.id ?? "ppt"}`;
}

function refuseBrine(text: string, { estimate }: Amount): void {
  if (estimate.high > SALTIEST) {
    throw new Misread(
      `${quote(text)} is saltier than I can work with; sea water has about 35 ppt. Try ${EXAMPLES}.`,
    );
  }
}

/** The text with a unit after its figure, before any conditions. */
function withUnit(text: string, figure: string, unit: string): string {
  return `${figure} ${unit}${text.slice(figure.length)}`;
}

function scaleOf(unit: Unit | undefined): SalinityScale | undefined {
  return UNITS_OF_SALINITY.find(({ id }) => id === unit?.id)?.scale;
}
