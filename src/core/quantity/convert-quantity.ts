import { alkalinityPerKg } from "../carbonate/alkalinity-units.ts";
import { comparable } from "../dosing/strength.ts";
import { type Answer, type Constant, caution, type NoAnswer, noAnswer } from "../result.ts";
import { convertSalinity, type SalinityScales } from "../water/convert-salinity.ts";
import { seawaterDensity } from "../water/density.ts";
import { DENSITY_EQUATION } from "../water/evidence.ts";
import { specificGravity } from "../water/specific-gravity.ts";
import { firstNotCredible, SALINITY, TEMPERATURE } from "../water/usable.ts";
import {
  ALKALINITY_PER_KG,
  type ConcentrationTarget,
  concentrationTarget,
  factorUnit,
  isMicromolPerKg,
  type SalinityTarget,
  type StrengthUnit,
  salinityTarget,
  strengthUnit,
} from "./conversion-target.ts";
import { type Convertible, type FactorKind, KIND_NOUNS, unitsOf } from "./convertible.ts";
import { type Driver, type Estimate, exactly, mapEstimate, propagate } from "./estimate.ts";
import type { Habits } from "./read.ts";
import { gravityText } from "./salinity-conditions.ts";
import { showEstimate } from "./show.ts";
import { type Basis, FORMS, formOf, type Substance } from "./substances.ts";
import { CANONICAL_UNIT, fromCanonical } from "./unit-table.ts";
import { as, type DegreesC, type KgPerM3, type MilliequivPerL, type PracticalSalinity } from "./units.ts";

/** A quantity in one unit. */
export interface Converted {
  readonly unit: string;
  readonly estimate: Estimate;
  /** Figures that count where the value has no range. */
  readonly significant: number;
}

export interface Conversion {
  /** "a volume". */
  readonly noun: string;
  /** In the unit asked for; absent when none was. */
  readonly wanted?: Converted;
  /** In all usual units of its kind; empty when one was asked for. */
  readonly all: readonly Converted[];
  /** Set when only this end is known: "<5" says nothing more. */
  readonly bound?: "below" | "above";
}

export interface ConversionQuestion {
  readonly quantity: Convertible;
  /** As typed; without it the answer holds all usual units. */
  readonly to?: string | undefined;
  readonly habits: Habits;
  /** Of the water: what a litre weighs follows from both. */
  readonly salinity?: Estimate<PracticalSalinity> | undefined;
  readonly temperature?: Estimate<DegreesC> | undefined;
  /** Of a solution, for per cent by weight. */
  readonly density?: Estimate<KgPerM3> | undefined;
}

const MOST_FIGURES = 6;
const FITTED_FIGURES = 5;

/**
 * A quantity in another unit of its kind, or in all of them.
 * Source: nist-sp-811, appendix B, for factors; the scales of salinity as convertSalinity has them.
 */
export function convertQuantity(question: ConversionQuestion): Answer<Conversion> | NoAnswer {
  const answer = converted(question);
  const bound = boundOf(question.quantity);
  return answer.kind === "no-answer" || bound === undefined
    ? answer
    : { ...answer, value: { ...answer.value, bound } };
}

/** Whether the temperature of the water moves the result. */
export function usesTemperature({ quantity, to, habits, salinity }: ConversionQuestion): boolean {
  if (quantity.kind !== "salinity") return salinity !== undefined;
  const target = to === undefined ? undefined : salinityTarget(to, habits);
  return target === undefined || ["g/L", "mS/cm as measured", "density"].includes(target.on);
}

function boundOf(quantity: Convertible): "below" | "above" | undefined {
  switch (quantity.kind) {
    case "concentration":
      return quantity.entry.censored;
    case "salinity":
    case "strength":
      return undefined;
    default:
      return quantity.censored;
  }
}

function converted(question: ConversionQuestion): Answer<Conversion> | NoAnswer {
  const { quantity } = question;
  switch (quantity.kind) {
    case "salinity":
      return convertedSalinity(question, quantity.entry.salinity);
    case "concentration":
      return convertedConcentration(question, quantity);
    case "strength":
      return convertedStrength(question, quantity);
    default:
      return quantity.kind === "alkalinity" && (question.to === undefined || isMicromolPerKg(question.to))
        ? convertedAlkalinity(question, quantity)
        : convertedByFactor(question, quantity);
  }
}

