import { type Estimate, exactly, mapEstimate } from "../quantity/estimate.ts";
import { readMass } from "../quantity/mass.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { as, type KgPerM3 } from "../quantity/units.ts";
import { readVolume } from "../quantity/volume.ts";
import type { Strength, StrengthKind } from "./strength.ts";

const EXAMPLES = "“40 % v/v”, “10 mg/mL”, “50 g in 1 L” or “1 part in 5”";

const PERCENT_SUFFIXES: readonly { readonly kind: StrengthKind; readonly words: RegExp }[] = [
  { kind: "% w/v", words: /^(w\/v|m\/v|weight by volume)$/ },
  { kind: "% v/v", words: /^(v\/v|vol|abv|by volume|alcohol|proof volume)\.?$/ },
  { kind: "% w/w", words: /^(w\/w|m\/m|by weight|by mass)$/ },
];

const UNITS: readonly { readonly kind: StrengthKind; readonly words: RegExp }[] = [
  { kind: "mg/mL", words: /^mg ?(\/|per) ?ml$/ },
  { kind: "g/L", words: /^g ?(\/|per) ?l$/ },
  { kind: "mg/L", words: /^(mg ?(\/|per) ?l|ppm)$/ },
];

/** How strong a liquid is, as its label or a recipe says it. A bare per cent and “1:5” are asked about. */
export function readStrength(typed: string, habits: Habits): Read<Strength> {
  const text = typed.trim().toLowerCase().replace(/\s+/g, " ").slice(0, 200);
  return (
    readRatio(text) ??
    readPercent(text, habits) ??
    readDissolved(text, habits) ??
    readPerVolume(text, habits) ?? {
      kind: "unreadable",
      message: `“${typed.trim().slice(0, 40)}” is not a strength I can read. Try ${EXAMPLES}.`,
    }
  );
}

function readRatio(text: string): Read<Strength> | undefined {
  const ratio = /^(\d{1,6}(?:\.\d{1,6})?) ?(?:parts? )?(:|in|to) ?(\d{1,6}(?:\.\d{1,6})?)(?: parts?)?$/.exec(
    text,
  );
  if (ratio === null) return undefined;
  const [, first = "", joiner = "", second = ""] = ratio;
  const a = Number(first);
  const b = Number(second);
  if (!(a > 0 && b > 0) || (joiner === "in" && a > b))
    return {
      kind: "unreadable",
      message: `“${text}” holds more parts than the whole. Try “1 part in 5” or “1 part to 5”.`,
    };
  if (joiner === ":")
    return {
      kind: "ask",
      question: `Does ${first}:${second} mean ${first} part in ${second} of the whole, or ${first} part to ${second} of the other?`,
      choices: [
        ...(a <= b
          ? [
              {
                label: `${first} in ${second} (${percent(a / b)} of the whole)`,
                text: `${first} part in ${second}`,
              },
            ]
          : []),
        {
          label: `${first} to ${second} (${percent(a / (a + b))} of the whole)`,
          text: `${first} part to ${second}`,
        },
      ],
    };
  const share = joiner === "in" ? a / b : a / (a + b);
  return {
    kind: "read",
    value: { kind: "parts", value: exactly(share) },
    readAs: `${first} part ${joiner} ${second}: ${percent(share)} of the whole by volume`,
  };
}

