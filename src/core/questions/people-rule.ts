import { KIN, markedPattern } from "./people-words.ts";

/** What happened to somebody, as far as the words say. */
export type Harm = "sting" | "bite" | "wound" | "shock" | "burn" | "swallowed" | "gas" | "unwell";

/** Who can be hurt. */
export const ONE = `(?:i|ive|im|we|weve|he|hes|she|shes|they|someone|somebody|a person|a member|one of us|(?:my|our|his|her|their|the|a) (?:[a-z]+ )?${KIN}|${KIN})`;
/** Whom a verb can strike. */
export const WHOM = `(?:me|myself|him|himself|herself|us|someone|somebody|(?:my|our|his|her|the|a) (?:[a-z]+ )?${KIN}|${KIN})`;
export const MINE = "(?:my|our|his|her|their|your)";

/** What a text says of somebody hurt, and what takes it back. */
export interface Rule {
  readonly harm: Harm;
  readonly pattern: RegExp;
  readonly unless?: RegExp;
}

export const rule = (harm: Harm, pattern: string, unless?: string): Rule => ({
  harm,
  pattern: new RegExp(markedPattern(pattern)),
  ...(unless === undefined ? {} : { unless: new RegExp(markedPattern(unless)) }),
});