/** What a conversion lacks before it can be made: the question to put first. */
export function missingFor({
  quantity,
  to,
  salinity,
  density,
}: ConversionQuestion): "salinity" | "density" | "of" | undefined {
  if (to === undefined) return undefined;
  if (quantity.kind === "alkalinity" && isMicromolPerKg(to))
    return salinity === undefined ? "salinity" : undefined;
  if (quantity.kind === "strength") {
    const { kind, density: own } = quantity.strength;
    const isByWeight = (kind === "% w/w") !== (strengthUnit(to) === "% w/w");
    return isByWeight && own === undefined && density === undefined ? "density" : undefined;
  }
  if (quantity.kind !== "concentration") return undefined;
  const { substance, basis } = quantity.entry;
  const target = concentrationTarget(to, substance, basis);
  const isNewForm =
    target?.basis !== undefined && target.basis !== basis && !/no|nh|po|nit|amm|phos|tan/i.test(to);
  if (substance === undefined && (/mol/i.test(to) || isNewForm)) return "of";
  return target !== undefined && target.per !== quantity.per && salinity === undefined
    ? "salinity"
    : undefined;
}

type Of<K extends Convertible["kind"]> = Extract<Convertible, { readonly kind: K }>;

function convertedByFactor(
  { to }: ConversionQuestion,
  { kind, estimate }: Of<FactorKind>,
): Answer<Conversion> | NoAnswer {
  const target = to === undefined ? undefined : factorUnit(kind, to);
  if (to !== undefined && target === undefined) return differs(kind, to, unitsOf(kind));
  const inUnit = (id: string): Converted => {
    const unit = factorUnit(kind, id);
    return {
      unit: id,
      estimate: unit === undefined ? estimate : mapEstimate(estimate, (value) => fromCanonical(value, unit)),
      significant: MOST_FIGURES,
    };
  };
  const wanted = target === undefined ? undefined : inUnit(target.id);
  const scale = target?.zero === undefined ? "" : `, and then + ${target.zero}`;
  return {
    ...plain(kind, wanted, wanted === undefined ? unitsOf(kind).map(inUnit) : []),
    method: "By the fixed factor between the two units",
    working: [
      ...(target === undefined
        ? []
        : [`${CANONICAL_UNIT[kind]} ÷ ${Number(target.factor.toPrecision(12))}${scale} = ${target.id}`]),
      `it is ${showEstimate(estimate, CANONICAL_UNIT[kind], { significant: 8 })}`,
    ],
    sources:
      kind === "span"
        ? ["definition"]
        : kind === "alkalinity"
          ? ["definition", "standard-atomic-weights"]
          : ["nist-sp-811"],
  };
}

/** Alkalinity beside its count per kilogram, where salinity is known. */
function convertedAlkalinity(
  question: ConversionQuestion,
  quantity: Of<FactorKind>,
): Answer<Conversion> | NoAnswer {
  const perLitre = convertedByFactor({ ...question, to: undefined }, quantity);
  const water = waterOf(question);
  if (perLitre.kind === "no-answer") return perLitre;
  if (water === undefined)
    return question.to === undefined
      ? perLitre
      : noAnswer("conversion-needs", { what: "the salinity of the water", example: "“salinity:35 ppt”" });
  if ("kind" in water) return water;
  const { estimates, drivers } = propagate({ "the figure typed": quantity.estimate, ...water }, (given) => ({
    perKg: alkalinityPerKg(as<MilliequivPerL>(given["the figure typed"]), densityOf(given)),
  }));
  const perKg: Converted = {
    unit: ALKALINITY_PER_KG,
    estimate: estimates.perKg,
    significant: FITTED_FIGURES,
  };
  return {
    ...perLitre,
    value: {
      noun: perLitre.value.noun,
      ...(question.to === undefined ? {} : { wanted: perKg }),
      all: question.to === undefined ? [...perLitre.value.all, perKg] : [],
    },
    working: [...perLitre.working, "µmol per kg = meq/L × 1 000 000 ÷ density in kg/m³"],
    constants: [DENSITY_EQUATION],
    sources: [...perLitre.sources, "millero-poisson-1981"],
    driver: drivers.perKg,
  };
}

