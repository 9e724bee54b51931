import { between, type Estimate } from "../quantity/estimate.ts";
import { as, type Litres, type LitresPerHour, type PracticalSalinity } from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import { type DailyEvaporation, dailyEvaporation, type EvaporationInputs } from "./evaporation-per-day.ts";
import { joined } from "./joined-answers.ts";
import { type TopOffFailure, topOffFailure } from "./top-off-failure.ts";

/** How fast a top-off fills when nobody said. Source: assumption. */
export const USUAL_FILL = between<LitresPerHour>(as(20), as(200), as(60));

export interface TopOffInputs {
  readonly evaporation: EvaporationInputs;
  /** All that is needed to tell what a failure does; absent when the member gave too little. */
  readonly failure?: {
    readonly systemL: Estimate<Litres>;
    readonly salinity: Estimate<PracticalSalinity>;
    readonly container: string;
    readonly inletL: Estimate<Litres>;
    readonly reservoirL: Estimate<Litres> | "mains";
    readonly fillLPerH: Estimate<LitresPerHour>;
    readonly freeL: Estimate<Litres>;
    readonly fallbackL: Estimate<Litres>;
  };
}

export interface TopOffCheck {
  readonly evaporation: DailyEvaporation;
  readonly failure: TopOffFailure | undefined;
}

/** How much top-off a day takes, and what follows when it stops or sticks. */
export function topOffCheck(inputs: TopOffInputs): Answer<TopOffCheck> | NoAnswer {
  const evaporation = dailyEvaporation(inputs.evaporation);
  if (evaporation.kind === "no-answer" || inputs.failure === undefined)
    return evaporation.kind === "no-answer"
      ? evaporation
      : { ...evaporation, value: { evaporation: evaporation.value, failure: undefined } };
  const { systemL, salinity, container, inletL, reservoirL, fillLPerH, freeL, fallbackL } = inputs.failure;
  const failure = topOffFailure({
    evaporationKgPerDay: evaporation.value.kgPerDay,
    systemL,
    salinity,
    container,
    usableChamberL: inletL,
    freeL,
    fallbackL,
    source:
      reservoirL === "mains"
        ? { kind: "mains", fillLPerH }
        : { kind: "reservoir", litres: reservoirL, fillLPerH },
  });
  if (failure.kind === "no-answer") return failure;
  return joined({ evaporation: evaporation.value, failure: failure.value }, evaporation, [failure]);
}
