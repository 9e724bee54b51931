import { between, type Estimate, exactly } from "../quantity/estimate.ts";
import { as } from "../quantity/units.ts";
import type { SourceId } from "../sources.ts";
import type { MilliJoulesPerCm2 } from "./plant-units.ts";

export interface UvTargetDose {
  readonly dose: Estimate<MilliJoulesPerCm2>;
  readonly source: SourceId;
  /** From tables for drinking water: not to be carried over to parasites of fish. */
  readonly isDrinkingWater: boolean;
}

const mJ = (value: number) => exactly(as<MilliJoulesPerCm2>(value));
const range = (low: number, high: number) => between(as<MilliJoulesPerCm2>(low), as<MilliJoulesPerCm2>(high));
const drinking = (value: number): UvTargetDose => ({
  dose: mJ(value),
  source: "epa-uvdgm-2006",
  isDrinkingWater: true,
});

/** Doses by which a target was inactivated, mJ/cm². */
export const UV_TARGETS = {
  "Cryptosporidium, 1 log": drinking(2.5),
  "Cryptosporidium, 2 log": drinking(5.8),
  "Cryptosporidium, 3 log": drinking(12),
  "Cryptosporidium, 4 log": drinking(22),
  "Giardia, 1 log": drinking(2.1),
  "Giardia, 2 log": drinking(5.2),
  "Giardia, 3 log": drinking(11),
  "Giardia, 4 log": drinking(22),
  "virus (adenovirus), 1 log": drinking(58),
  "virus (adenovirus), 2 log": drinking(100),
  "virus (adenovirus), 3 log": drinking(143),
  "virus (adenovirus), 4 log": drinking(186),
  "bacteria of fish, in flowing water": {
    dose: range(13, 29),
    source: "bullock-stuckey-1977",
    isDrinkingWater: false,
  },
  "viruses of fish, sensitive, 99 %": { dose: range(1, 3), source: "yoshimizu-1990", isDrinkingWater: false },
  "viruses of fish, resistant, 99 %": {
    dose: range(100, 150),
    source: "yoshimizu-1990",
    isDrinkingWater: false,
  },
  "water-mould hyphae": { dose: range(150, 250), source: "yoshimizu-1990", isDrinkingWater: false },
  "Cryptocaryon irritans theront, infectivity lost": {
    dose: mJ(184),
    source: "lu-2022",
    isDrinkingWater: false,
  },
  "Cryptocaryon irritans theront, lethal in vitro": {
    dose: mJ(288),
    source: "lu-2022",
    isDrinkingWater: false,
  },
  "Tetraselmis (microalga), at once": { dose: mJ(400), source: "olsen-2016", isDrinkingWater: false },
} as const satisfies Record<string, UvTargetDose>;

export type UvTarget = keyof typeof UV_TARGETS;
