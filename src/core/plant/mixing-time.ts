import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Hours, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { closedLoopTime, flushingTime } from "./mixing.ts";
import { refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

const MIXED = as<Fraction>(0.95);

export interface MixingInputs {
  readonly displayL: Estimate<Litres>;
  /** Everything else on the loop, side tanks left out. */
  readonly restL: Estimate<Litres>;
  readonly flow: Estimate<LitresPerHour>;
  /** Tanks on a flow of their own, such as an algae tank: the slowest sets the bound. */
  readonly sideTanks: readonly {
    readonly name: string;
    readonly volumeL: Estimate<Litres>;
    readonly flow: Estimate<LitresPerHour>;
  }[];
}

export interface MixingTime {
  /** To 95 % of the common mean, both parts well mixed. */
  readonly hours: Estimate<Hours>;
  /** To be on the safe side: as if new water had to wash out the slowest part. */
  readonly boundHours: Estimate<Hours>;
  /** The part that sets that bound. */
  readonly slowest: string;
}

/** How long until something put in is evenly spread over a closed loop. */
export function mixingTime(inputs: MixingInputs): Answer<MixingTime> | NoAnswer {
  const { sideTanks } = inputs;
  const refused =
    refuseSameNames(sideTanks) ??
    refuseUnlessPositive({
      "display volume": inputs.displayL,
      "rest of the loop": inputs.restL,
      flow: inputs.flow,
      ...Object.fromEntries(sideTanks.map(({ name, volumeL }) => [`volume of ${name}`, volumeL])),
      ...Object.fromEntries(sideTanks.map(({ name, flow }) => [`flow through ${name}`, flow])),
    });
  if (refused !== undefined) return refused;
  const ranged: Readonly<Record<string, Estimate>> = {
    "display volume": inputs.displayL,
    "rest of the loop": inputs.restL,
    flow: inputs.flow,
    ...Object.fromEntries(sideTanks.map(({ name, volumeL }) => [`volume of ${name}`, volumeL])),
    ...Object.fromEntries(sideTanks.map(({ name, flow }) => [`flow through ${name}`, flow])),
  };
  const loopBound = (displayL: number, restL: number, flow: number) =>
    flushingTime(as<Litres>(displayL + restL), as<LitresPerHour>(flow), MIXED);
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const loop = loopBound(at("display volume"), at("rest of the loop"), at("flow"));
    const sides = sideTanks.map(({ name }) =>
      flushingTime(as<Litres>(at(`volume of ${name}`)), as<LitresPerHour>(at(`flow through ${name}`)), MIXED),
    );
    return {
      hours: closedLoopTime(
        as<Litres>(at("display volume")),
        as<Litres>(at("rest of the loop")),
        as<LitresPerHour>(at("flow")),
        MIXED,
      ),
      boundHours: as<Hours>(Math.max(loop, ...sides)),
    };
  });
  const bounds = [
    { name: "the loop", hours: loopBound(inputs.displayL.best, inputs.restL.best, inputs.flow.best) },
    ...sideTanks.map(({ name, volumeL, flow }) => ({
      name,
      hours: flushingTime(volumeL.best, flow.best, MIXED),
    })),
  ].sort((a, b) => b.hours - a.hours);
  return {
    kind: "answer",
    value: { ...estimates, slowest: bounds[0]?.name ?? "the loop" },
    method: "Two mixed volumes in a closed loop approach their common mean",
    working: [
      "hours to 95 % = ln 20 ÷ (flow ÷ display + flow ÷ rest)",
      "bound = 3.0 × volume ÷ flow, for the whole loop or the slowest side tank",
    ],
    constants: [{ name: "ln 20", value: "2.996", source: "definition" }],
    sources: ["levenspiel-1999", "definition"],
    assumptions: ["display and rest are each well mixed", "side tanks have their stated flow"],
    cautions: [caution("slow-corners-mix-later", { boundHours: estimates.boundHours.best }, "note")],
    driver: drivers.hours,
  };
}
