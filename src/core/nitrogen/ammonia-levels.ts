import type { DegreesC, Fraction, PH, PracticalSalinity } from "../quantity/units.ts";
import type { SourceId } from "../sources.ts";
import {
  ammoniaFraction,
  ammoniumPkaKhoo,
  ammoniumPkaTotalScale,
  EPA_LIMIT_MG_NH3_PER_L,
} from "./ammonia-fraction.ts";
import { convertNitrogen } from "./nitrogen-units.ts";

/** How the pH was calibrated: ordinary 4/7/10 buffers and colour kits, or the total scale (tris, dye). */
export type PhScale = "buffers" | "total";

export type AmmoniaState = "normal" | "raised" | "act today" | "emergency";

/** mg/L as NH₃ from which each state holds. */
export const LEVELS = {
  target: { name: "usual target", nh3: 0.02, source: "ut-recirculation-notes" },
  continuous: {
    name: "salt-water criterion, lasting exposure",
    nh3: EPA_LIMIT_MG_NH3_PER_L.continuous,
    source: "epa-440-5-88-004",
  },
  /** 0.05 mg/L as nitrogen. */
  harm: {
    name: "harm begins (fresh-water guide)",
    nh3: convertNitrogen(0.05, "NH3-N", "NH3"),
    source: "ifas-fa16",
  },
  maximum: {
    name: "salt-water criterion, short exposure",
    nh3: EPA_LIMIT_MG_NH3_PER_L.maximum,
    source: "epa-440-5-88-004",
  },
} as const satisfies Record<string, { name: string; nh3: number; source: SourceId }>;

/** The ammonium pKa that belongs to a pH on this scale. Source: khoo-1977, or clegg-whitfield-1995 for the total scale. */
export function pkaFor(scale: PhScale, temperatureC: DegreesC, salinity: PracticalSalinity): number {
  return scale === "total"
    ? ammoniumPkaTotalScale(salinity, temperatureC)
    : ammoniumPkaKhoo(salinity, temperatureC);
}

/** Share of total ammonia that is NH₃. Source: as `pkaFor`. */
export function nh3Share(
  pH: PH,
  scale: PhScale,
  temperatureC: DegreesC,
  salinity: PracticalSalinity,
): Fraction {
  return ammoniaFraction(pkaFor(scale, temperatureC, salinity), pH);
}

/** What an NH₃ level, mg/L, calls for. */
export function stateAt(nh3: number): AmmoniaState {
  if (nh3 >= LEVELS.maximum.nh3) return "emergency";
  if (nh3 >= LEVELS.harm.nh3) return "act today";
  return nh3 >= LEVELS.target.nh3 ? "raised" : "normal";
}
