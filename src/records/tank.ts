import type { Container } from "../core/tank/container.ts";
import type { ClubId, MemberId } from "./ids.ts";

export type WaterKind = "marine" | "brackish" | "fresh";

/** Standing facts of a tank beside its containers, kept as the member typed them. */
export interface TankNotes {
  /** "1 grouper 60 cm; 2 triggerfish 25 cm" */
  readonly livestock?: string;
  /** "280 g prawn 3 times a week" */
  readonly food?: string;
  /** "110 L ceramic rings; 40 L foam 20 ppi" */
  readonly media?: string;
  /** "8000 L/h" */
  readonly flow?: string;
  /** Usual or aimed-at values, used when no reading is at hand. */
  readonly salinity?: string;
  readonly temperature?: string;
}

/** What may be noted of the plant around the water. */
export const PLANT_NOTES = [
  "crest",
  "level",
  "overflow-box",
  "returns",
  "drain",
  "standby",
  "pipe",
  "lift",
  "pump",
  "row",
  "inlet",
  "reservoir",
  "surface",
  "room",
  "humidity",
  "walls",
  "devices",
  "circuits",
  "volts",
  "price",
  "battery",
  "air",
  "generator",
  "footprint",
  "masses",
  "contacts",
  "valves",
] as const;

export type PlantNote = (typeof PLANT_NOTES)[number];

/** Facts of pipes, pumps, room and power, kept as the member typed them. */
export type PlantNotes = { readonly [K in PlantNote]?: string };

export interface Tank {
  readonly id: number;
  readonly owner: MemberId;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly kind: WaterKind;
  readonly containers: readonly Container[];
  /** The description as typed. */
  readonly containersTyped: string;
  readonly notes: TankNotes;
  readonly plant: PlantNotes;
  readonly isDefault: boolean;
  /** With whom its owner shares it; empty for anyone else who looks. */
  readonly sharedWith: readonly Share[];
  /** For a viewer who is not the owner: whose it is, and until when it may be read. */
  readonly shared?: { readonly by: string; readonly until?: string };
}

/** Who may be let in: a whole club, or one helper. */
export type Reader =
  | { readonly kind: "club"; readonly id: ClubId }
  | { readonly kind: "helper"; readonly id: MemberId };

/** One leave to read a tank; the end is UTC, ISO 8601. */
export interface Share {
  readonly reader: Reader;
  readonly until?: string;
}

/** Looks a tank up for one member: their own, and those shared with them or the club they ask from. */
export interface Viewer {
  readonly member: MemberId;
  readonly club: ClubId | undefined;
  /** UTC, ISO 8601: what was shared until before then is private again. */
  readonly now: string;
}

export interface TankRecords {
  /** The member's own tanks, default first. */
  own(member: MemberId): readonly Tank[];
  /** Own tanks, then those others share with the viewer or their club. */
  visible(viewer: Viewer): readonly Tank[];
  /** Throws: UserError when the name is taken by another of the member's tanks or aliases. */
  create(tank: {
    readonly owner: MemberId;
    readonly name: string;
    readonly kind: WaterKind;
    readonly containers: readonly Container[];
    readonly containersTyped: string;
    readonly now: string;
  }): Tank;
  replaceContainers(owner: MemberId, tankId: number, containers: readonly Container[], typed: string): void;
  setNotes(owner: MemberId, tankId: number, notes: TankNotes): void;
  /** Adds to what is noted of the plant; an empty text clears one note. */
  setPlant(owner: MemberId, tankId: number, notes: PlantNotes): void;
  rename(owner: MemberId, tankId: number, name: string): void;
  addAlias(owner: MemberId, tankId: number, alias: string): void;
  removeAlias(owner: MemberId, tankId: number, alias: string): void;
  setDefault(owner: MemberId, tankId: number): void;
  /** Lets a club, or one helper, read the tank; a new end replaces the old one. */
  share(owner: MemberId, tankId: number, share: Share): void;
  /** Ends one leave, or all of them. */
  unshare(owner: MemberId, tankId: number, reader?: Reader): void;
  remove(owner: MemberId, tankId: number): void;
}
