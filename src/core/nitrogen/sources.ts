import type { Source } from "../source.ts";

/** The bibliography of the nitrogen room. */
export const nitrogenSources = {} as const satisfies Record<string, Source>;
