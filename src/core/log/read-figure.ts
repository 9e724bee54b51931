import { readAlkalinity } from "../quantity/alkalinity.ts";
import { quote } from "../quantity/clean.ts";
import { readConcentration } from "../quantity/concentration.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { readPH } from "../quantity/ph.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { readSalinity } from "../quantity/salinity.ts";
import { type Basis, onBasis, type Substance } from "../quantity/substances.ts";
import { readTemperature } from "../quantity/temperature.ts";
import { isPossible, type Parameter, unitText } from "./parameters.ts";

/** A reading's figure in its parameter's canonical unit and basis. */
export interface Figure {
  readonly estimate: Estimate;
  readonly censored?: "below" | "above";
}

/** A figure that reads well, and that no water can have. */
export interface Impossible {
  readonly kind: "impossible";
  readonly message: string;
}

/** What is never in the thousands: "0.125" and "7,400" have decimals, not groups. */
const NEVER_THOUSANDS: ReadonlySet<Parameter["id"]> = new Set([
  "temperature",
  "ph",
  "ammonia",
  "nitrite",
  "nitrate",
  "phosphate",
  "alkalinity",
  "oxygen",
]);

/** °C or °F by size alone: between the two a cold pond and a cold room cannot be told apart. Source: assumption. */
const SURELY_C = 38;
const SURELY_F = 50;
/** Bare alkalinities from here up are dKH, below may be meq/L; from the last on, ppm. Source: common-practice. */
const SURELY_DKH = { min: 4, max: 20 };
const SURELY_CACO3 = 40;
/** Bare general hardness up to here is degrees, from the other on ppm. Source: common-practice. */
const SURELY_DEGREES = 30;
const SURELY_PPM = 60;
/** mg/L of CaCO₃ in 1 °dH, which is 10 mg/L of CaO: × 100.0869 ÷ 56.0774. Source: definition. */
const CACO3_PER_DEGREE = 17.848;
/** How far beyond the usual ranges a corrected slip may lie to be offered. Source: assumption. */
const NEAR_USUAL = 3;

const NOT_DETECTED = /^(?:not (?:detected|detectable|measurable)|undetect(?:ed|able)|none|nil|n\/?d|bdl)$/i;
const FILLERS =
  /\b(?:about|around|approx(?:imately)?|roughly|ca|circa|to|between|and|from|below|under|over|above|less than|more than)\b/gi;
const BASIS_AFTER = /^(.*?\S)( ?(?:\(| as ).*| ?(?:no3|no2|nh3|nh4|po4)?-?\b[np]\)?| ?tan)$/i;

/**
 * The figure of one reading, from the text after the parameter's name. A bare number takes the unit
 * usual for it, which is said back, or is asked about where two units are likely. What no water can be
 * is asked about where a slip explains it, and refused otherwise. `word` is the name as typed: "sg", "kh".
 */
export function readFigure(
  subject: Parameter,
  word: string,
  typed: string,
  habits: Habits,
): Read<Figure> | Impossible {
  if (NOT_DETECTED.test(typed)) return notDetected(subject, typed);
  const text = NEVER_THOUSANDS.has(subject.id) ? typed.replace(/(\d[.,]\d{3})(?!\d)/g, "$10") : typed;
  if (NEVER_THOUSANDS.has(subject.id) && /\d \d/.test(typed)) {
    return { kind: "unreadable", message: `${quote(typed)} is more than one number.` };
  }
  const again = (next: string) => readUnchecked(subject, word.toLowerCase(), next, habits);
  const read = again(text);
  if (read.kind === "read" && inReach(subject, read.value)) return read;
  if (read.kind === "ask") {
    const possible = read.choices.filter((choice) => {
      const meant = again(choice.text);
      return meant.kind === "ask" || (meant.kind === "read" && inReach(subject, meant.value));
    });
    if (possible.length > 0) return { ...read, choices: possible };
  }
  const meant = meantBy(subject, word, text, habits);
  if (meant.length > 0) {
    return {
      kind: "ask",
      question: `The ${subject.name} ${quote(typed)} cannot be. Did you mean one of these?`,
      choices: meant,
    };
  }
  if (read.kind === "unreadable") return read;
  const { min, max } = subject.possible;
  const reach = `from ${min} to ${max} ${unitText(subject)}`.trim();
  return {
    kind: "impossible",
    message: `${quote(`${word} ${typed}`)} cannot be: ${subject.name} in a tank lies ${reach}.`,
  };
}

function readUnchecked(subject: Parameter, word: string, text: string, habits: Habits): Read<Figure> {
  const isBare = !/[\p{L}%‰°]/u.test(text.replace(FILLERS, ""));
  switch (subject.id) {
    case "temperature":
      return temperature(text, isBare, habits);
    case "salinity":
      return salinity(word, text, isBare, habits);
    case "ph":
      return figureOf(readPH(text, habits));
    case "alkalinity":
      return alkalinity(word, text, isBare, habits);
    case "hardness":
      return hardness(word, text, isBare, habits);
    case "redox":
      return withUnit(readPlainNumber(text.replace(/ ?mv\.?$/i, ""), habits), "mV");
    default:
      return concentration(subject, subject.id, word, text, habits);
  }
}

