import type { Source } from "../source.ts";

/** The bibliography of the tank room. */
export const tankSources = {
  "elementary-geometry": {
    citation: "Volumes and areas of elementary solids, as in any handbook of geometry",
    standing: "definition",
  },
  "mineral-densities": {
    citation:
      "Densities of the solids rock and sand are made of (quartz 2650, calcite 2710, coral skeleton about 2800, aragonite 2930 kg/m³), handbooks of mineralogy",
    standing: "from memory",
  },
  "freeze-cherry-1979": {
    citation: "Freeze & Cherry 1979, Groundwater, Prentice-Hall: porosity of unconsolidated sand",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
