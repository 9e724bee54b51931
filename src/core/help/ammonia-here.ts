import { type UnionisedAmmonia, unionisedAmmonia } from "../nitrogen/unionised-ammonia.ts";
import { between, type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { as, type DegreesC, type PH, type PracticalSalinity } from "../quantity/units.ts";
import type { Answer } from "../result.ts";
import type { HelpFacts } from "./facts.ts";

/** What is taken for a figure nobody has told. Source: assumption, the usual ranges of such tanks. */
export const UNTOLD = {
  pH: { fresh: between(6.5, 8.5, 7.5), marine: between(7.8, 8.4, 8.1), brackish: between(7.4, 8.4, 8) },
  temperature: between(22, 28, 25),
  salinity: { fresh: between(0, 0.5, 0.2), marine: between(30, 36, 34), brackish: between(2, 20, 10) },
} as const;

export interface AmmoniaHere {
  readonly answer: Answer<UnionisedAmmonia>;
  /** Figures that were taken for granted because nobody has told them. */
  readonly assumed: readonly ("pH" | "temperature" | "salinity")[];
}

/** The harmful part of the ammonia told, at this pH, temperature and salinity; what is not told covers its usual range. */
export function ammoniaHere(facts: HelpFacts, pH?: Estimate): AmmoniaHere | undefined {
  const reading = facts.readings.get("ammonia");
  if (reading === undefined) return undefined;
  const water = facts.water ?? "fresh";
  const told = {
    pH: pH ?? facts.readings.get("ph")?.estimate,
    temperature: facts.readings.get("temperature")?.estimate,
    salinity: facts.readings.get("salinity")?.estimate,
  };
  const answer = unionisedAmmonia({
    reading: closed(reading.estimate),
    form: "TAN",
    pH: mapEstimate(told.pH ?? UNTOLD.pH[water], (value) => as<PH>(value)),
    scale: "buffers",
    temperatureC: mapEstimate(told.temperature ?? UNTOLD.temperature, (value) => as<DegreesC>(value)),
    salinity: mapEstimate(told.salinity ?? UNTOLD.salinity[water], (value) => as<PracticalSalinity>(value)),
    ...(facts.usedBinder ? { binderUsed: true } : {}),
  });
  if (answer.kind === "no-answer") return undefined;
  const assumed = (["pH", "temperature", "salinity"] as const).filter(
    (name) => told[name] === undefined && !(name === "salinity" && water === "fresh"),
  );
  return { answer, assumed };
}

/** "Above the chart" has no upper end: twice the chart's top stands for it. Source: assumption. */
function closed({ best, low, high }: Estimate): Estimate {
  const top = Math.min(high, Math.max(best * 2, low));
  return { best, low, high: top };
}