function temperature(text: string, isBare: boolean, habits: Habits): Read<Figure> {
  if (!isBare) return figureOf(readTemperature(text, habits));
  const number = readPlainNumber(text, habits);
  if (number.kind !== "read") return number;
  const { best } = number.value.estimate;
  if (best <= SURELY_C) return figureOf(readTemperature(`${text} °C`, habits));
  if (best >= SURELY_F) return figureOf(readTemperature(`${text} °F`, habits));
  return whichUnit(text, ["°C", "°F"]);
}

function salinity(word: string, text: string, isBare: boolean, habits: Habits): Read<Figure> {
  const number = isBare ? readPlainNumber(text, { ...habits, decimal: "point" }) : undefined;
  let asked = text;
  if (number?.kind === "read") {
    const { best } = number.value.estimate;
    // "sg 1.026", but "sg 25" and "sg 1026" are put to the reader of salinities as they are.
    if (/^(?:sg|specific gravity|gravity)$/.test(word) && best < 2) asked = `${text} SG`;
    if (word === "ppt" || word === "psu") asked = `${text} ${word}`;
    if (/^(?:conductivity|ec)$/.test(word)) asked = `${text} ${best > 200 ? "µS/cm" : "mS/cm"}`;
  }
  const read = readSalinity(asked, habits);
  if (read.kind !== "read") return read;
  return { kind: "read", value: { estimate: read.value.salinity }, readAs: read.readAs };
}

function alkalinity(word: string, text: string, isBare: boolean, habits: Habits): Read<Figure> {
  if (!isBare) return figureOf(readAlkalinity(text, habits));
  const number = readPlainNumber(
    text.replace(/^(?:[<>≤≥]=?|below|under|over|above|less than|more than) ?/i, ""),
    habits,
  );
  if (number.kind !== "read") return number;
  const { low, high } = number.value.estimate;
  const isDegrees = word.includes("kh") || word === "carbonate hardness";
  if (high === 0 || isDegrees || (low >= SURELY_DKH.min && high <= SURELY_DKH.max)) {
    return figureOf(readAlkalinity(`${text} dKH`, habits));
  }
  if (low >= SURELY_CACO3) return figureOf(readAlkalinity(`${text} ppm CaCO3`, habits));
  return whichUnit(text, low < SURELY_DKH.min ? ["dKH", "meq/L"] : ["dKH", "ppm CaCO3"]);
}

function hardness(word: string, text: string, isBare: boolean, habits: Habits): Read<Figure> {
  const unit = / ?(?:(°? ?d?gh|°? ?dh|deg(?:rees)?|°)|(?:ppm|mg\/l)(?: as)?(?: \(?caco3\)?)?)\.?$/i.exec(
    text,
  );
  const figures = unit === null ? text : text.slice(0, unit.index);
  const number = readPlainNumber(figures, habits);
  if (number.kind !== "read") return number;
  const { low, high } = number.value.estimate;
  const isDegrees = unit === null ? word === "dgh" || high <= SURELY_DEGREES : unit[1] !== undefined;
  if (isBare && !isDegrees && low < SURELY_PPM) return whichUnit(text, ["°dH", "ppm CaCO3"]);
  if (isDegrees) return withUnit(number, "°dH");
  const estimate = mapEstimate(number.value.estimate, (ppm) => ppm / CACO3_PER_DEGREE);
  const readAs = `${number.readAs} ppm CaCO3 = ${shown(estimate.best)} °dH`;
  return { kind: "read", value: { estimate }, readAs };
}

function concentration(
  subject: Parameter,
  substance: Extract<Substance, Parameter["id"]>,
  word: string,
  text: string,
  habits: Habits,
): Read<Figure> {
  const split = BASIS_AFTER.exec(text);
  const figure = split?.[1] ?? text;
  const basis = split?.[2] ?? basisOfWord(word);
  const isUnitless = !/[\p{L}%‰°]/u.test(figure.replace(FILLERS, ""));
  if (isUnitless && substance === "ammonia" && basis === "" && /^[0.,]+$/.test(figure)) {
    return passConcentration(
      subject,
      readConcentration(`${figure} mg/L as TAN`, habits, { substance }),
      substance,
    );
  }
  const unit = isUnitless ? " mg/L" : "";
  const read = readConcentration(`${figure}${unit}${basis}`, habits, { substance });
  return passConcentration(subject, read, substance);
}

