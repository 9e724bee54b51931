import { clean, quote } from "../quantity/clean.ts";
import { exactly } from "../quantity/estimate.ts";
import { type MoneyEntry, readMoney } from "../quantity/money.ts";
import { readPower } from "../quantity/power.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate, showNumber } from "../quantity/show.ts";
import { readSpan } from "../quantity/span.ts";
import { as } from "../quantity/units.ts";
import { readPart, readParts } from "./described-part.ts";
import type { Circuit, ElectricDevice } from "./electric-load.ts";
import type { Amperes, Volts } from "./plant-units.ts";

const DEVICES =
  "“return pump 180 W, circuit A; heater 300 W, 10 h, circuit B; light 150 W, 9 h, power factor 0.6, circuit B”";
const CIRCUITS = "“A 20 A, protected; B 15 A, protected”";
const MOTORS = /pump|chiller|compressor|fan|skimmer|circulat|powerhead|wavemaker/i;
const LIFE_SUPPORT = /return|heater|heating|air|circulat|skimmer|chiller|pump|powerhead/i;
const NOT_LIFE_SUPPORT = /dos(?:er|ing)|top[ -]?(?:off|up)|light|reactor|mixing|change/i;
/** The circuit of a device that names none. */
export const UNNAMED_CIRCUIT = "the circuit";

/** Electric devices, each with its watts, hours a day (24 unless said) and circuit. */
export function readDevices(typed: string, habits: Habits): Read<readonly ElectricDevice[]> {
  return readParts(typed, DEVICES, (text) =>
    readPart<ElectricDevice>(text, DEVICES, habits, (part) => {
      const name = part.name === "" ? part.refuse(`name the device. Try ${DEVICES}.`) : part.name;
      const circuit = part.take(/(?:on )?circuit (?<c>.+)/)?.groups?.["c"] ?? UNNAMED_CIRCUIT;
      const factor = part.take(/(?:power factor|pf) ?(?<q>[\d.]+)/)?.groups?.["q"];
      const isMotor = part.has(/motor/) || MOTORS.test(name);
      const isSaid = part.has(/life support/);
      const hours = part.take(/(?<q>\d.*? ?(?:h|hrs?|hours?))(?: (?:a|per) day|\/d(?:ay)?| daily)?/)
        ?.groups?.["q"];
      const power = part.take(/(?<q>\d.*)/)?.groups?.["q"];
      if (power === undefined) return part.refuse(`how many watts does it draw? Try ${DEVICES}.`);
      const value: ElectricDevice = {
        name,
        watts: part.settled(readPower(power, habits), power).estimate,
        hoursPerDay:
          hours === undefined ? exactly(24) : part.settled(readSpan(hours, habits), hours).estimate,
        ...(factor === undefined ? {} : { powerFactor: part.number(factor).best }),
        isMotor,
        isLifeSupport: isSaid || (LIFE_SUPPORT.test(name) && !NOT_LIFE_SUPPORT.test(name)),
        circuit,
      };
      return {
        value,
        readAs: `${name}: ${showEstimate(value.watts, "W")}, ${showEstimate(value.hoursPerDay, "h a day")}${factor === undefined ? "" : `, power factor ${factor}`}, ${circuit === UNNAMED_CIRCUIT ? circuit : `circuit ${circuit}`}${value.isLifeSupport ? ", life support" : ""}`,
      };
    }),
  );
}

/** Circuits with the rating of their breaker; without ground-fault protection unless said. */
export function readCircuits(typed: string, habits: Habits): Read<readonly Circuit[]> {
  return readParts(typed, CIRCUITS, (text) => {
    const [, name = "", rest = ""] =
      /^\s*(?:circuit )?(.+?)[ :,]+(\d+(?:\.\d+)? ?(?:A|amps?|amperes?)\b.*)$/i.exec(text) ?? [];
    return readPart<Circuit>(`${name}: ${rest}`, CIRCUITS, habits, (part) => {
      const amperes = part.take(/(?<q>\d+(?:\.\d+)?) ?(?:a|amps?|amperes?)/)?.groups?.["q"];
      if (name === "" || amperes === undefined)
        return part.refuse(`a circuit is a name and its amperes. Try ${CIRCUITS}.`);
      const isUnprotected = part.has(/(?:not|un)[ -]?protected|no (?:protection|gfci|rcd)/);
      const isProtected =
        part.has(/(?:ground[ -]?fault |residual[ -]?current )?protect(?:ed|ion)|gfci|rcd|rcbo/) &&
        !isUnprotected;
      const value: Circuit = {
        name,
        ratingA: as<Amperes>(Number(amperes)),
        hasGroundFaultProtection: isProtected,
      };
      return { value, readAs: `${name}: ${amperes} A, ${isProtected ? "" : "not "}ground-fault protected` };
    });
  });
}

/** "120 V" or "230". */
export function readVolts(typed: string): Read<Volts> {
  const value = Number(/^\s*(\d{1,4}(?:\.\d+)?) ?(?:v|volts?)?\s*$/i.exec(typed)?.[1] ?? Number.NaN);
  return value >= 1 && value <= 1000
    ? { kind: "read", value: as<Volts>(value), readAs: `${showNumber(value)} V` }
    : { kind: "unreadable", message: `${quote(typed)} is not a voltage I can read. Try “120 V” or “230 V”.` };
}

/** The price of a kilowatt-hour, in any one currency: "0.17", "17 cents/kWh". */
export function readPowerPrice(typed: string, habits: Habits): Read<MoneyEntry> {
  const cleaned = clean(typed, "“0.17” or “0.32 € per kWh”");
  if ("complaint" in cleaned) return { kind: "unreadable", message: cleaned.complaint };
  const read = readMoney(cleaned.text.replace(/ ?(?:\/|per |a ) ?k ?wh?$/i, ""), habits);
  return read.kind === "read" ? { ...read, readAs: `${read.readAs} per kWh` } : read;
}
