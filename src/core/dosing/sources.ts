import type { Source } from "../source.ts";

/** The bibliography of the dosing room. */
export const dosingSources = {
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
  "asm-heterotroph-yield": {
    citation:
      "Henze et al., Activated sludge models ASM1 and ASM2d, IWA STR 9: heterotroph yield 0.67 and 0.625 g COD per g COD, 0.086 and 0.07 g N per g COD of cells",
    standing: "from memory",
  },
  "denitrification-textbook": {
    citation:
      "Electron balance of denitrification, as in wastewater textbooks: one equivalent of alkalinity back per mole of nitrate",
    standing: "from memory",
  },
  "algae-composition": {
    citation: "Dry share and tissue nitrogen of well-fed green macroalgae, usual ranges",
    standing: "from memory",
  },
  "huo-2024": {
    citation: "Huo et al. 2024, macroalgae grown in fish effluent (tissue nitrogen of Ulva lactuca)",
    standing: "published",
  },
} as const satisfies Record<string, Source>;
