import { alkalinityPerKg } from "../carbonate/alkalinity-units.ts";
import { type Answer, type Constant, type NoAnswer, noAnswer } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { DENSITY_EQUATION } from "../water/evidence.ts";
import {
  type Conversion,
  type ConversionQuestion,
  type Converted,
  densityOf,
  differs,
  FITTED_FIGURES,
  MOST_FIGURES,
  type Of,
  plain,
  waterOf,
} from "./conversion.ts";
import { ALKALINITY_PER_KG, factorUnit } from "./conversion-target.ts";
import { type FactorKind, unitsOf } from "./convertible.ts";
import { mapEstimate, propagate } from "./estimate.ts";
import { showEstimate } from "./show.ts";
import { CANONICAL_UNIT, fromCanonical } from "./unit-table.ts";
import { as, type MilliequivPerL } from "./units.ts";

/** A quantity whose units differ by factors alone. Source: nist-sp-811, appendix B. */
export function convertedByFactor(
  { to }: ConversionQuestion,
  { kind, estimate, typedUnit }: Of<FactorKind>,
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
  const source = kind === "span" || kind === "alkalinity" ? "definition" : "nist-sp-811";
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
    constants: [typedUnit, target?.id ?? typedUnit].flatMap((id, at, both) =>
      both.indexOf(id) === at ? sizeOf(kind, id, source) : [],
    ),
    sources: kind === "alkalinity" ? [source, "standard-atomic-weights"] : [source],
  };
}

/** The size of one unit, unless it is the one all others are counted in. */
function sizeOf(kind: FactorKind, id: string, source: SourceId): readonly Constant[] {
  const unit = factorUnit(kind, id);
  if (unit === undefined || (unit.factor === 1 && unit.zero === undefined)) return [];
  const size = `${Number(unit.factor.toPrecision(12))} ${CANONICAL_UNIT[kind]}`;
  return [
    {
      name: `one ${id}`,
      value: unit.zero === undefined ? size : `${size}, counted from ${unit.zero}`,
      source,
    },
  ];
}

/** Alkalinity beside its count per kilogram, where salinity is known. Source: definition, millero-poisson-1981. */
export function convertedAlkalinity(
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
    constants: [...perLitre.constants, DENSITY_EQUATION],
    sources: [...perLitre.sources, "millero-poisson-1981"],
    driver: drivers.perKg,
  };
}
