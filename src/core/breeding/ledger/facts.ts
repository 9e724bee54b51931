import { z } from "zod";

/** How a number is known. */
export const HOWS = ["exact", "subsample", "guess"] as const;

/** keeper: everything; helper: logs and takes duties; observer: reads. */
export const ROLES = ["keeper", "helper", "observer"] as const;
export type Role = (typeof ROLES)[number];

/** From the most delicate to the least: animals, nets and hands go down this list only.
 *  Source: common-practice. */
export const ZONES = ["hatchery", "grow-out", "broodstock", "quarantine", "sick"] as const;
export type Zone = (typeof ZONES)[number];

export const SEXES = ["male", "female", "unknown"] as const;
export type Sex = (typeof SEXES)[number];

export const ORIGINS = ["wild", "bred", "traded", "unknown"] as const;
export type Origin = (typeof ORIGINS)[number];

export const ORGANISMS = ["rotifers", "brine shrimp", "copepods", "microalgae"] as const;
export type Organism = (typeof ORGANISMS)[number];

const name = z.string().min(1).max(60);
const day = z.string().regex(/^\d{4}-\d\d-\d\d$/);
const person = z.number().int().positive();
const whole = z.number().int().positive();
const figure = z.number().min(0);
const cents = z.number().int().positive();

export const countSchema = z.object({ best: figure, low: figure, high: figure, how: z.enum(HOWS) });
/** A number of animals, and how it is known. */
export type Count = z.infer<typeof countSchema>;

/** All that can come to pass in a group; plain data, never changed once written. */
export const factSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("group started"), name, zone: z.string(), currency: z.string() }),
  z.object({ kind: z.literal("role set"), person, role: z.enum(ROLES) }),
  z.object({ kind: z.literal("person left"), person }),
  z.object({
    kind: z.literal("tank noted"),
    tank: name,
    litres: z.number().positive(),
    water: name,
    zone: z.enum(ZONES),
  }),
  z.object({ kind: z.literal("quarantine begun"), tank: name, days: whole }),
  z.object({
    kind: z.literal("animal noted"),
    animal: name,
    species: name,
    sex: z.enum(SEXES),
    sires: z.array(name),
    dam: name.exactOptional(),
    origin: z.enum(ORIGINS),
    tank: name.exactOptional(),
    owner: person,
  }),
  z.object({ kind: z.literal("animal gone"), animal: name, why: z.enum(["died", "left"]) }),
  z.object({ kind: z.literal("pair formed"), pair: name, animals: z.array(name), tank: name }),
  z.object({ kind: z.literal("pair parted"), pair: name }),
  z.object({
    kind: z.literal("spawned"),
    batch: name,
    spawn: whole,
    species: name,
    tank: name,
    pair: name.exactOptional(),
    eggs: countSchema.exactOptional(),
    temperatureC: z.number().exactOptional(),
  }),
  z.object({
    kind: z.literal("stage reached"),
    batch: name,
    stage: name,
    criterion: z.string().max(80).exactOptional(),
    count: countSchema.exactOptional(),
  }),
  z.object({ kind: z.literal("counted"), batch: name, count: countSchema }),
  z.object({ kind: z.literal("died"), batch: name, number: whole }),
  z.object({ kind: z.literal("seen too"), event: whole }),
  z.object({ kind: z.literal("culled"), batch: name, number: whole }),
  z.object({ kind: z.literal("lost"), batch: name, number: whole }),
  z.object({ kind: z.literal("moved"), batch: name, tank: name }),
  z.object({ kind: z.literal("split"), batch: name, into: name, number: whole, tank: name }),
  z.object({ kind: z.literal("merged"), batch: name, into: name }),
  z.object({
    kind: z.literal("weighed"),
    batch: name,
    meanG: z.number().positive(),
    feedG: figure.exactOptional(),
  }),
  z.object({
    kind: z.literal("culture started"),
    culture: name,
    organism: z.enum(ORGANISMS),
    litres: z.number().positive(),
    place: name,
    keeper: person,
    parent: name.exactOptional(),
  }),
  z.object({
    kind: z.literal("culture counted"),
    culture: name,
    perML: z.object({ best: figure, low: figure, high: figure }),
    eggShare: z.number().min(0).max(1).exactOptional(),
  }),
  z.object({ kind: z.literal("culture harvested"), culture: name, litres: z.number().positive() }),
  z.object({ kind: z.literal("culture ended"), culture: name, why: z.enum(["crashed", "ended"]) }),
  z.object({ kind: z.literal("tin tested"), tin: name, naupliiPerG: z.number().positive() }),
  z.object({ kind: z.literal("duty planned"), duty: whole, day, slot: name, person: person.exactOptional() }),
  z.object({ kind: z.literal("duty given up"), duty: whole }),
  z.object({ kind: z.literal("duty taken"), duty: whole, person }),
  z.object({ kind: z.literal("duty done"), duty: whole, person }),
  z.object({ kind: z.literal("away"), person, from: day, until: day }),
  z.object({
    kind: z.literal("wanted"),
    want: whole,
    person,
    species: name,
    number: whole,
    isReady: z.boolean(),
  }),
  z.object({ kind: z.literal("want closed"), want: whole }),
  z.object({ kind: z.literal("transfer offered"), transfer: whole, batch: name, number: whole, to: person }),
  z.object({ kind: z.literal("transfer confirmed"), transfer: whole, side: z.enum(["giver", "receiver"]) }),
  z.object({ kind: z.literal("transfer dropped"), transfer: whole }),
  z.object({ kind: z.literal("alert raised"), water: name, batch: name }),
  z.object({ kind: z.literal("alert lifted"), water: name }),
  z.object({
    kind: z.literal("spent"),
    what: name,
    cents,
    payer: person,
    shares: z.array(z.object({ person, cents: z.number().int() })),
  }),
  z.object({ kind: z.literal("paid"), from: person, to: person, cents }),
  z.object({ kind: z.literal("corrected"), event: whole }),
]);

export type Fact = z.infer<typeof factSchema>;
export type FactKind = Fact["kind"];

/** A fact as it stands in the ledger. */
export interface LedgerEvent {
  /** Counts up from 1 within the group. */
  readonly number: number;
  /** When it happened, UTC, ISO 8601. */
  readonly at: string;
  /** The same on the group's own calendar. */
  readonly day: string;
  /** When it was written down. */
  readonly enteredAt: string;
  /** Who wrote it: their number in the group. */
  readonly by: number;
  readonly fact: Fact;
}

/** What may be taken back by a correction; all else is put right by its own opposite. */
export const CORRECTABLE: readonly FactKind[] = [
  "counted",
  "died",
  "culled",
  "lost",
  "weighed",
  "moved",
  "seen too",
  "stage reached",
  "culture counted",
  "culture harvested",
  "tin tested",
  "duty done",
  "away",
  "spent",
  "paid",
];