function convertedConcentration(
  question: ConversionQuestion,
  { entry, per, isFormSaid }: Of<"concentration">,
): Answer<Conversion> | NoAnswer {
  const { to } = question;
  const { estimate, basis } = entry;
  const named = FORMS.find(
    ({ names }) => to !== undefined && names.some((name) => says(to, name)),
  )?.substance;
  const substance = entry.substance ?? named;
  const targets =
    to === undefined ? usualConcentrations(substance, basis) : [concentrationTarget(to, substance, basis)];
  const [first] = targets;
  const isOther = entry.substance !== undefined && named !== undefined && named !== entry.substance;
  if (first === undefined || isOther)
    return differs("concentration", to ?? "", ["mg/L", "µg/L", "mg/kg", "µmol/L", "mg/L as N"]);
  const water = waterOf(question);
  if (water !== undefined && "kind" in water) return water;
  if (to !== undefined && first.per !== per && water === undefined)
    return noAnswer("conversion-needs", { what: "the salinity of the water", example: "“salinity:35 ppt”" });
  const possible = targets.filter(
    (target) => target !== undefined && (target.per === per || water !== undefined),
  );
  const results: { readonly row: Converted; readonly driver: Driver | undefined }[] = [];
  for (const target of possible) {
    if (target === undefined) continue;
    const share = basisFactor(substance, basis, target.basis);
    if (share === undefined)
      return noAnswer("conversion-needs", { what: "to know of which substance", example: "“of:nitrate”" });
    const isAcross = target.per !== per;
    const { estimates, drivers } = propagate(
      { "the figure typed": estimate, ...(isAcross && water !== undefined ? water : NO_WATER) },
      (given) => {
        const kgPerL = isAcross ? densityOf(given) / 1000 : 1;
        const across = per === "L" ? 1 / kgPerL : kgPerL;
        return { figure: (given["the figure typed"] * share * across) / target.mgPerUnit };
      },
    );
    results.push({
      row: { unit: target.label, estimate: estimates.figure, significant: FITTED_FIGURES },
      driver: drivers.figure,
    });
  }
  const rows = results.map(({ row }) => row);
  const form = substance === undefined ? undefined : formOf(substance, basis);
  const isForms = substance !== undefined && FORMS.filter((each) => each.substance === substance).length > 1;
  const isAcross = possible.some((target) => target?.per !== per);
  return {
    ...plain("concentration", to === undefined ? undefined : rows[0], to === undefined ? rows : []),
    method: "By molar masses and, between litres and kilograms, by the density of the water",
    working: [
      ...(form === undefined
        ? []
        : [`one mole of ${form.label} weighs ${Number(form.gPerMol.toPrecision(7))} g`]),
      "milligrams on another basis = milligrams × molar mass of that basis ÷ molar mass of this one",
      ...(isAcross ? ["mg per kg = mg per litre ÷ density in kg/L"] : []),
    ],
    constants: [...massesOf(substance), ...(isAcross ? [DENSITY_EQUATION] : [])],
    sources: [
      ...(substance === undefined ? (["definition"] as const) : (["standard-atomic-weights"] as const)),
      ...(isAcross ? (["millero-poisson-1981"] as const) : []),
    ],
    cautions: [
      ...(isForms && !isFormSaid && form !== undefined && to !== undefined
        ? [caution("form-not-said", { as: form.label }, "note")]
        : []),
      ...(entry.typedUnit === "ppm" ? [caution("ppm-is-mg-per-litre-here", {}, "note")] : []),
    ],
    driver: results[0]?.driver,
  };
}

function says(text: string, name: string): boolean {
  return (
    name.length > 2 &&
    text
      .toLowerCase()
      .split(/[\s()]+/)
      .includes(name)
  );
}

