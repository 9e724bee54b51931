import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { residenceTime, superficialVelocity, turnover } from "./mixing.ts";
import type { Minutes } from "./plant-units.ts";
import { refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

export interface ContainerInSeries {
  readonly name: string;
  readonly volumeL: Estimate<Litres>;
  /** Section the water crosses, for its speed. */
  readonly sectionCm2?: Estimate;
  /** Its own flow, where that is not the whole. */
  readonly flow?: Estimate<LitresPerHour>;
}

export interface ContainerResidence {
  readonly name: string;
  readonly minutes: Estimate<Minutes>;
  /** Volumes passed per hour. */
  readonly turnoverPerHour: Estimate;
  readonly velocityCmPerS: Estimate | undefined;
}

export interface Residence {
  readonly containers: readonly ContainerResidence[];
  /** Once through all that share the whole flow. */
  readonly totalMinutes: Estimate<Minutes>;
  readonly systemTurnoverPerHour: Estimate;
}

/** How long water stays in each container of a row, and how often each is passed. */
export function residence(
  containers: readonly ContainerInSeries[],
  flow: Estimate<LitresPerHour>,
): Answer<Residence> | NoAnswer {
  if (containers.length === 0) return noAnswer("nothing-named", { what: "a container" });
  const refused =
    refuseSameNames(containers) ??
    refuseUnlessPositive({
      flow,
      ...Object.fromEntries(containers.map(({ name, volumeL }) => [`volume of ${name}`, volumeL])),
      ...Object.fromEntries(containers.map(({ name, sectionCm2 }) => [`section of ${name}`, sectionCm2])),
      ...Object.fromEntries(containers.map((one) => [`flow through ${one.name}`, one.flow])),
    });
  if (refused !== undefined) return refused;
  const each = containers.map((one): ContainerResidence => {
    const { estimates } = propagate(
      { volume: one.volumeL, flow: one.flow ?? flow, section: one.sectionCm2 ?? exactly(1) },
      (v) => ({
        minutes: residenceTime(v.volume, v.flow),
        turns: turnover(v.volume, v.flow),
        velocity: superficialVelocity(v.flow, v.section),
      }),
    );
    return {
      name: one.name,
      minutes: estimates.minutes,
      turnoverPerHour: estimates.turns,
      velocityCmPerS: one.sectionCm2 && estimates.velocity,
    };
  });
  const inLine = containers.filter((one) => one.flow === undefined);
  const ranged: Readonly<Record<string, Estimate>> = {
    flow,
    ...Object.fromEntries(inLine.map(({ name, volumeL }) => [`volume of ${name}`, volumeL])),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const volume = as<Litres>(inLine.reduce((sum, { name }) => sum + (v[`volume of ${name}`] ?? 0), 0));
    const whole = as<LitresPerHour>(v["flow"] ?? 0);
    return { minutes: residenceTime(volume, whole), turns: volume > 0 ? turnover(volume, whole) : 0 };
  });
  return {
    kind: "answer",
    value: { containers: each, totalMinutes: estimates.minutes, systemTurnoverPerHour: estimates.turns },
    method: "Volume over flow, and flow over volume",
    working: ["minutes = litres ÷ (L/h) × 60", "turnover = (L/h) ÷ litres", "speed = flow ÷ section"],
    constants: [],
    sources: ["levenspiel-1999", "empty-bed-contact-time"],
    assumptions: [
      "an average: some water passes sooner, some later",
      "for media, the volume of the bed itself is given",
    ],
    cautions: [],
    driver: drivers.minutes,
  };
}
