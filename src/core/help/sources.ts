import type { Source } from "../source.ts";

/** The bibliography of the help room. */
export const helpSources = {
  "nitrite-and-chloride": {
    citation:
      "Lewis & Morris 1986, Toxicity of nitrite to fish: a review, Trans. Am. Fish. Soc. 115: chloride in the water keeps nitrite out of the gills, so that sea fish bear far more of it",
    standing: "from memory",
  },
  "carbonic-acid-fresh": {
    citation:
      "Stumm & Morgan 1996, Aquatic Chemistry, 3rd ed.: first dissociation of carbonic acid in fresh water, pK₁ 6.35 at 25 °C",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