/** Grams on one basis for a gram on another; undefined when the substance is not known. */
function basisFactor(
  substance: Substance | undefined,
  from: Basis,
  to: Basis | undefined,
): number | undefined {
  if (to === undefined || to === from) return 1;
  const [a, b] = [substance, substance].map((each, at) =>
    each === undefined ? undefined : formOf(each, at === 0 ? from : to),
  );
  return a === undefined || b === undefined ? undefined : b.gPerMol / a.gPerMol;
}

/** The units a concentration is usually met in. */
function usualConcentrations(
  substance: Substance | undefined,
  basis: Basis,
): readonly (ConcentrationTarget | undefined)[] {
  const forms = FORMS.filter((form) => form.substance === substance);
  const perLitre = forms.length > 1 ? forms.map(({ label }) => `mg/L as ${label}`) : ["mg/L"];
  const moles = substance === undefined ? [] : ["µmol/L", "µmol/kg"];
  return [...perLitre, "µg/L", "mg/kg", ...moles].map((unit) => concentrationTarget(unit, substance, basis));
}

function massesOf(substance: Substance | undefined): readonly Constant[] {
  return FORMS.filter((form) => form.substance === substance).map(({ label, gPerMol }) => ({
    name: `molar mass of ${label}`,
    value: `${Number(gPerMol.toPrecision(7))} g/mol`,
    source: "standard-atomic-weights",
  }));
}

/** Every scale in one table; a conductivity and a gravity carry their own temperatures. */
const SALINITY_ROWS: readonly (readonly [
  unit: string,
  scale: keyof SalinityScales,
  on?: SalinityTarget["on"],
])[] = [
  ["ppt (PSU)", "practical", "ppt"],
  ["SG 25/25 °C", "gravity25at25"],
  ["SG 20/20 °C", "gravity20at20"],
  ["SG 60/60 °F", "gravity60FAt60F"],
  ["SG 15.6/4 °C", "gravity15point6at4"],
  ["SG 20/4 °C", "gravity20at4"],
  ["mS/cm at 25 °C", "conductivityAt25", "mS/cm at 25 °C"],
  ["mS/cm as measured", "conductivityAsMeasured", "mS/cm as measured"],
  ["g/kg", "absolute", "g/kg"],
  ["g/L", "gramsPerLitre", "g/L"],
  ["g/kg chlorinity", "chlorinity", "chlorinity"],
  ["kg/m³ (density)", "density", "density"],
];

function convertedSalinity(
  question: ConversionQuestion,
  salinity: Estimate<PracticalSalinity>,
): Answer<Conversion> | NoAnswer {
  const { to, habits, temperature = exactly(as<DegreesC>(25)) } = question;
  const target = to === undefined ? undefined : salinityTarget(to, habits);
  if (to !== undefined && target === undefined)
    return differs("salinity", to, ["ppt", "g/kg", "g/L", "SG 25/25", "mS/cm", "density"]);
  const answer = convertSalinity(salinity, temperature);
  if (answer.kind === "no-answer") return answer;
  const rows = SALINITY_ROWS.map(([unit, scale, on]) => ({
    on,
    row: { unit, estimate: answer.value[scale], significant: FITTED_FIGURES },
  }));
  const wanted =
    target?.on === "SG"
      ? {
          unit: `SG ${gravityText(target.gravity)}`,
          estimate: mapEstimate(salinity, (s) =>
            specificGravity(s, as<DegreesC>(target.gravity.sampleC), as<DegreesC>(target.gravity.referenceC)),
          ),
          significant: FITTED_FIGURES,
        }
      : rows.find(({ on }) => on !== undefined && on === target?.on)?.row;
  return {
    ...answer,
    value: {
      noun: KIND_NOUNS.salinity,
      ...(wanted === undefined ? {} : { wanted }),
      all: wanted === undefined ? rows.map(({ row }) => row) : [],
    },
  };
}

const STRENGTH_NEEDS_DENSITY = {
  what: "the density of the solution",
  example: "“density:1.15 kg/L”",
} as const;

