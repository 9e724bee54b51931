import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type Seconds } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { type MillilitresPerMinute, pumpSecondsPerDose, SHORT_RUN_S } from "./dosing-pump.ts";
import { unusableFigure } from "./usable-figures.ts";

export interface DosingPumpRun {
  readonly secondsPerDose: Estimate<Seconds>;
  readonly perDose: Estimate<Litres>;
}

/** How long a dosing pump runs for each of a day's doses. */
export function dosingPumpRun(question: {
  readonly daily: Estimate<Litres>;
  readonly dosesPerDay: number;
  readonly flow: Estimate<MillilitresPerMinute>;
}): Answer<DosingPumpRun> | NoAnswer {
  const { daily, dosesPerDay, flow } = question;
  const unusable = unusableFigure([
    { name: "daily volume", estimate: daily, unit: "L" },
    { name: "doses per day", estimate: exactly(dosesPerDay), unit: "doses" },
    { name: "pump flow", estimate: flow, unit: "mL/min" },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate({ "daily volume": daily, "pump flow": flow }, (v) => ({
    secondsPerDose: pumpSecondsPerDose(as<Litres>(v["daily volume"]), dosesPerDay, v["pump flow"]),
    perDose: as<Litres>(v["daily volume"] / dosesPerDay),
  }));
  return {
    kind: "answer",
    value: estimates,
    method: "The day's volume shared out, over the pump's measured flow",
    working: ["volume per dose = volume per day / doses", "seconds = volume per dose / flow"],
    constants: [],
    sources: ["definition", "common-practice"],
    assumptions: ["the pump gives the same flow at every start"],
    cautions:
      estimates.secondsPerDose.best < SHORT_RUN_S
        ? [caution("pump-run-very-short", { seconds: estimates.secondsPerDose.best })]
        : [],
    driver: drivers.secondsPerDose,
  };
}
