import type { Source } from "../source.ts";

/** The bibliography of the tank room. */
export const tankSources = {} as const satisfies Record<string, Source>;
