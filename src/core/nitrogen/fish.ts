import type { SourceId } from "../sources.ts";

/** How a fish lives, which sets how much oxygen it uses at rest. */
export type Habit = "sits and waits" | "swims" | "not said";

/** One fish a member can pick by name; mass = a · length^b. */
export interface Fish {
  readonly name: string;
  readonly scientificName: string;
  /** Grams per length unit to the power b. */
  readonly a: number;
  readonly b: number;
  /** The unit the published a belongs to: taking mm for cm is an error of a thousandfold. */
  readonly lengthUnit: "cm" | "mm";
  readonly lengthKind: "total";
  readonly habit: Habit;
  readonly source: SourceId;
  /** Greatest length usually given for wild fish, cm; from memory. */
  readonly adultLengthCm?: number;
}

const RFISHPROD = { lengthUnit: "cm", lengthKind: "total", source: "morais-bellwood-rfishprod" } as const;
const FISH_FLOW = { lengthUnit: "cm", lengthKind: "total", source: "fish-flow-data" } as const;

/** Length–weight coefficients as published; adult lengths: fishbase-maximum-length, from memory. */
export const FISH = {
  "mediterranean moray": {
    name: "Mediterranean moray",
    scientificName: "Muraena helena",
    a: 0.00132,
    b: 3.08,
    habit: "sits and waits",
    adultLengthCm: 150,
    ...RFISHPROD,
  },
  "spotted moray": {
    name: "black moray",
    scientificName: "Muraena augusti",
    a: 0.0012,
    b: 3.1,
    habit: "sits and waits",
    adultLengthCm: 130,
    ...RFISHPROD,
  },
  moray: {
    name: "moray, kind not said",
    scientificName: "Muraenidae",
    a: 0.00102,
    b: 3.06,
    lengthUnit: "cm",
    lengthKind: "total",
    habit: "sits and waits",
    source: "muraenidae-prior",
  },
  "brown-marbled grouper": {
    name: "brown-marbled grouper",
    scientificName: "Epinephelus fuscoguttatus",
    a: 0.01023,
    b: 3.03,
    habit: "sits and waits",
    adultLengthCm: 120,
    ...RFISHPROD,
  },
  "orange-spotted grouper": {
    name: "orange-spotted grouper",
    scientificName: "Epinephelus coioides",
    a: 0.01122,
    b: 3.04,
    habit: "sits and waits",
    adultLengthCm: 120,
    ...RFISHPROD,
  },
  "potato grouper": {
    name: "potato grouper",
    scientificName: "Epinephelus tukula",
    a: 0.01479,
    b: 3.05,
    habit: "sits and waits",
    adultLengthCm: 200,
    ...RFISHPROD,
  },
  "honeycomb grouper": {
    name: "honeycomb grouper",
    scientificName: "Epinephelus merra",
    a: 0.01096,
    b: 3.06,
    habit: "sits and waits",
    adultLengthCm: 32,
    ...RFISHPROD,
  },
  "humpback grouper": {
    name: "humpback grouper",
    scientificName: "Cromileptes altivelis",
    a: 0.01318,
    b: 3.14,
    habit: "sits and waits",
    adultLengthCm: 70,
    ...RFISHPROD,
  },
  "darkfin hind": {
    name: "darkfin hind",
    scientificName: "Cephalopholis urodeta",
    a: 0.01202,
    b: 3.04,
    habit: "sits and waits",
    adultLengthCm: 28,
    ...RFISHPROD,
  },
  "emperor snapper": {
    name: "emperor red snapper",
    scientificName: "Lutjanus sebae",
    a: 0.0138,
    b: 3.04,
    habit: "swims",
    adultLengthCm: 116,
    ...RFISHPROD,
  },
  "bluestripe snapper": {
    name: "bluestripe snapper",
    scientificName: "Lutjanus kasmira",
    a: 0.01349,
    b: 3.04,
    habit: "swims",
    adultLengthCm: 40,
    ...RFISHPROD,
  },
  "bluefin trevally": {
    name: "bluefin trevally",
    scientificName: "Caranx melampygus",
    a: 0.01905,
    b: 2.95,
    habit: "swims",
    adultLengthCm: 117,
    ...RFISHPROD,
  },
  scorpionfish: {
    name: "large scorpionfish",
    scientificName: "Scorpaena scrofa",
    a: 0.01288,
    b: 3.01,
    habit: "sits and waits",
    adultLengthCm: 50,
    ...RFISHPROD,
  },
  lionfish: {
    name: "lionfish",
    scientificName: "Pterois volitans / miles",
    a: 2.89e-5,
    b: 2.89,
    lengthUnit: "mm",
    lengthKind: "total",
    habit: "sits and waits",
    source: "barbour-2011",
    adultLengthCm: 38,
  },
  "queen triggerfish": {
    name: "queen triggerfish",
    scientificName: "Balistes vetula",
    a: 0.0322,
    b: 2.95,
    habit: "swims",
    adultLengthCm: 60,
    ...RFISHPROD,
  },
  "picasso triggerfish": {
    name: "Picasso triggerfish",
    scientificName: "Rhinecanthus aculeatus",
    a: 0.0202,
    b: 3.03,
    habit: "swims",
    adultLengthCm: 30,
    ...RFISHPROD,
  },
  "yellowmargin triggerfish": {
    name: "yellowmargin triggerfish",
    scientificName: "Pseudobalistes flavimarginatus",
    a: 0.02344,
    b: 2.95,
    habit: "swims",
    adultLengthCm: 60,
    ...RFISHPROD,
  },
  "flagtail triggerfish": {
    name: "flagtail triggerfish",
    scientificName: "Sufflamen chrysopterum",
    a: 0.03406,
    b: 2.91,
    habit: "swims",
    adultLengthCm: 30,
    ...FISH_FLOW,
  },
  "yellow tang": {
    name: "yellow tang",
    scientificName: "Zebrasoma flavescens",
    a: 0.0214,
    b: 3.04,
    habit: "swims",
    adultLengthCm: 20,
    ...RFISHPROD,
  },
  "sailfin tang": {
    name: "sailfin tang",
    scientificName: "Zebrasoma velifer",
    a: 0.02344,
    b: 2.94,
    habit: "swims",
    adultLengthCm: 40,
    ...RFISHPROD,
  },
  "orangespine unicornfish": {
    name: "orangespine unicornfish",
    scientificName: "Naso lituratus",
    a: 0.0257,
    b: 2.95,
    habit: "swims",
    adultLengthCm: 46,
    ...RFISHPROD,
  },
  "powder blue tang": {
    name: "powder blue tang",
    scientificName: "Acanthurus leucosternon",
    a: 0.0195,
    b: 2.94,
    habit: "swims",
    ...RFISHPROD,
  },
  "yellowbar angelfish": {
    name: "yellowbar angelfish",
    scientificName: "Pomacanthus maculosus",
    a: 0.02754,
    b: 2.91,
    habit: "swims",
    adultLengthCm: 50,
    ...RFISHPROD,
  },
  "pink anemonefish": {
    name: "pink anemonefish",
    scientificName: "Amphiprion perideraion",
    a: 0.02291,
    b: 2.99,
    habit: "swims",
    adultLengthCm: 10,
    ...RFISHPROD,
  },
  "clark's anemonefish": {
    name: "Clark's anemonefish",
    scientificName: "Amphiprion clarkii",
    a: 0.01814,
    b: 2.99,
    habit: "swims",
    adultLengthCm: 15,
    ...FISH_FLOW,
  },
  porcupinefish: {
    name: "long-spine porcupinefish",
    scientificName: "Diodon holocanthus",
    a: 0.03113,
    b: 2.96,
    habit: "swims",
    ...FISH_FLOW,
  },
  "yellowtail coris": {
    name: "yellowtail coris",
    scientificName: "Coris gaimard",
    a: 0.01048,
    b: 3.0,
    habit: "swims",
    adultLengthCm: 40,
    ...FISH_FLOW,
  },
  "moon wrasse": {
    name: "moon wrasse",
    scientificName: "Thalassoma lunare",
    a: 0.01259,
    b: 2.96,
    habit: "swims",
    adultLengthCm: 45,
    ...FISH_FLOW,
  },
} as const satisfies Record<string, Fish>;

export type FishKey = keyof typeof FISH;
