import type { Source } from "../source.ts";

/** The bibliography of the nitrogen room. */
export const nitrogenSources = {
  "standard-atomic-weights": {
    citation: "Standard atomic weights: N 14.0067, O 15.9994, H 1.00794, C 12.0107, Ca 40.078",
    standing: "from memory",
  },
  "emerson-1975": {
    citation:
      "Emerson, Russo, Lund & Thurston 1975, Aqueous ammonia equilibrium calculations: effect of pH and temperature, J. Fish. Res. Board Can. 32, 2379–2383; fractions checked against the table reprinted in UF/IFAS FA16",
    standing: "published",
  },
  "ifas-fa16": {
    citation: "Francis-Floyd, Watson, Petty & Pouder, Ammonia in aquatic systems, UF/IFAS Extension FA16",
    standing: "published",
  },
  "khoo-1977": {
    citation:
      "Khoo, Culberson & Bates 1977, Thermodynamics of the dissociation of ammonium ion in seawater from 5 to 40 °C, J. Solution Chem. 6, 281–290 (abstract)",
    standing: "published",
  },
  "clegg-whitfield-1995": {
    citation:
      "Clegg & Whitfield 1995, A chemical model of seawater including dissolved ammonia and the stoichiometric dissociation constant of ammonia in estuarine water and seawater from −2 to 40 °C, Geochim. Cosmochim. Acta 59, 2403–2421, eq. 18; coefficients as carried by the PyCO2SYS 1.8 library",
    standing: "reference library",
  },
  "dickson-1990-sulphate": {
    citation:
      "Dickson 1990, Standard potential of the reaction AgCl + ½H₂ = Ag + HCl and the dissociation of bisulphate in sea water, J. Chem. Thermodyn. 22, 113–127; coefficients as carried by the PyCO2SYS 1.8 library",
    standing: "reference library",
  },
  "epa-440-5-88-004": {
    citation:
      "US EPA 1989, Ambient water quality criteria for ammonia (saltwater), EPA 440/5-88-004: equation after Hampson 1977, and the limits 0.035 (continuous) and 0.233 mg/L (maximum) as NH₃",
    standing: "from memory",
  },
  "ut-recirculation-notes": {
    citation: "University of Tennessee course notes on recirculating aquaculture",
    standing: "published",
  },
  "timmons-ebeling": {
    citation: "Timmons & Ebeling, Recirculating Aquaculture: TAN = feed × protein × 0.092",
    standing: "from memory",
  },
  "cai-2016": {
    citation:
      "Cai et al. 2016, nitrogen budget of large yellow croaker fed trash fish: under 20 % of feed N retained, over 85 % of dissolved N is ammonia",
    standing: "published",
  },
  "fao-x5557e": {
    citation: "FAO X5557E, composition of fish, crustaceans and molluscs, as landed",
    standing: "published",
  },
  "usda-food-data": {
    citation: "USDA food composition data for squid, smelt and shrimp, raw",
    standing: "from memory",
  },
  "crc-clam-composition": {
    citation: "Nutrient composition of clam, mixed species, chapter table in a CRC handbook",
    standing: "published",
  },
  "feed-label-habit": {
    citation: "Usual declarations on frozen krill and mysis, dry pellet and flake",
    standing: "from memory",
  },
  "morais-bellwood-rfishprod": {
    citation:
      "Morais & Bellwood, rfishprod data set: FishBase Bayesian length–weight coefficients, total length in cm, mass in g",
    standing: "reference library",
  },
  "fish-flow-data": {
    citation: "Length–weight coefficients of reef fishes from an open fish-flow data set (FishBase based)",
    standing: "reference library",
  },
  "barbour-2011": {
    citation: "Barbour et al. 2011, lionfish length–weight (mm, g), as given in a later review",
    standing: "published",
  },
  "muraenidae-prior": {
    citation: "FishBase family prior for Muraenidae, total length in cm, mass in g",
    standing: "from memory",
  },
  "fishbase-maximum-length": {
    citation: "Greatest lengths commonly given for the species, FishBase and field guides",
    standing: "from memory",
  },
  "clarke-johnston-1999": {
    citation:
      "Clarke & Johnston 1999, Scaling of metabolic rate with body mass and temperature in teleost fish, J. Anim. Ecol. 68, 893–905",
    standing: "published",
  },
  "stonefish-respirometry": {
    citation:
      "Respirometry of stonefish at 25 °C: standard rate 0.0643 M^0.873 mg O₂/h, fish from 102 g to over 500 g",
    standing: "published",
  },
  "meal-metabolism": {
    citation:
      "Oxygen use after a meal: marble goby about three times rest, tuna 2.8 times; cod raised for about 95 h (Jordan & Steffensen 2007)",
    standing: "published",
  },
  "zhu-chen-2002": {
    citation:
      "Zhu & Chen 2002, The impact of temperature on nitrification rate in fixed film biofilters, Aquacult. Eng. 26, 221–237 (4.57 g O₂ per g N after EPA 1975)",
    standing: "published",
  },
  "ebeling-2006": {
    citation: "Ebeling, Timmons & Bisogni 2006, Aquaculture 257, 346–358: nitrifier stoichiometry with cells",
    standing: "from memory",
  },
  "wolf-gladrow-2007": {
    citation:
      "Wolf-Gladrow et al. 2007, Total alkalinity: the explicit conservative expression, Mar. Chem. 106, 287–300",
    standing: "from memory",
  },
  "nijhof-bovendeur-1990": {
    citation:
      "Nijhof & Bovendeur 1990, Fixed film nitrification characteristics in sea-water recirculation fish culture systems, Aquaculture 87, 133–143: 0.28 g N/m²/d in sea water, 0.69 in fresh water, 24 °C",
    standing: "published",
  },
  "kinyage-pedersen": {
    citation:
      "Kinyage, Pedersen & Pedersen, effects of abrupt salinity rise on nitrification in a fresh-water moving bed: 0.22 m/d first order, no activity at 25 ‰ and more",
    standing: "published",
  },
  "filter-media-handbooks": {
    citation: "Specific surfaces of filter media as usually listed in aquaculture handbooks",
    standing: "from memory",
  },
  "srac-4502": {
    citation: "DeLong & Losordo 2012, How to start a biofilter, SRAC 4502",
    standing: "published",
  },
  "vannecke-volcke": {
    citation: "Vannecke & Volcke, biofilm model appendix: 68 and 44 kJ/mol for the two nitrifier groups",
    standing: "published",
  },
  "asm-iwa-str9": {
    citation: "Henze et al., Activated sludge models ASM1, ASM2, ASM2d and ASM3, IWA STR 9",
    standing: "reference library",
  },
  "dormand-prince-1980": {
    citation:
      "Dormand & Prince 1980, A family of embedded Runge–Kutta formulae, J. Comput. Appl. Math. 6, 19–26: the 5(4) pair",
    standing: "from memory",
  },
  "he-2018": {
    citation:
      "He et al. 2018, denitrification with solid and liquid carbon in sea water: 2.2–23.4 g NO₃-N per m³ and day",
    standing: "published",
  },
  "nitrifier-parameter-set": {
    citation:
      "Rounded mid-range parameters of a two-step nitrifier model, chosen here from the activated-sludge literature",
    standing: "assumption",
  },
} as const satisfies Record<string, Source>;
