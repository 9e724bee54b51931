import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Centimetres,
  type Fraction,
  type Litres,
  type LitresPerHour,
  type Watts,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { MilliJoulesPerCm2, MilliWattsPerCm2 } from "./plant-units.ts";
import { refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";
import { UV_TARGETS, type UvTarget } from "./uv-targets.ts";

/** What is left of the intensity with a lamp near its end and a sleeve in need of cleaning: 0.8 × 0.8.
 *  Source: common-practice. */
const AGE_AND_FOULING = between(0.5, 1, 0.64);
/** Times the dose, since some water passes faster. Source: common-practice. */
const SHORT_CIRCUIT = 2;

/** Dose given in one pass, all water staying equally long. Source: first-principles (fluence = rate × time).
 *  Throws: RangeError when the flow is not above 0. */
export function uvDose(intensity: MilliWattsPerCm2, contact: Litres, flow: LitresPerHour): MilliJoulesPerCm2 {
  if (!(flow > 0)) throw new RangeError("water has to pass");
  return as<MilliJoulesPerCm2>((intensity * contact * 3600) / flow);
}

/** The most flow for a dose; the inverse of `uvDose`. */
export function flowForDose(
  intensity: MilliWattsPerCm2,
  contact: Litres,
  dose: MilliJoulesPerCm2,
): LitresPerHour {
  if (!(dose > 0)) throw new RangeError("a dose has to be above 0");
  return as<LitresPerHour>((intensity * contact * 3600) / dose);
}

/**
 * Mean intensity in a chamber around one lamp: an upper bound, no shadow, no reflection.
 * `output` is the ultraviolet given off, about a third of a low-pressure lamp's watts.
 * Source: first-principles, radial absorption. Lengths in cm, `transmittance` per cm.
 * Throws: RangeError when the chamber is not wider than its sleeve, or transmittance leaves 0–1.
 */
export function chamberIntensity(
  outputW: number,
  lampCm: number,
  sleeveRadiusCm: number,
  chamberRadiusCm: number,
  transmittance: number,
): MilliWattsPerCm2 {
  if (
    !(
      chamberRadiusCm > sleeveRadiusCm &&
      sleeveRadiusCm > 0 &&
      lampCm > 0 &&
      transmittance > 0 &&
      transmittance < 1
    )
  ) {
    throw new RangeError(
      "a chamber is wider than its sleeve, and water lets through a share between 0 and 1",
    );
  }
  const absorption = -Math.log(transmittance);
  const path = (1 - Math.exp(-absorption * (chamberRadiusCm - sleeveRadiusCm))) / absorption;
  return as<MilliWattsPerCm2>(
    ((outputW * 1000) / lampCm) * (path / (Math.PI * (chamberRadiusCm ** 2 - sleeveRadiusCm ** 2))),
  );
}

/** Share of a low-pressure lamp's watts that leave it as ultraviolet. Source: lamp-practice. */
const ULTRAVIOLET_SHARE = between(0.25, 0.4, 0.33);

/** What is known of the light: its mean over the chamber, or the lamp and the chamber around it. */
export type UvLight =
  /** Lamp new and sleeve clean. */
  | { readonly kind: "intensity"; readonly mean: Estimate<MilliWattsPerCm2> }
  | {
      readonly kind: "chamber";
      readonly lampW: Estimate<Watts>;
      readonly lampCm: Estimate<Centimetres>;
      readonly sleeveDiameterCm: Estimate<Centimetres>;
      readonly chamberDiameterCm: Estimate<Centimetres>;
      /** Share of ultraviolet left after one centimetre of the water. */
      readonly transmittance: Estimate<Fraction>;
    };

export interface UvInputs {
  readonly light: UvLight;
  /** Water inside the lit chamber. */
  readonly contactL: Estimate<Litres>;
  readonly flow: Estimate<LitresPerHour>;
  readonly target?: UvTarget;
  /** Water of the whole system, to tell how long it takes to pass. */
  readonly systemL?: Estimate<Litres>;
}

export interface UvAnswer {
  readonly doseMJPerCm2: Estimate<MilliJoulesPerCm2>;
  readonly target:
    | {
        readonly name: UvTarget;
        readonly doseMJPerCm2: Estimate<MilliJoulesPerCm2>;
        /** The most flow that gives twice the dose, for the water that passes faster. */
        readonly mostFlowLPerH: Estimate<LitresPerHour>;
        readonly isReached: boolean;
      }
    | undefined;
  /** Passes of the whole water a day. */
  readonly passesPerDay: Estimate | undefined;
}

/** What dose ultraviolet light gives at a flow, and the most flow for a target. */
export function uvAtFlow(inputs: UvInputs): Answer<UvAnswer> | NoAnswer {
  const { light, target, systemL } = inputs;
  const refused =
    refuseLight(light) ??
    refuseUnlessPositive({
      "lit volume": inputs.contactL,
      flow: inputs.flow,
      "water of the system": systemL,
    });
  if (refused !== undefined) return refused;
  const entry = target && UV_TARGETS[target];
  const ranged: Readonly<Record<string, Estimate>> = {
    ...(light.kind === "intensity"
      ? { intensity: light.mean }
      : {
          "lamp power": light.lampW,
          "share given off as ultraviolet": ULTRAVIOLET_SHARE,
          "lamp length": light.lampCm,
          "sleeve diameter": light.sleeveDiameterCm,
          "chamber diameter": light.chamberDiameterCm,
          transmittance: light.transmittance,
        }),
    "lit volume": inputs.contactL,
    flow: inputs.flow,
    "age of lamp and sleeve": AGE_AND_FOULING,
    "dose wanted": entry?.dose ?? between(1, 1),
    "water of the system": systemL ?? between(1, 1),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const fresh =
      light.kind === "intensity"
        ? at("intensity")
        : chamberIntensity(
            at("lamp power") * at("share given off as ultraviolet"),
            at("lamp length"),
            at("sleeve diameter") / 2,
            at("chamber diameter") / 2,
            at("transmittance"),
          );
    const intensity = as<MilliWattsPerCm2>(fresh * at("age of lamp and sleeve"));
    const contact = as<Litres>(at("lit volume"));
    const flow = as<LitresPerHour>(at("flow"));
    return {
      dose: uvDose(intensity, contact, flow),
      most: flowForDose(intensity, contact, as<MilliJoulesPerCm2>(at("dose wanted") * SHORT_CIRCUIT)),
      passes: (flow * 24) / at("water of the system"),
    };
  });
  const isReached = entry !== undefined && estimates.dose.low >= entry.dose.high * SHORT_CIRCUIT;
  const cautions: Caution[] = [
    caution("uv-burns", {}, "danger"),
    caution("uv-short-circuits", {}, "note"),
    caution("uv-is-no-cure", {}),
  ];
  if (entry?.isDrinkingWater === true) cautions.push(caution("drinking-water-dose-not-enough", {}));
  return {
    kind: "answer",
    value: {
      doseMJPerCm2: estimates.dose,
      target:
        target && entry
          ? { name: target, doseMJPerCm2: entry.dose, mostFlowLPerH: estimates.most, isReached }
          : undefined,
      passesPerDay: systemL && estimates.passes,
    },
    method: "Intensity × time in the light; the flow for a target counts twice its dose",
    working: [
      ...(light.kind === "chamber"
        ? [
            "intensity = ultraviolet output ÷ lamp length × (1 − e^(−a × gap)) ÷ a ÷ ring area, a = −ln transmittance",
          ]
        : []),
      "dose = intensity × 0.64 for age and fouling × lit volume ÷ flow",
      "most flow = intensity × 0.64 × lit volume ÷ (2 × dose wanted)",
    ],
    constants: [
      { name: "lamp age and fouling", value: "0.8 × 0.8 (0.5–1)", source: "common-practice" },
      ...(light.kind === "chamber"
        ? [
            {
              name: "lamp watts given off as ultraviolet",
              value: "0.33 (0.25–0.40)",
              source: "lamp-practice",
            } as const,
          ]
        : []),
      { name: "factor for water that passes faster", value: "2", source: "common-practice" },
      ...(entry
        ? [
            {
              name: `dose: ${target}`,
              value:
                entry.dose.low === entry.dose.high
                  ? `${entry.dose.best} mJ/cm²`
                  : `${entry.dose.low}–${entry.dose.high} mJ/cm²`,
              source: entry.source,
            },
          ]
        : []),
    ],
    sources: [
      "first-principles",
      "common-practice",
      ...(light.kind === "chamber" ? (["lamp-practice"] as const) : []),
      ...(entry ? [entry.source] : []),
    ],
    assumptions: ["all the water passes the light equally", "1000 µW·s/cm² is 1 mJ/cm²"],
    cautions,
    driver: drivers.dose,
  };
}

function refuseLight(light: UvLight): NoAnswer | undefined {
  if (light.kind === "intensity") return refuseUnlessPositive({ intensity: light.mean });
  const { lampW, lampCm, sleeveDiameterCm, chamberDiameterCm, transmittance } = light;
  return (
    refuseUnlessPositive({
      "lamp power": lampW,
      "lamp length": lampCm,
      "sleeve diameter": sleeveDiameterCm,
      "chamber diameter": chamberDiameterCm,
    }) ??
    refuseOutside({ transmittance }, 0.01, 0.999) ??
    (sleeveDiameterCm.high >= chamberDiameterCm.low
      ? noAnswer("unusable-figure", {
          figure: "chamber diameter",
          value: chamberDiameterCm.low,
          rule: "has to be wider than the sleeve",
        })
      : undefined)
  );
}
