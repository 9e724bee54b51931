import type { Estimate } from "../quantity/estimate.ts";
import { between, exactly } from "../quantity/estimate.ts";
import { as, type Fraction } from "../quantity/units.ts";
import type { SourceId } from "../sources.ts";

/** One food, as it is put into the water: drip water included, nothing dried. */
export interface Feed {
  /** What a member calls it. */
  readonly name: string;
  readonly water: Estimate<Fraction>;
  /** Protein share of the food as fed, not of its dry matter. */
  readonly protein: Estimate<Fraction>;
  readonly source: SourceId;
}

const share = (value: number) => exactly(as<Fraction>(value));
const shares = (low: number, high: number) => between(as<Fraction>(low), as<Fraction>(high));

/** Composition per 100 g as fed, turned into shares. */
export const FEEDS = {
  "fatty fish": {
    name: "fatty fish flesh (herring, mackerel, salmon)",
    water: share(0.686),
    protein: share(0.2),
    source: "fao-x5557e",
  },
  "lean fish": {
    name: "lean fish flesh (cod, hake)",
    water: share(0.818),
    protein: share(0.164),
    source: "fao-x5557e",
  },
  "fish flesh": {
    name: "fish flesh, kind not said",
    water: between(as<Fraction>(0.686), as<Fraction>(0.818), as<Fraction>(0.772)),
    protein: between(as<Fraction>(0.164), as<Fraction>(0.2), as<Fraction>(0.19)),
    source: "fao-x5557e",
  },
  "whole small fish": {
    name: "whole small fish (smelt, silverside)",
    water: shares(0.78, 0.79),
    protein: shares(0.17, 0.176),
    source: "usda-food-data",
  },
  prawn: {
    name: "prawn or shrimp, raw",
    water: shares(0.78, 0.83),
    protein: shares(0.136, 0.2),
    source: "usda-food-data",
  },
  crustaceans: {
    name: "crustaceans, mixed",
    water: share(0.76),
    protein: share(0.178),
    source: "fao-x5557e",
  },
  molluscs: { name: "molluscs, mixed", water: share(0.81), protein: share(0.13), source: "fao-x5557e" },
  squid: { name: "squid", water: share(0.786), protein: share(0.156), source: "usda-food-data" },
  clam: { name: "clam", water: share(0.83), protein: share(0.117), source: "crc-clam-composition" },
  krill: {
    name: "krill, frozen",
    water: shares(0.79, 0.81),
    protein: shares(0.12, 0.15),
    source: "feed-label-habit",
  },
  mysis: {
    name: "mysis, frozen",
    water: shares(0.85, 0.91),
    protein: shares(0.07, 0.12),
    source: "feed-label-habit",
  },
  pellet: {
    name: "dry pellet for carnivores",
    water: shares(0.07, 0.1),
    protein: shares(0.42, 0.52),
    source: "feed-label-habit",
  },
  flake: {
    name: "flake",
    water: shares(0.05, 0.08),
    protein: shares(0.42, 0.48),
    source: "feed-label-habit",
  },
} as const satisfies Record<string, Feed>;

export type FeedKind = keyof typeof FEEDS;
