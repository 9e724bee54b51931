import { type Estimate, exactly } from "../../src/core/quantity/estimate.ts";
import { readFraction } from "../../src/core/quantity/fraction.ts";
import { readPlainNumber } from "../../src/core/quantity/plain-number.ts";
import type { Read } from "../../src/core/quantity/read.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Litres, type LitresPerDay, type LitresPerHour } from "../../src/core/quantity/units.ts";
import { readVolume } from "../../src/core/quantity/volume.ts";
import type { Caution } from "../../src/core/result.ts";
import type { ChangeSize } from "../../src/core/water/change-size.ts";
import type { Level } from "../../src/core/water/dilution.ts";
import { waterChangeSupply } from "../../src/core/water/water-change-supply.ts";
import {
  type Context,
  type Option,
  optional,
  quantity,
  quoted,
  reading,
  type TakenFigure,
  tankInMind,
  tankOption,
  UserError,
} from "../../src/kit/index.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";
import type { Tank } from "../../src/records/tank.ts";

/** A value of anything dissolved, in the unit the member measures it in. */
export interface LevelEntry {
  readonly estimate: Estimate<Level>;
  /** Empty when none was typed. */
  readonly unit: string;
}

const UNIT_WORDS = /^(.*?)\s*((?:mg|µg|ug|g|mmol|µmol|umol|meq)\s*\/\s*l|ppm|ppb|ppt|dkh|dgh|°dh|meq)$/i;

/** "80 mg/L", "8.2 dKH", or a bare number: it mixes by volume whatever its unit. */
export function level(description: string, example: string): Option<LevelEntry, true> {
  return reading(description, example, (text, { habits }): Read<LevelEntry> => {
    if (/°\s*[cf]\b|celsius|fahrenheit|\bph\b/i.test(text))
      return {
        kind: "unreadable",
        message: `${quoted(text)}: temperature and pH do not mix like something dissolved. /change match works out a blend's temperature.`,
      };
    const [, number = text, unit = ""] = UNIT_WORDS.exec(text) ?? [];
    const read = readPlainNumber(number, habits);
    if (read.kind === "ask")
      return {
        ...read,
        choices: read.choices.map((each) => ({ ...each, text: `${each.text} ${unit}`.trim() })),
      };
    if (read.kind === "unreadable")
      return {
        kind: "unreadable",
        message: `${quoted(text)} is not a value I can read. Try ${quoted(example)}.`,
      };
    const { best, low, high } = read.value.estimate;
    if (low < 0)
      return { kind: "unreadable", message: `${quoted(text)} is below nothing. Try ${quoted(example)}.` };
    const estimate = { best: as<Level>(best), low: as<Level>(low), high: as<Level>(high) };
    return { kind: "read", value: { estimate, unit }, readAs: showEstimate(estimate, unit) };
  });
}

/** The unit that all levels of one sum share. Throws: UserError when two were typed in different ones. */
export function commonUnit(...levels: readonly (LevelEntry | undefined)[]): string {
  const units = [
    ...new Set(levels.flatMap((each) => (each === undefined || each.unit === "" ? [] : [each.unit]))),
  ];
  if (new Set(units.map((unit) => unit.toLowerCase().replace(/\s/g, "").replace("mg/l", "ppm"))).size > 1)
    throw new UserError(
      "bad-input",
      `Two units are mixed here: ${units.map((unit) => quoted(unit)).join(" and ")}. Give all values in one.`,
    );
  return units[0] ?? "";
}

/** "30 %" of the system, or so many litres. */
export function changeSize(description: string): Option<ChangeSize, true> {
  return reading(description, "30 %", (text, { habits }): Read<ChangeSize> => {
    if (/%|percent|per cent/i.test(text) || /^[\d.,\s]+$/.test(text)) {
      const read = readFraction(text, habits);
      return read.kind === "read"
        ? { kind: "read", value: { kind: "fraction", fraction: read.value.estimate }, readAs: read.readAs }
        : read;
    }
    const read = readVolume(text, habits);
    return read.kind === "read"
      ? { kind: "read", value: { kind: "litres", litres: read.value.estimate }, readAs: read.readAs }
      : read;
  });
}

export function showSize(size: ChangeSize): string {
  if (size.kind === "litres") return showVolume(size.litres);
  const { best, low, high } = size.fraction;
  return showEstimate({ best: best * 100, low: low * 100, high: high * 100 }, "%");
}

/** Options that every water-change sum shares. */
export const systemOptions = {
  volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
  tank: optional(tankOption()),
};

export const supplyOptions = {
  pump: optional(quantity.flow("Flow of the pump that moves the water", "1200 L/h")),
  making: optional(quantity.flow("How fast you make purified water", "200 L/day")),
};

export interface System {
  readonly volume: Estimate<Litres>;
  readonly typedUnit: string;
  readonly tank: Tank | undefined;
  readonly taken: readonly TakenFigure[];
  readonly cautions: readonly Caution[];
}

/** The system's water: as typed, else the tank's; undefined when neither is known. */
export function systemOf(
  input: {
    readonly volume?: { readonly estimate: Estimate<Litres>; readonly typedUnit: string } | undefined;
    readonly tank?: Tank | undefined;
  },
  context: Context,
): System | undefined {
  const tank = tankInMind(input.tank, input.volume, context);
  if (input.volume !== undefined)
    return {
      volume: input.volume.estimate,
      typedUnit: input.volume.typedUnit,
      tank: input.tank,
      taken: [],
      cautions: [],
    };
  if (tank === undefined) return undefined;
  const { estimate, taken, cautions } = tankVolume(tank, context);
  return { volume: estimate, typedUnit: "L", tank, taken: [taken], cautions };
}

/** What moving and making the water takes, when the member said how fast they can. */
export function supplyOf(
  litres: Estimate<Litres>,
  input: {
    readonly pump?: { readonly estimate: Estimate<LitresPerHour> } | undefined;
    readonly making?: { readonly estimate: Estimate<LitresPerHour> } | undefined;
  },
): { readonly lines: readonly string[]; readonly cautions: readonly Caution[] } {
  if (input.pump === undefined && input.making === undefined) return { lines: [], cautions: [] };
  const answer = waterChangeSupply({
    litres,
    pumpFlow: input.pump?.estimate,
    purifiedPerDay: input.making === undefined ? undefined : perDay(input.making.estimate),
  });
  if (answer.kind === "no-answer") return { lines: [], cautions: answer.cautions };
  const { pumpMinutes, makingDays } = answer.value;
  return {
    lines: [
      ...(pumpMinutes === undefined
        ? []
        : [`Pumping it takes ${showEstimate(pumpMinutes, "minutes", { significant: 2 })} each way.`]),
      ...(makingDays === undefined
        ? []
        : [`Making that much purified water takes ${showEstimate(makingDays, "days", { significant: 2 })}.`]),
    ],
    cautions: answer.cautions,
  };
}

function perDay({ best, low, high }: Estimate<LitresPerHour>): Estimate<LitresPerDay> {
  return {
    best: as<LitresPerDay>(best * 24),
    low: as<LitresPerDay>(low * 24),
    high: as<LitresPerDay>(high * 24),
  };
}

/** Water with none of it in. */
export const NONE: LevelEntry = { estimate: exactly(as<Level>(0)), unit: "" };

export const WHICH_VOLUME = {
  option: { name: "volume", example: "200 L" },
  text: "How much water is in the system? /tank add would remember it.",
};
