import type { Role } from "../core/tank/container.ts";

/** One container as it is drawn. */
export interface DrawnContainer {
  /** What to write on it: the member's word, or its role where the picture's letters cannot write that. */
  readonly label: string;
  readonly role: Role;
  /** Stands beside the running system: a mixing drum, a reservoir. */
  readonly isApart: boolean;
  readonly litres: number;
  /** "512 L (480–540)". */
  readonly volumeText: string;
  /** "5.1 min". */
  readonly stayText?: string;
  /** How full it stands, of its height; absent when that is not known. */
  readonly filled?: number;
}

/** The row of containers in the order the water takes, and the figures beneath: plain data. */
export interface SystemSpec {
  readonly kind: "system";
  readonly altText: string;
  readonly containers: readonly DrawnContainer[];
  readonly facts: readonly { readonly name: string; readonly value: string; readonly isAlarming?: boolean }[];
}

/** A pump's curve and what its pipes ask, over the flow. */
export interface PumpSpec {
  readonly kind: "pump";
  readonly altText: string;
  readonly points: readonly {
    readonly flowLPerH: number;
    readonly pumpM: number;
    readonly systemM: number;
  }[];
  readonly meeting: { readonly flowLPerH: number; readonly headM: number };
}

/** Who does what on which day: plain data. */
export interface RotaSpec {
  readonly kind: "rota";
  readonly altText: string;
  readonly days: readonly string[];
  readonly rows: readonly {
    readonly name: string;
    readonly cells: readonly {
      readonly text: string;
      readonly state: "planned" | "done" | "open" | "away" | "free";
    }[];
  }[];
}

/** One animal and its forebears, generation by generation: plain data. */
export interface PedigreeSpec {
  readonly kind: "pedigree";
  readonly altText: string;
  /** The animal itself first, then its parents, then theirs; each generation twice as long as the one before. */
  readonly generations: readonly (readonly (
    | {
        readonly name: string;
        readonly note: string;
        /** Stands more than once in the picture: where inbreeding comes from. */
        readonly isRepeated: boolean;
      }
    | undefined
  )[])[];
}
