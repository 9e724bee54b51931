import type { Source } from "../source.ts";

/** The bibliography of the plant room. */
export const plantSources = {} as const satisfies Record<string, Source>;
