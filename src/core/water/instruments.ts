import type { Estimate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type MilliSiemensPerCm,
  type PracticalSalinity,
  type SpecificGravity,
} from "../quantity/units.ts";
import { type Caution, type Constant, caution } from "../result.ts";
import type { SourceId } from "../sources.ts";
import {
  CONDUCTIVITY_FITTED,
  salinityFromConductivity,
  salinityFromLinearCompensated,
} from "./conductivity.ts";
import { DENSITY_EQUATION } from "./evidence.ts";
import { figure } from "./figure.ts";
import { type PerDegreeC, salinityFromHydrometer } from "./hydrometer.ts";
import { salinityFromBrineScale } from "./refractometer.ts";

/** What the member reads from, and what it was made for. */
export type Instrument =
  | {
      /** A float with a scale. */
      readonly kind: "hydrometer";
      readonly reading: Estimate<SpecificGravity>;
      readonly sample: Estimate<DegreesC>;
      /** Printed on it: the temperature at which its scale is right, and that of the water it calls 1.000. */
      readonly calibrationC: DegreesC;
      readonly referenceC: DegreesC;
      readonly material: "glass" | "acrylic" | "not known";
    }
  | {
      readonly kind: "conductivity meter";
      readonly reading: Estimate<MilliSiemensPerCm>;
      readonly sample: Estimate<DegreesC>;
      readonly display:
        | { readonly kind: "as measured" }
        /** Brought to 25 °C in a way nobody knows. */
        | { readonly kind: "at 25 °C" }
        /** Brought to 25 °C by a fixed percentage per °C. */
        | { readonly kind: "at 25 °C, linear"; readonly percentPerC: number };
    }
  | {
      readonly kind: "refractometer";
      readonly reading: Estimate<PracticalSalinity>;
      /** Whether its ppt scale was made for seawater, or for table salt in water. */
      readonly scale: "seawater" | "table salt";
    };

/** How well the offset of a table-salt scale is known, ppt. Source: quan-fry-1995 against
 *  crc-handbook-concentrative, whose printed digits allow this much. */
export const BRINE_DOUBT = 0.4;

/** How one kind of instrument is read: the sum, and everything the answer says of it. */
export interface Rule {
  readonly compute: (
    reading: number,
    sample: DegreesC,
    expansion: PerDegreeC,
    offset: number,
  ) => PracticalSalinity;
  readonly method: string;
  readonly working: readonly string[];
  readonly constants: readonly Constant[];
  readonly sources: readonly SourceId[];
  readonly assumptions: readonly string[];
  readonly cautions: (salinity: PracticalSalinity) => readonly Caution[];
}

/** The rule for an instrument. */
export function ruleFor(instrument: Instrument): Rule {
  switch (instrument.kind) {
    case "hydrometer":
      return hydrometerRule(instrument);
    case "conductivity meter":
      return conductivityRule(instrument);
    case "refractometer":
      return refractometerRule(instrument);
  }
}

function hydrometerRule(hydrometer: Extract<Instrument, { kind: "hydrometer" }>): Rule {
  const { calibrationC, referenceC, material, reading, sample } = hydrometer;
  const isMaterialKnown = material !== "not known";
  return {
    compute: (read, sampleC, expansion) =>
      salinityFromHydrometer(as<SpecificGravity>(read), sampleC, { calibrationC, referenceC, expansion }),
    method:
      "The float's weight equals that of the water it displaces: density at the sample's temperature, then salinity.",
    working: [
      `density of the sample = reading ${figure(reading.best, 5)} × density of pure water at ${figure(referenceC)} °C ÷ (1 + expansion × (${figure(sample.best)} − ${figure(calibrationC)}))`,
      `salinity whose density at ${figure(sample.best)} °C is that`,
    ],
    constants: [
      DENSITY_EQUATION,
      ...(material === "acrylic"
        ? []
        : [
            {
              name: "expansion of glass, by volume",
              value: "25e-6 per °C",
              source: "iso-1768-1975" as const,
            },
          ]),
      ...(material === "glass"
        ? []
        : [
            {
              name: "expansion of acrylic, by volume",
              value: "2.1e-4 per °C",
              source: "acrylic-expansion" as const,
            },
          ]),
    ],
    sources: [
      "millero-poisson-1981",
      ...(material === "acrylic" ? [] : (["iso-1768-1975"] as const)),
      ...(material === "glass" ? [] : (["acrylic-expansion"] as const)),
    ],
    assumptions: [
      "float and thermometer have the sample's temperature",
      "the scale is right at the temperature printed on it",
      "no bubbles on the float; surface tension is left out",
    ],
    cautions: () => (isMaterialKnown ? [] : [caution("unknown-expansion", {})]),
  };
}

