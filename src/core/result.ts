import type { BreedingCautions, BreedingRefusals } from "./breeding/cautions.ts";
import type { CarbonateCautions, CarbonateRefusals } from "./carbonate/cautions.ts";
import type { CloudyCautions } from "./cloudy/cautions.ts";
import type { DosingCautions, DosingRefusals } from "./dosing/cautions.ts";
import type { ExpressionCautions, ExpressionRefusals } from "./expression/cautions.ts";
import type { HelpCautions } from "./help/cautions.ts";
import type { NitrogenCautions, NitrogenRefusals } from "./nitrogen/cautions.ts";
import type { PlansCautions } from "./plans/cautions.ts";
import type { PlantCautions, PlantRefusals } from "./plant/cautions.ts";
import type { QuantityCautions, QuantityRefusals } from "./quantity/cautions.ts";
import type { Driver } from "./quantity/estimate.ts";
import type { SourceId } from "./sources.ts";
import type { TankCautions, TankRefusals } from "./tank/cautions.ts";
import type { TrendsCautions, TrendsRefusals } from "./trends/cautions.ts";
import type { WaterCautions, WaterRefusals } from "./water/cautions.ts";

/** Every caution the core can raise, with the figures its sentence needs. */
export interface CautionFigures
  extends WaterCautions,
    NitrogenCautions,
    DosingCautions,
    CarbonateCautions,
    PlansCautions,
    PlantCautions,
    TankCautions,
    TrendsCautions,
    ExpressionCautions,
    BreedingCautions,
    QuantityCautions,
    CloudyCautions,
    HelpCautions {}

/** Every reason for which a question cannot be answered, with the figures its sentence needs. */
export interface RefusalFigures
  extends WaterRefusals,
    NitrogenRefusals,
    DosingRefusals,
    CarbonateRefusals,
    PlantRefusals,
    TankRefusals,
    TrendsRefusals,
    ExpressionRefusals,
    BreedingRefusals,
    QuantityRefusals {}

/** note: good to know; warning: check before acting; danger: someone or something can be hurt. */
export type CautionLevel = "note" | "warning" | "danger";

export type CautionCode = keyof CautionFigures;
export type RefusalCode = keyof RefusalFigures;

export type Caution = {
  readonly [C in CautionCode]: {
    readonly code: C;
    readonly level: CautionLevel;
    readonly figures: CautionFigures[C];
  };
}[CautionCode];

export type Refusal = {
  readonly [C in RefusalCode]: { readonly code: C; readonly figures: RefusalFigures[C] };
}[RefusalCode];

/** A constant an answer rests on, as a member who opens the working sees it. */
export interface Constant {
  readonly name: string;
  /** With unit, e.g. "25e-6 per °C". */
  readonly value: string;
  readonly source: SourceId;
}

/** A computed value carrying its own evidence. */
export interface Answer<T> {
  readonly kind: "answer";
  readonly value: T;
  /** One line in plain words. */
  readonly method: string;
  /** The formula in words, one step per line. */
  readonly working: readonly string[];
  readonly constants: readonly Constant[];
  readonly sources: readonly SourceId[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly Caution[];
  /** The input that widens the main figure most; absent when everything is exact. */
  readonly driver?: Driver | undefined;
}

/** A question that cannot be answered from what was given. Returned, never thrown. */
export interface NoAnswer {
  readonly kind: "no-answer";
  readonly reason: Refusal;
  /** Cautions that hold all the same. */
  readonly cautions: readonly Caution[];
}

export function caution<C extends CautionCode>(
  code: C,
  figures: CautionFigures[C],
  level: CautionLevel = "warning",
): Caution {
  return { code, level, figures } as Caution;
}

export function noAnswer<C extends RefusalCode>(
  code: C,
  figures: RefusalFigures[C],
  cautions: readonly Caution[] = [],
): NoAnswer {
  return { kind: "no-answer", reason: { code, figures } as Refusal, cautions };
}