function convertedStrength(
  { to, density }: ConversionQuestion,
  { strength }: Of<"strength">,
): Answer<Conversion> | NoAnswer {
  const own = strength.density ?? density;
  const scale = comparable(own === undefined ? strength : { ...strength, density: own }, "solution");
  if ("kind" in scale)
    return scale.reason.code === "weight-percent-needs-density"
      ? noAnswer("conversion-needs", STRENGTH_NEEDS_DENSITY)
      : scale;
  const isByMass = scale.family === "mass in volume";
  const usual: readonly StrengthUnit[] = isByMass
    ? ["% w/v", "g/L", "mg/mL", "mg/L", ...(own === undefined ? [] : (["% w/w"] as const))]
    : ["% v/v", "mL/L"];
  const target = to === undefined ? undefined : strengthUnit(to);
  const fits = target !== undefined && (usual.includes(target) || (isByMass && target === "% w/w"));
  if (to !== undefined && !fits) return differs("strength", to, usual);
  if (target === "% w/w" && own === undefined) return noAnswer("conversion-needs", STRENGTH_NEEDS_DENSITY);
  const inUnit = (unit: StrengthUnit): Converted => ({
    unit,
    estimate:
      unit === "% w/w" && strength.kind === "% w/w"
        ? strength.value
        : unit === "% w/w" && own !== undefined
          ? propagate({ amount: scale.amount, density: own }, (v) => ({
              share: (v.amount / v.density) * 100,
            })).estimates.share
          : mapEstimate(scale.amount, (amount) => amount / PER_UNIT[unit]),
    significant: MOST_FIGURES,
  });
  const wanted = target === undefined ? undefined : inUnit(target);
  return {
    ...plain("strength", wanted, wanted === undefined ? usual.map(inUnit) : []),
    method: "By what the unit means",
    working: [
      "1 % w/v is 1 g in 100 mL of solution, so 10 g/L; 1 g/L is 1 mg/mL",
      "1 % v/v is 1 mL in 100 mL, so 10 mL/L; 1 % w/w is 1 g in 100 g, so g/L = % ÷ 100 × density in kg/m³",
    ],
    sources: ["definition"],
  };
}

/** On the scale of its family (g/L, or the share by volume) in one of the unit. Source: definition. */
const PER_UNIT: Readonly<Record<StrengthUnit, number>> = {
  "% w/v": 10,
  "g/L": 1,
  "mg/mL": 1,
  "mg/L": 0.001,
  "% w/w": 1,
  "% v/v": 0.01,
  "mL/L": 0.001,
};

interface Water {
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
}

const NO_WATER: Water = {
  salinity: exactly(as<PracticalSalinity>(0)),
  temperature: exactly(as<DegreesC>(25)),
};

/** The water a litre of which is weighed; nothing when its salinity is not known. */
function waterOf({ salinity, temperature }: ConversionQuestion): Water | NoAnswer | undefined {
  if (salinity === undefined) return undefined;
  const warmth = temperature ?? exactly(as<DegreesC>(25));
  return (
    firstNotCredible([
      ["salinity", salinity, SALINITY],
      ["temperature", warmth, TEMPERATURE],
    ]) ?? { salinity, temperature: warmth }
  );
}

function densityOf({
  salinity,
  temperature,
}: {
  salinity: PracticalSalinity;
  temperature: DegreesC;
}): KgPerM3 {
  return seawaterDensity(as<PracticalSalinity>(Math.max(0, salinity)), temperature);
}

function plain(
  kind: Convertible["kind"],
  wanted: Converted | undefined,
  all: readonly Converted[],
): Pick<Answer<Conversion>, "kind" | "value" | "constants" | "assumptions" | "cautions"> {
  return {
    kind: "answer",
    value: { noun: KIND_NOUNS[kind], ...(wanted === undefined ? {} : { wanted }), all },
    constants: [],
    assumptions: [],
    cautions: [],
  };
}

function differs(kind: Convertible["kind"], target: string, units: readonly string[]): NoAnswer {
  return noAnswer("conversion-kinds-differ", {
    noun: KIND_NOUNS[kind],
    target: target.slice(0, 30),
    units: units.slice(0, 12).join(", "),
  });
}
