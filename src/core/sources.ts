import { breedingSources } from "./breeding/sources.ts";
import { carbonateSources } from "./carbonate/sources.ts";
import { cloudySources } from "./cloudy/sources.ts";
import { dosingSources } from "./dosing/sources.ts";
import { helpSources } from "./help/sources.ts";
import { nitrogenSources } from "./nitrogen/sources.ts";
import { plansSources } from "./plans/sources.ts";
import { plantSources } from "./plant/sources.ts";
import type { Source } from "./source.ts";
import { tankSources } from "./tank/sources.ts";
import { trendsSources } from "./trends/sources.ts";
import { waterSources } from "./water/sources.ts";

const sharedSources = {
  "common-practice": {
    citation: "A habit of the trade, with no published source",
    standing: "common practice, no source",
  },
  assumption: {
    citation: "Chosen here so that the sum has a default; change it if you know better",
    standing: "assumption",
  },
  definition: { citation: "Exact by definition", standing: "definition" },
  "mass-balance": {
    citation: "Conservation of mass: what goes in comes out or stays",
    standing: "definition",
  },
  "jcgm-100-2008": {
    citation:
      "JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement, 5.1.2",
    standing: "published",
    link: "https://www.bipm.org/en/committees/jc/jcgm/publications",
  },
  "chandrupatla-1997": {
    citation:
      "Chandrupatla 1997, A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function without using derivatives, Adv. Eng. Softw. 28, 145–149",
    standing: "from memory",
  },
  "nist-sp-811": {
    citation:
      "NIST Special Publication 811 (2008), Guide for the Use of the SI, appendix B conversion factors",
    standing: "published",
    link: "https://doi.org/10.6028/NIST.SP.811e2008",
  },
} as const satisfies Record<string, Source>;

/** Every work the core takes a number from. */
export const SOURCES = {
  ...sharedSources,
  ...waterSources,
  ...nitrogenSources,
  ...dosingSources,
  ...carbonateSources,
  ...plansSources,
  ...plantSources,
  ...tankSources,
  ...trendsSources,
  ...breedingSources,
  ...cloudySources,
  ...helpSources,
};

export type SourceId = keyof typeof SOURCES;
