import type { SourceId } from "../sources.ts";

/** How long eggs took elsewhere: days from being seen to hatching, in water of these temperatures. */
export interface HatchFigures {
  readonly name: string;
  readonly words: readonly string[];
  readonly fromDays: number;
  readonly toDays: number;
  readonly temperatureC?: readonly [number, number];
  /** Eggs that may rest: no day can be given, only when to begin to look. */
  readonly mayRest?: true;
  /** What comes after hatching and needs a look of its own. */
  readonly next?: { readonly what: string; readonly fromDays: number; readonly toDays: number };
  readonly sources: readonly SourceId[];
  /** A treaty asks for papers when these are moved. */
  readonly needsPapers?: true;
}

/** Ranges span the papers named: means with their spread, or single figures. */
export const HATCH_TABLE: readonly HatchFigures[] = [
  {
    name: "clownfish",
    words: ["clownfish", "clown", "anemonefish", "amphiprion", "premnas"],
    fromDays: 6,
    toDays: 10,
    temperatureC: [26, 28],
    sources: ["ocellaris-2007", "perideraion-2008", "sarvi-clarkii", "frenatus-2021"],
  },
  {
    name: "neon goby",
    words: ["neon goby", "sponge goby", "elacatinus"],
    fromDays: 6.4,
    toDays: 8.6,
    sources: ["elacatinus-rearing"],
  },
  {
    name: "reef goby",
    words: ["reef goby", "goby", "amblygobius"],
    fromDays: 3.4,
    toDays: 5,
    temperatureC: [26.5, 27.5],
    sources: ["amblygobius-2023", "privitera-2001"],
  },
  {
    name: "mouthbrooding cardinalfish",
    words: ["banggai", "cardinalfish", "cardinal fish", "pterapogon"],
    fromDays: 18,
    toDays: 20,
    next: { what: "release from the mouth", fromDays: 9, toDays: 11 },
    sources: ["vagelli-1999"],
  },
  {
    name: "seahorse",
    words: ["seahorse", "hippocampus"],
    fromDays: 14.4,
    toDays: 20.3,
    temperatureC: [27, 29],
    sources: ["lin-2008"],
    needsPapers: true,
  },
  {
    name: "dwarf shrimp",
    words: ["dwarf shrimp", "neocaridina", "cherry shrimp"],
    fromDays: 14,
    toDays: 16,
    temperatureC: [26, 28],
    sources: ["nur-christianus-2013"],
  },
  {
    name: "annual killifish",
    words: ["annual killifish", "nothobranchius", "austrolebias"],
    fromDays: 15,
    toDays: 30,
    mayRest: true,
    sources: ["annual-fishes-2013", "wourms-1972"],
  },
  {
    name: "killifish",
    words: ["killifish", "fundulus", "aphyosemion"],
    fromDays: 8,
    toDays: 11,
    temperatureC: [25, 27],
    sources: ["fundulus-air"],
  },
  {
    name: "angelfish",
    words: ["angelfish", "pterophyllum", "scalare"],
    fromDays: 2.5,
    toDays: 3.5,
    temperatureC: [23, 28],
    next: { what: "swimming free", fromDays: 6, toDays: 7 },
    sources: ["thilakarathne-2021", "celik-2014"],
  },
  {
    name: "mouthbrooding cichlid",
    words: ["mouthbrooder", "mouthbrooding cichlid", "mbuna", "tropheus"],
    fromDays: 19,
    toDays: 23,
    sources: ["mouthbrooder-memory"],
  },
];

/** The figures whose longest word stands in the name typed. */
export function hatchFiguresFor(species: string): HatchFigures | undefined {
  const typed = species.toLowerCase();
  let best: { figures: HatchFigures; length: number } | undefined;
  for (const figures of HATCH_TABLE)
    for (const word of figures.words)
      if (typed.includes(word) && word.length > (best?.length ?? 0)) best = { figures, length: word.length };
  return best?.figures;
}
