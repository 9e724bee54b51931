import type { DegreesKH } from "../nitrogen/nitrification.ts";
import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type PH, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { seawaterDensity } from "../water/density.ts";
import { alkalinityPerKg, alkalinityToMeq } from "./alkalinity-units.ts";
import {
  fugacityFromAlkalinityPH,
  fugacityOfPressure,
  type Microatm,
  pHFromAlkalinityFugacity,
  pressureOfFugacity,
} from "./carbonate-system.ts";
import { FITTED_C, FITTED_SALINITY } from "./equilibrium-constants.ts";
import { convertPH, type PHScale } from "./ph-scales.ts";

/** Carbon dioxide in outdoor air, µatm. Source: common-practice (about 420 in the 2020s). */
const OUTDOOR_AIR = as<Microatm>(420);
/** Above the first the water holds more than aired water would; below the second, less. Source: assumption. */
const MORE_THAN_AIRED = 700;
const LESS_THAN_AIRED = 250;
/** Reserve a system of large fish is usually kept at, dKH. Source: common-practice. */
const USUAL_DKH = { low: 7, high: 12 } as const;
/** Doubt of a glass electrode in sea water on top of its reading. Source: electrode-junction, from memory. */
const ELECTRODE_DOUBT = between(-0.05, 0.05);

const LEAST_SALINITY = 5;
const LIMITS = {
  pH: { min: 6, max: 9.5 },
  dkh: { min: 0.1, max: 40 },
  celsius: { min: 0, max: 45 },
  salinity: { min: LEAST_SALINITY, max: 50 },
} as const;

/**
 * "carbon dioxide": pH low for an alkalinity that is fine; "low alkalinity": the buffer is used up;
 * "both"; "in balance" with aired water; "short of carbon dioxide": pH high for the alkalinity.
 */
export type CarbonVerdict =
  | "carbon dioxide"
  | "low alkalinity"
  | "both"
  | "in balance"
  | "short of carbon dioxide";

export interface CarbonDioxideReading {
  readonly verdict: CarbonVerdict;
  /** Pressure of carbon dioxide that the water is in balance with. */
  readonly carbonDioxide: Estimate<Microatm>;
  /** What the pH would read, on the member's own scale, once aired with outdoor air. */
  readonly pHWhenAired: Estimate<PH>;
}