function passConcentration(
  subject: Parameter,
  read: ReturnType<typeof readConcentration>,
  substance: Substance,
): Read<Figure> {
  if (read.kind !== "read") return read;
  const { estimate, basis, censored } = read.value;
  const canonical: Basis = subject.basis === "as N" ? "N" : "ion";
  const converted =
    basis === canonical
      ? estimate
      : mapEstimate<number, number>(
          estimate,
          (value) => onBasis(value, substance, basis, canonical) ?? value,
        );
  const also = basis === canonical ? "" : ` = ${shown(converted.best)} ${unitText(subject)}`;
  return {
    kind: "read",
    value: bounded(converted, censored, subject),
    readAs: read.readAs + (censored === undefined ? also : ""),
  };
}

/** Above the top of a chart anything possible may be. */
function bounded(estimate: Estimate, censored: Figure["censored"], { possible }: Parameter): Figure {
  if (censored === undefined) return { estimate };
  return censored === "above"
    ? {
        estimate: { best: estimate.high, low: estimate.high, high: Math.max(estimate.high, possible.max) },
        censored,
      }
    : { estimate, censored };
}

function notDetected(subject: Parameter, text: string): Read<Figure> {
  const limit = subject.notDetectedBelow;
  if (limit === undefined) {
    return {
      kind: "unreadable",
      message: `${subject.name} ${quote(text)} is no reading: there is always some. Give a number.`,
    };
  }
  return {
    kind: "read",
    value: { estimate: { best: limit / 2, low: 0, high: limit }, censored: "below" },
    readAs: `not detected, taken as below ${limit} ${unitText(subject)}`,
  };
}

/** What a slip of the decimal mark or of the unit would have meant, where that is a usual value. */
function meantBy(subject: Parameter, word: string, text: string, habits: Habits) {
  const parts = /^([^\d]*)(\d+(?:[.,]\d+)?)(\D*)$/.exec(text);
  if (parts === null) return [];
  const [, before = "", digits = "", after = ""] = parts;
  const value = Number(digits.replace(",", "."));
  const scaled = [0.1, 10, 0.01, 0.001].map(
    (factor) => `${before}${Number((value * factor).toPrecision(6))}${after}`,
  );
  const isDegrees = subject.id === "temperature" && /^ ?(?:°? ?[cf]?|celsius|fahrenheit)$/i.test(after);
  const rescaled = isDegrees ? [`${before}${digits} °C`, `${before}${digits} °F`] : [];
  const choices = new Map<string, { label: string; text: string }>();
  for (const candidate of [...rescaled, ...scaled]) {
    const read = readUnchecked(subject, word.toLowerCase(), candidate, habits);
    if (candidate === text || read.kind !== "read" || !isNearUsual(subject, read.value.estimate.best))
      continue;
    if (!choices.has(read.readAs)) choices.set(read.readAs, { label: read.readAs, text: candidate });
  }
  return [...choices.values()].slice(0, 3);
}

function isNearUsual(subject: Parameter, value: number): boolean {
  return (
    Object.values(subject.usual).some(
      ({ min, max }) => value > 0 && value >= min / NEAR_USUAL && value <= max * NEAR_USUAL,
    ) && isPossible(subject, value)
  );
}

function inReach(subject: Parameter, { estimate }: Figure): boolean {
  return isPossible(subject, estimate.low) && isPossible(subject, estimate.high);
}

function basisOfWord(word: string): string {
  const basis = /(?:[- ]?(n|p)|[- ](?:as )?(nitrogen|phosphorus))$/i.exec(
    word.replace(/^(?:ammonium|carbon|(?:dissolved )?oxygen)$/i, ""),
  );
  if (/^tan$|^total ammonia nitrogen$/i.test(word)) return " as TAN";
  if (/^phosphorus$/i.test(word)) return " as P";
  if (basis === null) return "";
  return /^p/i.test(basis[1] ?? basis[2] ?? "") ? " as P" : " as N";
}

function whichUnit(text: string, units: readonly string[]): Read<Figure> {
  return {
    kind: "ask",
    question: `${quote(text)} has no unit. Which do you mean?`,
    choices: units.map((unit) => ({ label: `${text} ${unit}`, text: `${text} ${unit}` })),
  };
}

function figureOf(
  read: Read<{ readonly estimate: Estimate; readonly censored?: "below" | "above" }>,
): Read<Figure> {
  if (read.kind !== "read") return read;
  const { estimate, censored } = read.value;
  return {
    kind: "read",
    value: { estimate, ...(censored === undefined ? {} : { censored }) },
    readAs: read.readAs,
  };
}

function withUnit(read: Read<{ readonly estimate: Estimate }>, unit: string): Read<Figure> {
  if (read.kind !== "read") return read;
  return { kind: "read", value: { estimate: read.value.estimate }, readAs: `${read.readAs} ${unit}` };
}

function shown(value: number): string {
  return String(Number(value.toPrecision(3)));
}
