import type { Answer, NoAnswer } from "../result.ts";
import type { Conversion, ConversionQuestion } from "./conversion.ts";
import { concentrationTarget, isMicromolPerKg, salinityTarget, strengthUnit } from "./conversion-target.ts";
import { convertedAlkalinity, convertedByFactor } from "./convert-by-factor.ts";
import { convertedConcentration } from "./convert-concentration.ts";
import { convertedSalinity } from "./convert-salinity-scale.ts";
import { convertedStrength } from "./convert-strength.ts";
import type { Convertible } from "./convertible.ts";

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
