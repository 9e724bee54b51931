import { between, type Estimate } from "../quantity/estimate.ts";
import type {
  DegreesC,
  Fraction,
  Kilograms,
  Litres,
  MgPerL,
  MilliequivPerL,
  PracticalSalinity,
} from "../quantity/units.ts";
import { NITRIFIERS } from "./cycling-model.ts";
import { arrheniusFactor } from "./growth-kinetics.ts";
import { MEDIA, type MediumKind, USABLE_FRACTION } from "./media.ts";
import { saltSlowdown } from "./nitrification.ts";
import type { GramsNPerDay, MgNPerL } from "./nitrogen-units.ts";

/** Where the first bacteria come from. */
export type Seed =
  | { readonly kind: "nothing" }
  | { readonly kind: "culture" }
  | { readonly kind: "live rock"; readonly massKg: Estimate<Kilograms> }
  | {
      readonly kind: "mature media";
      readonly medium: MediumKind;
      readonly litres: Estimate<Litres>;
      readonly from: "sea water" | "fresh water";
    };

/** A reading with the interval the kit leaves it in; the top colour of a card has an infinite high end. */
export interface CyclingReading {
  readonly day: number;
  readonly kind: "ammonia" | "nitrite";
  readonly value: Estimate<MgNPerL>;
}

/** Everything the outlook on a cycle is worked out from. Day 0 is the first ammonia. */
export interface CyclingSituation {
  readonly volumeL: Estimate<Litres>;
  readonly temperatureC: Estimate<DegreesC>;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly oxygen?: Estimate<MgPerL>;
  /** Absent: taken to be kept up. */
  readonly alkalinity?: Estimate<MilliequivPerL>;
  readonly seed: Seed;
  readonly ammonia:
    | {
        readonly kind: "dosed";
        /** Ammonia nitrogen after each dose. */
        readonly to: Estimate<MgNPerL>;
        /** Whether it is dosed again whenever it has nearly gone. */
        readonly isRepeated: boolean;
        /** Doses already given after the first, as rises in mg/L nitrogen. */
        readonly given?: readonly { readonly day: number; readonly rise: MgNPerL }[];
      }
    | { readonly kind: "animals"; readonly load: Estimate<GramsNPerDay> };
  readonly waterChanges?: readonly { readonly day: number; readonly changed: Fraction }[];
  readonly readings?: readonly CyclingReading[];
  /** How far to look; default 120 days. */
  readonly days?: number;
}

/** One uncertain figure of the model: nine in ten believed between low and high. */
export interface Belief {
  readonly name: string;
  readonly figure: Estimate;
  /** Whether its doubt is a factor (and not a plain difference). */
  readonly isFactor: boolean;
}

/** Standard deviations from the middle to the end of a range that holds nine in ten. */
const NINE_IN_TEN = 1.645;

/** The figure at a place in standard deviations from its best value. */
export function believedAt({ figure, isFactor }: Belief, z: number): number {
  const end = z < 0 ? figure.low : figure.high;
  const share = Math.abs(z) / NINE_IN_TEN;
  return isFactor ? figure.best * (end / figure.best) ** share : figure.best + (end - figure.best) * share;
}

/** Cells of a system with no seed but what drifts in, and of one given a bottled culture, mg/L as
 *  oxygen demand. Source: assumption; a culture may be dead or strong. */
const BARE: Estimate = between(1e-5, 2e-3, 2e-4);
const CULTURE: Estimate = between(3e-5, 1e-1, 2e-3);
/** What a film brought over takes up, g N per m² and day, after the move. Source: assumption, up to nijhof-bovendeur-1990. */
const MOVED_FILM: Estimate = between(0.03, 0.28, 0.1);
/** Litres of live rock per kilogram, as a bed. Source: assumption. */
const ROCK_L_PER_KG = 1;

/** The cells of the ammonia step at the start, mg/L as oxygen demand. */
export function seedCells(situation: CyclingSituation): Estimate {
  const { seed } = situation;
  if (seed.kind === "nothing" || isSeedStopped(situation)) return BARE;
  if (seed.kind === "culture") return CULTURE;
  const medium = seed.kind === "live rock" ? "live rock" : seed.medium;
  const litres = (end: "low" | "best" | "high") =>
    seed.kind === "live rock" ? seed.massKg[end] * ROCK_L_PER_KG : seed.litres[end];
  const cells = (end: "low" | "best" | "high") => {
    const areaM2 = (litres(end) / 1000) * MEDIA[medium].surface[end] * USABLE_FRACTION[end];
    const perLitreDay = (areaM2 * MOVED_FILM[end] * 1000) / situation.volumeL.best;
    const growth =
      NITRIFIERS.ammonia.growth *
      saltSlowdown(situation.salinity.best) *
      arrheniusFactor(NITRIFIERS.ammonia.energyJ, situation.temperatureC.best, NITRIFIERS.referenceC);
    return Math.max(BARE[end], (perLitreDay * NITRIFIERS.ammonia.yield) / growth);
  };
  return { low: cells("low"), best: cells("best"), high: cells("high") };
}

/** A fresh-water film moved into water of 15 or more all but stops. Source: kinyage-pedersen. */
export function isSeedStopped({ seed, salinity }: CyclingSituation): boolean {
  return seed.kind === "mature media" && seed.from === "fresh water" && salinity.best >= 15;
}

/** The places of the uncertain figures. */
export const BELIEF = {
  growth: 0,
  secondStep: 1,
  halfFood: 2,
  seed: 3,
  secondSeed: 4,
  temperature: 5,
  /** The first dose, mg/L nitrogen; or what the animals give off, mg/L a day. */
  ammonia: 6,
} as const;

/** What animals add to the water, mg/L nitrogen a day. */
function animalLoad({ volumeL }: CyclingSituation, load: Estimate<GramsNPerDay>): Estimate {
  return {
    low: (load.low * 1000) / volumeL.high,
    best: (load.best * 1000) / volumeL.best,
    high: (load.high * 1000) / volumeL.low,
  };
}

/** What is believed of every uncertain figure before any reading. */
export function beliefsOf(situation: CyclingSituation): readonly Belief[] {
  const slowdown = saltSlowdown(situation.salinity.best);
  const { ammonia } = situation;
  const temperature = situation.temperatureC;
  return [
    // Fresh water is the better known case; sea water rests on one pair of rigs.
    {
      name: "growth of the bacteria in this water",
      figure: between(
        slowdown * (slowdown < 0.9 ? 0.6 : 0.75),
        slowdown * (slowdown < 0.9 ? 1.6 : 1.33),
        slowdown,
      ),
      isFactor: true,
    },
    { name: "growth in the nitrite step", figure: between(0.65, 1.5, 1), isFactor: true },
    { name: "appetite at low levels", figure: between(0.5, 2, 1), isFactor: true },
    { name: "strength of the seed", figure: seedCells(situation), isFactor: true },
    { name: "share of nitrite bacteria in the seed", figure: between(0.2, 5, 1), isFactor: true },
    { name: "temperature", figure: temperature, isFactor: false },
    ammonia.kind === "dosed"
      ? { name: "first dose", figure: ammonia.to, isFactor: false }
      : { name: "ammonia of the animals", figure: animalLoad(situation, ammonia.load), isFactor: true },
  ];
}
