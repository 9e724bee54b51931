import type { Caution, CautionFigures, Refusal, RefusalFigures } from "../core/result.ts";
import { breedingCautionWording, breedingRefusalWording } from "./breeding.ts";
import { carbonateCautionWording, carbonateRefusalWording } from "./carbonate.ts";
import { cloudyCautionWording } from "./cloudy.ts";
import { dosingCautionWording, dosingRefusalWording } from "./dosing.ts";
import { expressionCautionWording, expressionRefusalWording } from "./expression.ts";
import { helpCautionWording } from "./help.ts";
import { nitrogenCautionWording, nitrogenRefusalWording } from "./nitrogen.ts";
import { plansCautionWording } from "./plans.ts";
import { plantCautionWording, plantRefusalWording } from "./plant.ts";
import { quantityCautionWording, quantityRefusalWording } from "./quantity.ts";
import { tankCautionWording, tankRefusalWording } from "./tank.ts";
import { trendsCautionWording, trendsRefusalWording } from "./trends.ts";
import { waterCautionWording, waterRefusalWording } from "./water.ts";
import type { Wording } from "./wording.ts";

const cautionWording: Wording<CautionFigures> = {
  ...waterCautionWording,
  ...nitrogenCautionWording,
  ...dosingCautionWording,
  ...carbonateCautionWording,
  ...plansCautionWording,
  ...plantCautionWording,
  ...tankCautionWording,
  ...trendsCautionWording,
  ...expressionCautionWording,
  ...breedingCautionWording,
  ...quantityCautionWording,
  ...cloudyCautionWording,
  ...helpCautionWording,
};

const refusalWording: Wording<RefusalFigures> = {
  ...waterRefusalWording,
  ...nitrogenRefusalWording,
  ...dosingRefusalWording,
  ...carbonateRefusalWording,
  ...plantRefusalWording,
  ...tankRefusalWording,
  ...trendsRefusalWording,
  ...expressionRefusalWording,
  ...breedingRefusalWording,
  ...quantityRefusalWording,
};

/** The caution as a member reads it. */
export function sayCaution(caution: Caution): string {
  const say = cautionWording[caution.code] as (figures: Caution["figures"]) => string;
  return say(caution.figures);
}

/** The refusal as a member reads it. */
export function sayRefusal(refusal: Refusal): string {
  const say = refusalWording[refusal.code] as (figures: Refusal["figures"]) => string;
  return say(refusal.figures);
}
