import type { Source } from "../source.ts";

/** The bibliography of the dosing room. */
export const dosingSources = {} as const satisfies Record<string, Source>;
