import { quote } from "./clean.ts";
import { Misread } from "./grammar.ts";
import type { GravityScale } from "./read.ts";
import { as, type DegreesC } from "./units.ts";

/** A salinity text taken apart: the figure with its unit, and what was said of the instrument. */
export interface GravityText {
  /** A leading part of the text. */
  readonly figure: string;
  readonly gravity?: GravityScale;
  readonly temperatureC?: DegreesC;
  /** Whether the meter brings its figure to 25 °C. */
  readonly isCompensated?: boolean;
}

const SIXTY_F_C = (60 - 32) / 1.8;
/** A pair with a number above this is in °F. */
const WARMEST_C = 45;
const NUMBER = String.raw`(-?\d{1,3}(?:[.,]\d{1,17})?)`;
const DEGREE = String.raw`\s?(?:°|deg(?:rees)?)?\s?([cf])?`;
/** "(25/25)", "at 60/60 °F", "d 20/4" at the end of the text. */
const PAIR = new RegExp(
  String.raw`\s?(?:\(|at |@ ?|d ?)?${NUMBER}${DEGREE}\s?\/\s?${NUMBER}${DEGREE}\s?\)?$`,
  "i",
);
/** "at 20 C", "@25" at the end. */
const TEMPERATURE = new RegExp(String.raw`\s?(?:\(|\bat |@ ?)(?:at )?${NUMBER}${DEGREE}\s?\)?$`, "i");
const UNCOMPENSATED =
  /[\s,(]*\b(?:uncompensated|not compensated|as measured|without compensation|without atc|no atc|raw)\s?\)?$/i;
const COMPENSATED = /[\s,(]*\b(?:temperature compensated|compensated|with atc|atc)\s?\)?$/i;

/** Takes the instrument's conditions off the end of a cleaned text. Throws: Misread. */
export function splitConditions(text: string): GravityText {
  let figure = text;
  let gravity: GravityScale | undefined;
  let temperatureC: DegreesC | undefined;
  let isCompensated: boolean | undefined;
  for (let found = true; found; ) {
    const before = figure;
    const pair = PAIR.exec(figure);
    const temperature = TEMPERATURE.exec(figure);
    if (UNCOMPENSATED.test(figure)) {
      figure = figure.replace(UNCOMPENSATED, "");
      isCompensated = false;
    } else if (COMPENSATED.test(figure)) {
      figure = figure.replace(COMPENSATED, "");
      isCompensated = true;
    } else if (pair !== null && gravity === undefined && isPair(pair, figure)) {
      gravity = gravityOf(pair);
      figure = figure.slice(0, pair.index);
    } else if (temperature !== null && temperatureC === undefined && temperature.index > 0) {
      temperatureC = as<DegreesC>(celsius(temperature[1], temperature[2] ?? ""));
      figure = figure.slice(0, temperature.index);
    }
    found = figure !== before;
  }
  const temperatures = [gravity?.sampleC, gravity?.referenceC, temperatureC].filter((t) => t !== undefined);
  if (temperatures.some((t) => t < 0 || t > WARMEST_C)) {
    throw new Misread(
      `${quote(text)} names a temperature that no sample of sea water is measured at. Try “25/25”.`,
    );
  }
  return {
    figure,
    ...(gravity === undefined ? {} : { gravity }),
    ...(temperatureC === undefined ? {} : { temperatureC }),
    ...(isCompensated === undefined ? {} : { isCompensated }),
  };
}

/** "25/25 °C"; the pair at 60 °F keeps its usual name. */
export function gravityText({ sampleC, referenceC }: GravityScale): string {
  return sampleC === SIXTY_F_C && referenceC === SIXTY_F_C ? "60/60 °F" : `${sampleC}/${referenceC} °C`;
}

/** Tells "25/25" from the fraction in "35 1/2": no reference lies below 4 °C. */
function isPair(pair: RegExpExecArray, figure: string): boolean {
  const values = [numberOf(pair[1]), numberOf(pair[3])];
  return pair.index > 0 && /\d/.test(figure.slice(0, pair.index)) && Math.min(...values) >= 4;
}

function gravityOf(pair: RegExpExecArray): GravityScale {
  const unit = (pair[4] ?? pair[2] ?? "").toLowerCase();
  const isFahrenheit =
    unit === "f" || (unit === "" && Math.max(numberOf(pair[1]), numberOf(pair[3])) > WARMEST_C);
  const scale = isFahrenheit ? "f" : "c";
  return { sampleC: celsius(pair[1], scale), referenceC: celsius(pair[3], scale) };
}

function celsius(text: string | undefined, unit: string): number {
  const value = numberOf(text);
  const isFahrenheit = unit.toLowerCase() === "f" || (unit === "" && value > WARMEST_C);
  return isFahrenheit ? (value - 32) / 1.8 : value;
}

function numberOf(text: string | undefined): number {
  return Number((text ?? "").replace(",", "."));
}
