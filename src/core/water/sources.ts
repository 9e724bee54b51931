import type { Source } from "../source.ts";

/** The bibliography of the water room. */
export const waterSources = {
  "fofonoff-millard-1983": {
    citation:
      "Fofonoff & Millard (1983), Algorithms for computation of fundamental properties of seawater, UNESCO Technical Papers in Marine Science 44: PSS-78 and its check values p. 9, EOS-80 and its check values p. 19",
    standing: "published",
  },
  "hill-dauphinee-woods-1986": {
    citation:
      "Hill, Dauphinee & Woods (1986), The extension of the Practical Salinity Scale 1978 to low salinities, IEEE J. Oceanic Eng. 11:109-112",
    standing: "published",
  },
  "culkin-smith-1980": {
    citation:
      "Culkin & Smith (1980), Determination of the concentration of potassium chloride solution having the same electrical conductivity as standard seawater, IEEE J. Oceanic Eng. 5:22-23",
    standing: "published",
  },
  "millero-poisson-1981": {
    citation:
      "Millero & Poisson (1981), International one-atmosphere equation of state of seawater, Deep-Sea Res. 28A:625-629",
    standing: "published",
    link: "https://doi.org/10.1016/0198-0149(81)90122-9",
  },
  "millero-2008": {
    citation:
      "Millero, Feistel, Wright & McDougall (2008), The composition of Standard Seawater and the definition of the Reference-Composition Salinity Scale, Deep-Sea Res. I 55:50-72",
    standing: "published",
    link: "https://doi.org/10.1016/j.dsr.2007.10.001",
  },
  "teos-10-manual": {
    citation:
      "IOC, SCOR & IAPSO (2010), The international thermodynamic equation of seawater 2010: Calculation and use of thermodynamic properties, table D.3",
    standing: "published",
  },
  "gsw-3-6-16": {
    citation:
      "GSW, the Gibbs Seawater reference library of TEOS-10, release 3.6.16: used to check results and for tables",
    standing: "reference library",
  },
  "wooster-1969": {
    citation:
      "Wooster, Lee & Dietrich (1969), Redefinition of salinity, Limnol. Oceanogr. 14:437-438: salinity = 1.80655 × chlorinity",
    standing: "published",
  },
  "iso-1768-1975": {
    citation:
      "ISO 1768:1975, Glass hydrometers: conventional value for the thermal cubic expansion coefficient",
    standing: "published",
  },
  "acrylic-expansion": {
    citation: "Linear expansion of acrylic, about 7e-5 per °C, so about 2.1e-4 per °C by volume",
    standing: "from memory",
  },
  "quan-fry-1995": {
    citation:
      "Quan & Fry (1995), Empirical equation for the index of refraction of seawater, Appl. Opt. 34:3477-3480",
    standing: "published",
    link: "https://doi.org/10.1364/AO.34.003477",
  },
  "crc-handbook-concentrative": {
    citation:
      "CRC Handbook of Chemistry and Physics, Concentrative properties of aqueous solutions: refractive index of sodium chloride solutions at 20 °C",
    standing: "published",
  },
  "kester-1967": {
    citation:
      "Kester, Duedall, Connors & Pytkowicz (1967), Preparation of artificial seawater, Limnol. Oceanogr. 12:176-179",
    standing: "published",
    link: "https://doi.org/10.4319/lo.1967.12.1.0176",
  },
  "astm-d1141-98": {
    citation: "ASTM D1141-98, Standard practice for the preparation of substitute ocean water",
    standing: "from memory",
  },
  "salt-hydrate-bounds": {
    citation:
      "Worked out from published artificial-seawater recipes: salts without water of crystallisation give 1.00, magnesium sulfate heptahydrate with magnesium chloride hexahydrate 0.842. What a mix on sale gives is not published",
    standing: "common practice, no source",
  },
  "benson-krause-1984": {
    citation:
      "Benson & Krause (1984), The concentration and isotopic fractionation of oxygen dissolved in freshwater and seawater in equilibrium with the atmosphere, Limnol. Oceanogr. 29:620-632",
    standing: "published",
    link: "https://doi.org/10.4319/lo.1984.29.3.0620",
  },
  "usgs-2011-03": {
    citation:
      "US Geological Survey, Office of Water Quality Technical Memorandum 2011.03: dissolved-oxygen solubility tables, with the pressure correction of Benson & Krause (1980), equation 24",
    standing: "published",
  },
  "garcia-gordon-1992": {
    citation:
      "Garcia & Gordon (1992), Oxygen solubility in seawater: better fitting equations, Limnol. Oceanogr. 37:1307-1312",
    standing: "published",
    link: "https://doi.org/10.4319/lo.1992.37.6.1307",
  },
  "us-standard-atmosphere-1976": {
    citation: "U.S. Standard Atmosphere, 1976 (the same troposphere as ICAO Doc 7488)",
    standing: "published",
  },
  "pawlowicz-2008": {
    citation:
      "Pawlowicz (2008), Calculating the conductivity of natural waters, Limnol. Oceanogr. Methods 6:489-501, abstract",
    standing: "published",
    link: "https://doi.org/10.4319/lom.2008.6.489",
  },
  "fresh-water-heat": {
    citation: "Specific heat capacity of fresh water near 25 °C, 4.18 kJ/(kg K)",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
