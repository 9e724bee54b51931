import type { Letter } from "../records/plan.ts";

/** What became of a letter. */
export type Posted =
  | { readonly kind: "sent"; readonly place: string; readonly messageId: string }
  /** Surely not delivered, anywhere. */
  | { readonly kind: "refused"; readonly why: string }
  /** Perhaps delivered, perhaps not. */
  | { readonly kind: "uncertain"; readonly why: string };

/** Carries letters to members; a chat platform implements it. */
export interface Poster {
  /** How the ids of the members begin that it can reach: "discord:". */
  readonly prefix: string;
  /**
   * Posts a letter once: one that was tried before is looked for first. Resolves whatever happens.
   */
  post(letter: Letter): Promise<Posted>;
}
