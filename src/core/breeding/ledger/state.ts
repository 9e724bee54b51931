import type { Day } from "../calendar.ts";
import type { Count, Organism, Origin, Role, Sex, Zone } from "./facts.ts";

/** Raised whenever the shape below changes: an older snapshot is then made anew from the ledger. */
export const STATE_VERSION = 1;

export interface Person {
  number: number;
  role: Role;
  isHere: boolean;
  since: Day;
  /** Duties done, and for a newcomer the credit of having started later. */
  load: number;
  /** Duties really done. */
  done: number;
  lastDuty?: Day;
}

export interface TankPlace {
  name: string;
  litres: number;
  /** Tanks that share it count as one for disease. */
  water: string;
  zone: Zone;
  quarantineUntil?: Day;
  quarantineDays?: number;
}

export interface Animal {
  name: string;
  species: string;
  sex: Sex;
  sires: string[];
  dam?: string;
  origin: Origin;
  tank?: string;
  owner: number;
  gone?: "died" | "left";
}

export interface Pair {
  name: string;
  animals: string[];
  tank: string;
  isParted: boolean;
}

/** What one day did to a batch: [day, deaths noted, left alive, joined, missing at a count]. */
export type DayRow = [day: Day, deaths: number, leftAlive: number, joined: number, missing: number];

export interface Batch {
  id: string;
  species: string;
  spawns: number[];
  pair?: string;
  tank: string;
  stage: string;
  laidDay: Day;
  laidAt: string;
  temperatureC?: number;
  eggs?: Count;
  hatchDay?: Day;
  /** Everybody reckoned to be alive now; absent until the first count. */
  alive?: Count;
  /** Where the survival record begins: the first count after hatching, or the split. */
  start?: { day: Day; count: Count };
  rows: DayRow[];
  counts: { day: Day; count: Count }[];
  stages: { stage: string; day: Day; criterion?: string }[];
  sizes: { day: Day; meanG: number; feedG: number; deadSince: number; aliveThen: number }[];
  /** The last deaths noted, to recognise the same ones noted twice. */
  lastDeaths?: { event: number; by: number; number: number; enteredAt: string };
  /** Culled, of the deaths. */
  culled: number;
  isClosed: boolean;
}

export interface Culture {
  name: string;
  organism: Organism;
  litres: number;
  place: string;
  keeper?: number;
  parent?: string;
  started: Day;
  counts: { at: string; best: number; low: number; high: number; eggShare?: number }[];
  /** Shares taken, so that growth is not mistaken for less than it is. */
  harvests: { at: string; litres: number }[];
  ended?: { day: Day; why: "crashed" | "ended" };
}

export interface Duty {
  number: number;
  day: Day;
  slot: string;
  /** Absent while it is open to all. */
  person?: number;
  givenUpBy?: number;
  doneBy?: number;
}

export interface Want {
  number: number;
  person: number;
  species: string;
  animals: number;
  isReady: boolean;
  since: Day;
}

export interface Transfer {
  number: number;
  batch: string;
  species: string;
  animals: number;
  from: number;
  to: number;
  hasGiver: boolean;
  hasReceiver: boolean;
  /** When both had confirmed. */
  day?: Day;
  water: string;
}

/** All that a group's ledger comes to. Plain data; made by `advance`, changed nowhere else. */
export interface GroupState {
  version: number;
  lastEvent: number;
  name: string;
  zone: string;
  currency: string;
  people: Record<string, Person>;
  tanks: Record<string, TankPlace>;
  animals: Record<string, Animal>;
  pairs: Record<string, Pair>;
  batches: Record<string, Batch>;
  cultures: Record<string, Culture>;
  tins: Record<string, { name: string; naupliiPerG: number; day: Day }>;
  /** Open ones and those of the last weeks. */
  duties: Record<string, Duty>;
  absences: { person: number; from: Day; until: Day }[];
  wants: Record<string, Want>;
  transfers: Record<string, Transfer>;
  /** By water. */
  alerts: Record<string, { water: string; batch: string; day: Day }>;
  /** What each has paid for the others, less what fell to them, in cents. */
  balances: Record<string, number>;
  spentCents: number;
  /** How long the group's own eggs took. */
  hatches: { species: string; pair?: string; days: number; temperatureC?: number }[];
  last: { spawn: number; batch: number; duty: number; want: number; transfer: number };
}

export function emptyState(): GroupState {
  return {
    version: STATE_VERSION,
    lastEvent: 0,
    name: "",
    zone: "UTC",
    currency: "",
    people: {},
    tanks: {},
    animals: {},
    pairs: {},
    batches: {},
    cultures: {},
    tins: {},
    duties: {},
    absences: [],
    wants: {},
    transfers: {},
    alerts: {},
    balances: {},
    spentCents: 0,
    hatches: [],
    last: { spawn: 0, batch: 0, duty: 0, want: 0, transfer: 0 },
  };
}

/** Names are one whatever their case; the mark before them keeps any name from meaning something to the machine. */
export function keyOf(name: string): string {
  return `=${name.toLowerCase()}`;
}
