import type { Source } from "../source.ts";

/** The bibliography of the water room. */
export const waterSources = {} as const satisfies Record<string, Source>;