/** Why the pH is what it is: the air, or the alkalinity. */
export function carbonDioxideReading(question: {
  readonly alkalinity: Estimate<DegreesKH>;
  readonly pH: Estimate<PH>;
  readonly scale: PHScale;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
}): Answer<CarbonDioxideReading> | NoAnswer {
  const { alkalinity, pH, scale, salinity, temperature } = question;
  if (!(salinity.low >= LEAST_SALINITY)) {
    return noAnswer("carbonate-needs-sea-water", { salinity: salinity.low, min: LEAST_SALINITY });
  }
  const impossible =
    outside("alkalinity", alkalinity, "dKH", LIMITS.dkh) ??
    outside("pH", pH, "pH", LIMITS.pH) ??
    outside("temperature", temperature, "°C", LIMITS.celsius) ??
    outside("salinity", salinity, "ppt", LIMITS.salinity);
  if (impossible !== undefined) return impossible;

  const { estimates, drivers } = propagate(
    {
      alkalinity,
      "pH reading": pH,
      "electrode in sea water": scale === "NBS" ? ELECTRODE_DOUBT : exactly(0),
      salinity,
      temperature,
    },
    (v) => {
      const total = alkalinityPerKg(
        alkalinityToMeq(v.alkalinity, "dKH"),
        seawaterDensity(v.salinity, v.temperature),
      );
      const read = as<PH>(v["pH reading"] + v["electrode in sea water"]);
      const pHTotal = convertPH(read, scale, "total", v.salinity, v.temperature);
      const fugacity = fugacityFromAlkalinityPH(total, pHTotal, v.salinity, v.temperature);
      const aired = pHFromAlkalinityFugacity(
        total,
        fugacityOfPressure(OUTDOOR_AIR),
        v.salinity,
        v.temperature,
      );
      return {
        // Borate alone can carry all of a small alkalinity at a high pH: then no carbon is left over.
        carbonDioxide: as<Microatm>(Math.max(0, pressureOfFugacity(fugacity))),
        pHWhenAired: convertPH(aired, "total", scale, v.salinity, v.temperature),
      };
    },
  );
  const { carbonDioxide } = estimates;
  const verdict = judge(carbonDioxide.best, alkalinity.best);
  return {
    kind: "answer",
    value: { verdict, ...estimates },
    method: "Alkalinity and pH fix the carbon dioxide in sea water",
    working: [
      "alkalinity per kilogram = alkalinity per litre / density",
      "pH on the total scale = reading + scale difference for this salinity and temperature",
      "dissolved carbon = (alkalinity − borate − hydroxide + hydrogen) / charge per carbon at this pH",
      "carbon dioxide pressure = dissolved carbon × its share as gas / solubility",
    ],
    constants: [
      {
        name: "carbonic acid, K1 and K2",
        value: "functions of salinity and temperature",
        source: "lueker-2000",
      },
      {
        name: "solubility of carbon dioxide",
        value: "function of salinity and temperature",
        source: "weiss-1974",
      },
      { name: "boric acid", value: "function of salinity and temperature", source: "dickson-1990-borate" },
      { name: "outdoor air", value: "420 µatm", source: "common-practice" },
      { name: "usual alkalinity", value: "7–12 dKH", source: "common-practice" },
      { name: "more carbon dioxide than aired water", value: "over 700 µatm", source: "assumption" },
    ],
    sources: [
      "lueker-2000",
      "weiss-1974",
      "dickson-1990-borate",
      "millero-1995",
      "uppstrom-1974",
      ...(scale === "NBS" ? (["takahashi-1982", "electrode-junction"] as const) : []),
      ...(scale === "total" ? [] : (["dickson-1990-sulphate", "dickson-riley-1979"] as const)),
      "common-practice",
      "assumption",
    ],
    assumptions: [
      "salts in the proportions of sea water, borate included",
      "no other buffer, such as phosphate or organic acids",
      "air at sea-level pressure",
    ],
    cautions: [
      ...fitted(salinity, temperature),
      ...(scale === "NBS" ? [caution("pH-electrode-doubt", { pH: ELECTRODE_DOUBT.high }, "note")] : []),
      ...verdictCautions(verdict, carbonDioxide.best, alkalinity.best),
    ],
    driver: drivers.carbonDioxide,
  };
}

function judge(carbonDioxide: number, dkh: number): CarbonVerdict {
  const isLow = dkh < USUAL_DKH.low;
  if (carbonDioxide > MORE_THAN_AIRED) return isLow ? "both" : "carbon dioxide";
  if (isLow) return "low alkalinity";
  return carbonDioxide < LESS_THAN_AIRED ? "short of carbon dioxide" : "in balance";
}

function verdictCautions(verdict: CarbonVerdict, microatm: number, dkh: number): Caution[] {
  const cautions: Caution[] = [];
  if (verdict === "carbon dioxide" || verdict === "both") {
    cautions.push(caution("carbon-dioxide-of-the-room", { microatm }, "warning"));
  }
  if (verdict === "carbon dioxide") cautions.push(caution("ventilate-do-not-buffer", {}, "warning"));
  if (dkh < USUAL_DKH.low) cautions.push(caution("alkalinity-low", { dkh, ...USUAL_DKH }, "warning"));
  if (dkh > USUAL_DKH.high) cautions.push(caution("alkalinity-high", { dkh, ...USUAL_DKH }, "note"));
  return cautions;
}

function outside(
  quantity: string,
  { low, high }: Estimate,
  unit: string,
  { min, max }: { readonly min: number; readonly max: number },
): NoAnswer | undefined {
  if (low >= min && high <= max) return undefined;
  const value = low >= min ? high : low;
  return noAnswer("carbonate-reading-impossible", { quantity, value, unit, min, max });
}

function fitted(salinity: Estimate, temperature: Estimate): Caution[] {
  const checks = [
    { quantity: "salinity", estimate: salinity, unit: "ppt", range: FITTED_SALINITY },
    { quantity: "temperature", estimate: temperature, unit: "°C", range: FITTED_C },
  ];
  return checks
    .filter(({ estimate, range }) => estimate.best < range.min || estimate.best > range.max)
    .map(({ quantity, estimate, unit, range }) =>
      caution("outside-fitted-range", { quantity, value: estimate.best, unit, ...range }),
    );
}
