import type { Source } from "../source.ts";

/** The bibliography of the dosing room. */
export const dosingSources = {
  "atomic-weights-2007": {
    citation:
      "Wieser & Berglund 2009, Atomic weights of the elements 2007, Pure and Applied Chemistry 81:2131",
    standing: "from memory",
  },
  "general-chemistry": {
    citation: "General chemistry, as textbooks and household safety sheets have it",
    standing: "from memory",
  },
  "handbook-solubility": {
    citation: "Solubility of common salts in water at 20 °C, as printed in chemistry handbooks",
    standing: "from memory",
  },
  "handbook-ethanol": {
    citation: "Density and flash points of ethanol and its mixtures with water, as printed in handbooks",
    standing: "from memory",
  },
  "mccarty-1969": {
    citation:
      "McCarty, Beck & St. Amant 1969, Biological denitrification of wastewaters by addition of organic materials, 24th Purdue Industrial Waste Conference",
    standing: "from memory",
  },
  "christensson-1994": {
    citation:
      "Christensson, Lie & Welander 1994, A comparison between ethanol and methanol as carbon sources for denitrification, Water Science and Technology 30(6):83",
    standing: "published",
  },
  "henze-2000": {
    citation:
      "Henze, Gujer, Mino & van Loosdrecht 2000, Activated sludge models ASM1, ASM2, ASM2d and ASM3, IWA Scientific and Technical Report 9",
    standing: "from memory",
  },
  "huo-2024": {
    citation: "Huo et al. 2024, macroalgae grown in fish effluent (tissue nitrogen of Ulva lactuca)",
    standing: "published",
  },
} as const satisfies Record<string, Source>;
