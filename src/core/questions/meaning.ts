import type { EventKind } from "../log/entry.ts";
import type { ParameterId } from "../log/parameters.ts";

/** What a question in plain words can be after. */
export type Intent =
  | "trend"
  | "effect"
  | "until"
  | "last-event"
  | "value"
  | "latest"
  | "salt-mix"
  | "salt-convert"
  | "salt-adjust"
  | "change-plan"
  | "change-effect"
  | "top-off"
  | "dilute"
  | "stocking-load"
  | "stocking-add"
  | "volume"
  | "ammonia"
  | "oxygen-full"
  | "oxygen-reading"
  | "oxygen-budget"
  | "convert"
  | "log"
  | "help"
  | "decline";

/** Who can answer what a bot must not. */
export type RightPerson = "people" | "vet" | "electrician" | "engineer";

/** Figures by the part they play, as typed: `volume`, `salinity`, `now`, `target` … */
export type Figures = Readonly<Record<string, string>>;

export interface Meaning {
  readonly intent: Intent;
  readonly parameter?: ParameterId;
  /** The tank's own name. */
  readonly tank?: string;
  readonly event?: EventKind;
  /** What the event was done with or to: "trigger", "skimmer". */
  readonly about?: string;
  /** From when on, in the member's words: "monday", "added the trigger". */
  readonly since?: string;
  /** When or over which time: "june", "last week". */
  readonly at?: string;
  readonly limit?: string;
  readonly who?: RightPerson;
  readonly quantities?: Figures;
  /** 0 to 1. From SURE on it is acted upon; below, it is offered as a question. */
  readonly confidence: number;
}

/** The confidence from which a meaning is acted upon without asking. An assumption, held by the tests. */
export const SURE = 0.8;

export type Understood =
  | { readonly kind: "meaning"; readonly meaning: Meaning }
  /** One question to ask: which of these is meant; the likeliest first. */
  | { readonly kind: "unsure"; readonly candidates: readonly Meaning[] }
  | { readonly kind: "none" };
