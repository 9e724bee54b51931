import { readAmount } from "./amount.ts";
import type { Estimate } from "./estimate.ts";
import { type Grammar, Misread } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { askWhich, bareNumber, type Measured, readText, sayBack, writeEstimate } from "./reader.ts";
import { UNITS, type Unit } from "./unit-table.ts";
import { as, type Centimetres, type Litres } from "./units.ts";

export interface VolumeEntry extends Measured<Litres> {
  /** The three lengths it was multiplied from, when it was. */
  readonly sidesCm?: readonly [Centimetres, Centimetres, Centimetres];
}

const LARGEST_L = 1e9;
const LIKELY_L = [0.001, 100_000] as const;
const EXAMPLES = "“200 L”, “55 US gal” or “120x50x55 cm”";

/**
 * A volume: with its unit, as a sum ("180 US gal + 2 x 20 US gal"), or as three inside lengths.
 * A bare “gal” is asked about unless the habit is known; quarts, pints and the like are US unless it is imperial.
 */
export function readVolume(typed: string, habits: Habits): Read<VolumeEntry> {
  const grammar: Grammar = {
    noun: "a volume",
    examples: EXAMPLES,
    units: volumeUnits(habits),
    lengths: UNITS.length,
    hasArithmetic: true,
    min: 0,
    max: LARGEST_L,
  };
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: ({ estimate }) => estimate.low >= LIKELY_L[0] && estimate.high <= LIKELY_L[1],
    read: (text, mark) => {
      const amount = readAmount(text, grammar, mark);
      const again = (next: string) => readVolume(next, habits);
      if (amount.unit === undefined) {
        const offered =
          habits.gallon === undefined ? ["L", "US gal", "imp gal"] : ["L", `${gallonOf(habits)} gal`];
        return bareNumber(text, amount, { grammar, offered, asksForUnit: true }, again);
      }
      if (amount.unitSpans.some(({ unit }) => unit.asks !== undefined)) {
        return askWhich(text, amount, again);
      }
      const sides = amount.sidesCm;
      if (sides !== undefined && Math.min(...sides) === 0) {
        throw new Misread(`A length of zero holds no water. Try ${EXAMPLES}.`);
      }
      return {
        kind: "read",
        value: {
          estimate: amount.estimate as Estimate<Litres>,
          typedUnit: amount.unit.id,
          ...(sides === undefined
            ? {}
            : {
                sidesCm: [as<Centimetres>(sides[0]), as<Centimetres>(sides[1]), as<Centimetres>(sides[2])],
              }),
        },
        readAs: sidesText(sides) + sayBack(amount, amount.unit, "L"),
      };
    },
  });
}

/** Reads back as the same volume. */
export function formatVolume({ estimate }: Pick<VolumeEntry, "estimate">): string {
  return writeEstimate(estimate, "L");
}

function gallonOf(habits: Habits): "US" | "imp" {
  return habits.gallon === "imperial" ? "imp" : "US";
}

/** The table with the spellings that a habit settles moved to the unit it settles them on. */
export function volumeUnits(habits: Habits): readonly Unit[] {
  const table: readonly Unit[] = UNITS.volume;
  if (habits.gallon === undefined) {
    return table;
  }
  const gallon = gallonOf(habits);
  const shared = new Map<string, readonly string[]>();
  for (const { id, spellings } of table) {
    if (id === "gal" || id.startsWith("US ")) {
      shared.set(
        id.replace("US ", ""),
        spellings.filter((spelling) => !/^(us|u s) |us\)?$|^usg$/.test(spelling)),
      );
    }
  }
  return table
    .filter(({ id }) => id !== "gal")
    .map((unit) => {
      const name = unit.id.replace(/^(US|imp) /, "");
      const loose = shared.get(name);
      if (loose === undefined || name === unit.id) {
        return unit;
      }
      if (name === "gal") {
        const plain = table.find(({ id }) => id === "gal")?.spellings ?? [];
        return unit.id === `${gallon} gal` ? { ...unit, spellings: [...unit.spellings, ...plain] } : unit;
      }
      if (gallon === "US") {
        return unit;
      }
      const hasImperial = table.some(({ id }) => id === `imp ${name}`);
      if (unit.id.startsWith("US ")) {
        return hasImperial
          ? { ...unit, spellings: unit.spellings.filter((each) => !loose.includes(each)) }
          : unit;
      }
      return { ...unit, spellings: [...unit.spellings, ...loose] };
    });
}

function sidesText(sides: readonly [number, number, number] | undefined): string {
  return sides === undefined ? "" : `${sides.map((side) => Number(side.toPrecision(6))).join(" × ")} cm = `;
}
