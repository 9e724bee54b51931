import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import { type Amount, type Grammar, Misread } from "./grammar.ts";
import type { DecimalMark } from "./number-text.ts";
import type { Habits, Read } from "./read.ts";
import { ask, bareNumber, type Measured, readText, sayBack, writeEstimate } from "./reader.ts";
import { type Basis, FORMS, formOf, type Substance } from "./substances.ts";
import { UNITS, type Unit } from "./unit-table.ts";
import type { MgPerL } from "./units.ts";

/** Milligrams per litre of whatever `basis` names: 20 mg/L of nitrate as N is four times that as the ion. */
export interface ConcentrationEntry extends Measured<MgPerL> {
  readonly basis: Basis;
  readonly substance?: Substance;
}

/** What a text says of its substance, with the words that say it taken away. */
interface Named {
  readonly figure: string;
  readonly substance?: Substance;
  readonly basis?: Basis;
}

interface Word {
  readonly text: string;
  readonly substance?: Substance;
  readonly basis: Basis;
}

const EXAMPLES = "“20 ppm”, “4.5 mg/L as N” or “30 µg/L”";
const GRAMMAR: Grammar = {
  noun: "a concentration",
  examples: EXAMPLES,
  units: UNITS.concentration,
  hasArithmetic: false,
  hasBounds: true,
  min: 0,
  max: 1e7,
};
/** mg/L between which a text with a doubtful mark is believed, where that helps. */
const LIKELY: Partial<Record<Substance, readonly [number, number]>> = {
  calcium: [20, 5000],
  magnesium: [20, 5000],
  potassium: [20, 5000],
};
const LIKELY_ANY = [0, 1e5] as const;

/** Longest first, so that "nitrate-n" is not read as "nitrate". */
const WORDS: readonly Word[] = [
  ...FORMS.flatMap(({ substance, basis, names }) => names.map((text) => ({ text, substance, basis }))),
  { text: "ammonia", substance: "ammonia" as const, basis: "ion" as const },
  { text: "nitrogen", basis: "N" as const },
  { text: "n", basis: "N" as const },
  { text: "p", basis: "P" as const },
  { text: "ion", basis: "ion" as const },
].sort((a, b) => b.text.length - a.text.length);

/**
 * A concentration, with its substance and basis where they are named: “4.5 mg/L as N”, “NO3-N 4.5 ppm”.
 * An ammonia without its basis is asked about: as N, as NH3 and as NH4 lie up to 29 % apart.
 */
export function readConcentration(
  typed: string,
  habits: Habits,
  options: { readonly substance?: Substance } = {},
): Read<ConcentrationEntry> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: ({ estimate, substance }) => {
      const [low, high] = (substance === undefined ? undefined : LIKELY[substance]) ?? LIKELY_ANY;
      return estimate.low >= low && estimate.high <= high;
    },
    read: (text, mark) => readCleaned(text, mark, habits, options.substance),
  });
}

/** Reads back as the same entry. */
export function formatConcentration({ estimate, basis, substance, censored }: ConcentrationEntry): string {
  const sign = censored === "below" ? "<" : censored === "above" ? ">" : "";
  const figure =
    censored === undefined
      ? writeEstimate(estimate, "mg/L")
      : `${sign}${writeEstimate({ ...estimate, best: estimate.high, low: estimate.high }, "mg/L")}`;
  const form = substance === undefined ? undefined : formOf(substance, basis);
  const label = form?.label ?? (basis === "ion" ? undefined : basis);
  return label === undefined ? figure : `${figure} as ${label}`;
}

function readCleaned(
  text: string,
  mark: DecimalMark,
  habits: Habits,
  asked: Substance | undefined,
): Read<ConcentrationEntry> {
  const named = withoutNames(text, asked);
  if (asked !== undefined && named.substance !== undefined && named.substance !== asked) {
    throw new Misread(`${quote(text)} names ${named.substance}, and I asked for ${asked}. Try ${EXAMPLES}.`);
  }
  const substance = named.substance ?? asked;
  const basis = named.basis ?? (substance === "ammonia" ? undefined : "ion");
  if (substance !== undefined && basis !== undefined && formOf(substance, basis) === undefined) {
    throw new Misread(`${substance} is not given as ${basis}. Try ${EXAMPLES}.`);
  }
  const amount = readMolarAmount(text, named.figure, mark, substance, basis);
  const again = (next: string) =>
    readConcentration(next, habits, asked === undefined ? {} : { substance: asked });
  const unit = amount.unit ?? impliedUnit(named);
  if (unit === undefined) {
    const offered = ["mg/L", "µg/L"];
    return bareNumber(
      text,
      amount,
      { grammar: GRAMMAR, offered, asksForUnit: substance !== undefined },
      again,
    );
  }
  const isMolar = unit.id.includes("mol");
  if (basis === undefined && !isMolar) {
    const withUnit = amount.unit === undefined ? `${named.figure} ${unit.id}` : named.figure;
    return ask(
      "Kits print ammonia as nitrogen, as NH3 or as NH4. Which does yours say?",
      ["TAN", "NH3", "NH4"].map((label) => `${withUnit} as ${label}`),
      again,
    );
  }
  const isPhosphateInBillionths = substance === "phosphate" && named.basis === undefined && unit.factor < 1;
  if (isPhosphateInBillionths && !isMolar) {
    return ask(
      "Meters that show so small a unit often show phosphorus, a third of the phosphate. Which is yours?",
      ["PO4-P", "PO4"].map((label) => `${named.figure} as ${label}`),
      again,
    );
  }
  const settled = basis ?? "N";
  const form = formOf(substance, settled);
  const label = form?.substance === substance ? form?.label : settled === "ion" ? undefined : settled;
  return {
    kind: "read",
    value: {
      estimate: amount.estimate as Estimate<MgPerL>,
      typedUnit: unit.id,
      basis: settled,
      ...(substance === undefined ? {} : { substance }),
      ...(amount.censored === undefined ? {} : { censored: amount.censored }),
    },
    readAs:
      sayBack(amount, unit, unit.id === "ppm" ? "ppm" : "mg/L") + (label === undefined ? "" : ` as ${label}`),
  };
}