function conductivityRule(meter: Extract<Instrument, { kind: "conductivity meter" }>): Rule {
  const { display, reading, sample } = meter;
  const compute: Rule["compute"] = (read, sampleC) => {
    const conductivity = as<MilliSiemensPerCm>(read);
    if (display.kind === "as measured") return salinityFromConductivity(conductivity, sampleC);
    return display.kind === "at 25 °C"
      ? salinityFromConductivity(conductivity, as<DegreesC>(25))
      : salinityFromLinearCompensated(conductivity, sampleC, display.percentPerC);
  };
  const usedC = display.kind === "at 25 °C" ? 25 : sample.best;
  return {
    compute,
    method: "Practical Salinity Scale 1978, from conductivity and temperature.",
    working: [
      ...(display.kind === "at 25 °C, linear"
        ? [
            `undo the compensation: ${figure(reading.best)} mS/cm × (1 + ${figure(display.percentPerC)} ÷ 100 × (${figure(sample.best)} − 25))`,
          ]
        : []),
      `ratio to standard seawater = conductivity ÷ 42.914 mS/cm, at ${figure(usedC)} °C`,
    ],
    constants: [
      {
        name: "conductivity of standard seawater at 15 °C",
        value: "42.914 mS/cm",
        source: "culkin-smith-1980",
      },
    ],
    sources: [
      "fofonoff-millard-1983",
      "culkin-smith-1980",
      "hill-dauphinee-woods-1986",
      "millero-poisson-1981",
    ],
    assumptions: [
      "the salts are in the proportions of seawater",
      ...(display.kind === "at 25 °C"
        ? ["the meter's compensation is right; it is exact only for a sample at 25 °C"]
        : []),
    ],
    cautions: (salinity) =>
      salinity < CONDUCTIVITY_FITTED.salinity.min ? [caution("not-for-tap-water", {})] : [],
  };
}

function refractometerRule(refractometer: Extract<Instrument, { kind: "refractometer" }>): Rule {
  if (refractometer.scale === "seawater") {
    return {
      compute: (read) => as<PracticalSalinity>(read),
      method: "A seawater scale in ppt is practical salinity as it stands.",
      working: ["no sum: the ppt scale is taken as practical salinity"],
      constants: [],
      sources: ["common-practice", "millero-poisson-1981"],
      assumptions: [
        "calibrated with a seawater standard near 35 ppt",
        "temperature compensation done by the instrument, and the drop at its temperature",
      ],
      cautions: () => [],
    };
  }
  return {
    compute: (read, _sample, _expansion, offset) => salinityFromBrineScale(Math.max(0, read + offset)),
    method: "Refractive index of table-salt brine against that of seawater, both at 20 °C.",
    working: [
      "index of table-salt brine at the reading, in g/kg",
      "salinity of the seawater with that index, give or take 0.4",
    ],
    constants: [
      {
        name: "how well the offset is known",
        value: `± ${BRINE_DOUBT} ppt`,
        source: "crc-handbook-concentrative",
      },
    ],
    sources: ["quan-fry-1995", "crc-handbook-concentrative", "millero-poisson-1981"],
    assumptions: ["the scale is table salt in g per kg of solution", "zeroed with pure water"],
    cautions: (salinity) => [caution("brine-scale", { shown: refractometer.reading.best, salinity })],
  };
}
