import type { Source } from "../source.ts";

/** The bibliography of the carbonate room. */
export const carbonateSources = {} as const satisfies Record<string, Source>;