/** Reads the figure with moles among the units where the substance gives them a mass. */
function readMolarAmount(
  text: string,
  figure: string,
  mark: DecimalMark,
  substance: Substance | undefined,
  basis: Basis | undefined,
): Amount {
  const gPerMol = formOf(substance, basis ?? "N")?.gPerMol;
  const amount = readAmount(
    figure,
    { ...GRAMMAR, units: [...GRAMMAR.units, ...molarUnits(gPerMol ?? 1)] },
    mark,
  );
  if (gPerMol === undefined && amount.unitSpans.some(({ unit }) => unit.id.includes("mol"))) {
    throw new Misread(
      `${quote(text)} counts moles, and I need to know of what. Try “20 µmol/L NO3” or ${EXAMPLES}.`,
    );
  }
  return amount;
}

function molarUnits(gPerMol: number): readonly Unit[] {
  return [
    {
      id: "mmol/L",
      factor: gPerMol,
      spellings: ["mmol/l", "mmol per l", "mmol per litre", "mmol per liter"],
    },
    {
      id: "µmol/L",
      factor: gPerMol / 1000,
      spellings: ["μmol/l", "umol/l", "μmol per l", "umol per l", "μm", "um"],
    },
  ];
}

/** A bare number beside a form of nitrogen is mg/L; phosphorus comes in µg/L as often, and is asked about. */
function impliedUnit({ substance, basis }: Named): Unit | undefined {
  const isNitrogen =
    basis === "N" || substance === "nitrate" || substance === "nitrite" || substance === "ammonia";
  return isNitrogen ? UNITS.concentration[0] : undefined;
}

/** Takes "NO3-N" off the front, and "as N", "(N)" or "nitrate" off the end. */
function withoutNames(text: string, asked: Substance | undefined): Named {
  let figure = unfoldUnit(text);
  let substance: Substance | undefined;
  let basis: Basis | undefined;
  for (let word = nextName(figure, asked); word !== undefined; word = nextName(figure, asked)) {
    const { found, rest } = word;
    if (substance !== undefined && found.substance !== undefined && found.substance !== substance) {
      throw new Misread(`${quote(text)} names both ${substance} and ${found.substance}. Try ${EXAMPLES}.`);
    }
    substance = found.substance ?? substance;
    const isPlainName = found.basis === "ion" && found.text !== "ion";
    // "nitrate 4.5 as N": the name alone says less than the basis beside it.
    basis = isPlainName ? (basis ?? plainBasis(found)) : found.basis;
    figure = rest;
  }
  return {
    figure,
    ...(substance === undefined ? {} : { substance }),
    ...(basis === undefined ? {} : { basis }),
  };
}

function plainBasis({ substance }: Word): Basis | undefined {
  return substance === "ammonia" ? undefined : "ion";
}

/** "4.5 mg N/L" as "4.5 mg/L N". */
function unfoldUnit(text: string): string {
  const folded = /\b(mg|μg|ug) ?(no3-n|no2-n|nh3-n|nh4-n|po4-p|no3|no2|nh3|nh4|po4|n|p) ?\/ ?l\b/i.exec(text);
  return folded === null
    ? text
    : `${text.slice(0, folded.index)}${folded[1]}/L ${folded[2]}${text.slice(folded.index + folded[0].length)}`;
}

function nextName(text: string, asked: Substance | undefined): { found: Word; rest: string } | undefined {
  const lower = text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
  for (const found of WORDS) {
    const size = found.text.length;
    if (
      lower.startsWith(found.text) &&
      /^[\s\d:=<>~(]/.test(lower.slice(size)) &&
      isMeant(found, text, 0, asked)
    ) {
      return { found, rest: text.slice(size).replace(/^[\s:=]+/, "") };
    }
    const inner = lower.endsWith(")") ? lower.length - 1 : lower.length;
    const start = inner - size;
    if (start > 0 && lower.startsWith(found.text, start)) {
      const before = text.slice(0, start);
      const said = / ?\(?(?:\bas )$/i.exec(before) ?? /(?: ?\(| )$/.exec(before);
      const isClosed = inner === lower.length || said?.[0].includes("(") === true;
      const isSaid = said !== null && said.index > 0;
      if (isSaid && isClosed && (/as $/i.test(said[0]) || isMeant(found, text, start, asked))) {
        return { found, rest: before.slice(0, said.index) };
      }
    }
  }
  return undefined;
}

/** A symbol of one or two letters is one only as chemists write it: "mg" is not magnesium, nor "ca" calcium. */
function isMeant(
  { text, substance }: Word,
  typed: string,
  start: number,
  asked: Substance | undefined,
): boolean {
  if (text.length > 2 || (start === 0 && substance === asked && substance !== undefined)) {
    return true;
  }
  const written = typed.slice(start, start + text.length);
  const isSymbol = written === (text[0] ?? "").toUpperCase() + text.slice(1);
  return isSymbol || written === "DO" || (substance === undefined && start > 0);
}
