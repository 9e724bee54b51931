import type { Source } from "../source.ts";

/** The bibliography of the carbonate room. */
export const carbonateSources = {
  "lueker-2000": {
    citation:
      "Lueker, Dickson & Keeling 2000, Ocean pCO₂ calculated from dissolved inorganic carbon, alkalinity, and equations for K1 and K2, Mar. Chem. 70:105–119; coefficients as carried by PyCO2SYS 1.8",
    standing: "reference library",
    link: "https://doi.org/10.1016/S0304-4203(00)00022-0",
  },
  "weiss-1974": {
    citation:
      "Weiss 1974, Carbon dioxide in water and seawater: the solubility of a non-ideal gas, Mar. Chem. 2:203–215; coefficients as carried by PyCO2SYS 1.8",
    standing: "reference library",
    link: "https://doi.org/10.1016/0304-4203(74)90015-2",
  },
  "dickson-1990-borate": {
    citation:
      "Dickson 1990, Thermodynamics of the dissociation of boric acid in synthetic seawater from 273.15 to 318.15 K, Deep-Sea Res. 37:755–766; coefficients as carried by PyCO2SYS 1.8",
    standing: "reference library",
  },
  "millero-1995": {
    citation:
      "Millero 1995, Thermodynamics of the carbon dioxide system in the oceans, Geochim. Cosmochim. Acta 59:661–677 (ionic product of water, total scale); coefficients as carried by PyCO2SYS 1.8",
    standing: "reference library",
  },
  "dickson-riley-1979": {
    citation:
      "Dickson & Riley 1979, The estimation of acid dissociation constants in seawater media from potentiometric titrations with strong base, Mar. Chem. 7:89–99 (hydrogen fluoride); coefficients as carried by PyCO2SYS 1.8",
    standing: "reference library",
  },
  "uppstrom-1974": {
    citation:
      "Uppström 1974, The boron/chlorinity ratio of deep-sea water from the Pacific Ocean, Deep-Sea Res. 21:161–162",
    standing: "reference library",
  },
  "takahashi-1982": {
    citation:
      "Takahashi et al. 1982, Carbonate chemistry, GEOSECS Pacific Expedition vol. 3 (activity coefficient fH); checked against the seacarb library's printed value",
    standing: "reference library",
  },
  "dickson-2007-guide": {
    citation:
      "Dickson, Sabine & Christian 2007, Guide to best practices for ocean CO₂ measurements, PICES Special Publication 3, chapter 5",
    standing: "from memory",
  },
  "electrode-junction": {
    citation: "Glass electrodes calibrated in dilute buffers carry a further 0.02–0.05 pH in sea water",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
