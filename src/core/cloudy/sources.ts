import type { Source } from "../source.ts";

/** The bibliography of the cloudy-water room. */
export const cloudySources = {
  "boyd-tucker-1998": {
    citation:
      "Boyd & Tucker 1998, Pond Aquaculture Water Quality Management, Kluwer: plankton and oxygen by day and night; hydrogen sulphide",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