function readPercent(text: string, habits: Habits): Read<Strength> | undefined {
  const split =
    /^([^%]{1,60})% ?([a-z/. ]{0,30}?)(?:,? (?:at |density:? )?(\d[^a-z]{0,20}) ?(kg\/l|g\/ml|kg\/m³|kg\/m3))?$/.exec(
      text,
    );
  if (split === null) return undefined;
  const [, number = "", suffix = "", heavy, heavyUnit = ""] = split;
  const amount = readPlainNumber(number, habits);
  if (amount.kind !== "read")
    return amount.kind === "ask"
      ? {
          ...amount,
          choices: amount.choices.map(({ label, text: again, ...rest }) => ({
            ...rest,
            label,
            text: `${again}${text.slice(number.length)}`,
          })),
        }
      : amount;
  const { estimate } = amount.value;
  if (estimate.high > 100)
    return { kind: "unreadable", message: `“${text}” is more than the whole. Try ${EXAMPLES}.` };
  const known = PERCENT_SUFFIXES.find(({ words }) => words.test(suffix.trim()));
  if (known?.kind === "% w/w" && heavy !== undefined) return withDensity(estimate, heavy, heavyUnit, habits);
  if (heavy !== undefined) return undefined;
  if (known !== undefined) return read(estimate, known.kind);
  if (suffix.trim() !== "") return undefined;
  const shown = number.trim();
  return {
    kind: "ask",
    question: `${shown} % of what? Alcohol is labelled by volume, solids dissolved in water as grams per 100 mL.`,
    choices: [
      { label: `${shown} % by volume (mL in 100 mL)`, text: `${shown} % v/v` },
      { label: `${shown} % weight in volume (g in 100 mL)`, text: `${shown} % w/v` },
      { label: `${shown} % by weight (g in 100 g)`, text: `${shown} % w/w` },
    ],
  };
}

/** "30 % w/w 1.15 kg/L": by weight, with what a litre of the liquid weighs. */
function withDensity(percentage: Estimate, typed: string, unit: string, habits: Habits): Read<Strength> {
  const heavy = readPlainNumber(typed, habits);
  if (heavy.kind !== "read")
    return {
      kind: "unreadable",
      message: `“${typed.trim()} ${unit}” is not a density I can read. Try “30 % w/w 1.15 kg/L”.`,
    };
  const perLitre = unit === "kg/m³" || unit === "kg/m3" ? 1 : 1000;
  const density = mapEstimate(heavy.value.estimate, (value) => as<KgPerM3>(value * perLitre));
  return {
    kind: "read",
    value: { kind: "% w/w", value: percentage, density },
    readAs: `${showEstimate(percentage, "% w/w")} at ${showEstimate(density, "kg/m³")}`,
  };
}

/** "50 g in 1 L": made up to that volume. */
function readDissolved(text: string, habits: Habits): Read<Strength> | undefined {
  const [massText, volumeText, ...more] = text.split(/ (?:in|per|made up to) /);
  if (massText === undefined || volumeText === undefined || more.length > 0) return undefined;
  const mass = readMass(massText, habits);
  const volume = readVolume(/^[a-z]/.test(volumeText) ? `1 ${volumeText}` : volumeText, habits);
  if (mass.kind !== "read") return mass.kind === "unreadable" ? mass : undefined;
  if (volume.kind === "ask")
    return {
      ...volume,
      choices: volume.choices.map(({ text: again, ...rest }) => ({
        ...rest,
        text: `${massText} in ${again}`,
      })),
    };
  if (volume.kind === "unreadable") return volume;
  const kg = mass.value.estimate;
  const litres = volume.value.estimate;
  if (litres.low <= 0)
    return { kind: "unreadable", message: `“${text}” has no volume to be dissolved in. Try ${EXAMPLES}.` };
  const gramsPerL: Estimate = {
    best: (kg.best * 1000) / litres.best,
    low: (kg.low * 1000) / litres.high,
    high: (kg.high * 1000) / litres.low,
  };
  return read(gramsPerL, "g/L");
}

function readPerVolume(text: string, habits: Habits): Read<Strength> | undefined {
  for (const { kind, words } of UNITS) {
    const at = text.search(/(mg|g|ppm)( ?(\/|per) ?m?l)?$/);
    if (at <= 0 || !words.test(text.slice(at))) continue;
    const amount = readPlainNumber(text.slice(0, at), habits);
    if (amount.kind === "read") return read(amount.value.estimate, kind);
    if (amount.kind === "unreadable") return amount;
    return {
      ...amount,
      choices: amount.choices.map(({ text: again, ...rest }) => ({ ...rest, text: `${again} ${kind}` })),
    };
  }
  return undefined;
}

function read(value: Estimate, kind: StrengthKind): Read<Strength> {
  if (value.low < 0)
    return { kind: "unreadable", message: `A strength below zero cannot be. Try ${EXAMPLES}.` };
  return {
    kind: "read",
    value: { kind, value },
    readAs: showEstimate(value, kind),
  };
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}
