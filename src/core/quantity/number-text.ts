/** Numbers as people write them: group marks, point or comma, fractions, exponents. */

export type DecimalMark = "." | ",";

export interface NumberText {
  readonly start: number;
  readonly end: number;
  /** Infinite when it overflows; NaN when the marks make no number or a fraction divides by zero. */
  readonly value: number;
  /** Digits written after the decimal mark. */
  readonly decimals: number;
  /** The one mark in a text like "1,200" or "1.200", which may group thousands or start the decimals. */
  readonly doubtfulMark?: DecimalMark;
}

/** The number that begins at `at` in cleaned text, or undefined when none does. Linear in the length read. */
export function scanNumber(text: string, at: number, decimalMark: DecimalMark): NumberText | undefined {
  const first = text[at];
  const hasLeadingMark = (first === "." || first === ",") && isDigit(text[at + 1]);
  if (!isDigit(first) && !hasLeadingMark) {
    return undefined;
  }
  const end = bodyEnd(text, at);
  const body = text.slice(at, end);
  const plain = body.replace(/[ ']/g, "");
  if (/^\d+$/.test(plain)) {
    const fraction = scanFraction(text, at, end, Number(plain));
    if (fraction !== undefined) {
      return fraction;
    }
  }
  const exponent = scanExponent(text, end);
  const isGroupedBySpace = plain.length !== body.length;
  const mayGroup = exponent === "" && !isGroupedBySpace && /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain);
  const decimal = plainDecimal(plain, mayGroup ? decimalMark : undefined);
  return {
    start: at,
    end: end + exponent.length,
    value: decimal === undefined ? Number.NaN : Number(decimal + exponent),
    decimals: decimal?.split(".")[1]?.length ?? 0,
    ...(mayGroup ? { doubtfulMark: plain.includes(".") ? "." : "," } : {}),
  };
}

/** Every number in the text whose mark could be read both ways. */
export function doubtfulNumbers(text: string): readonly NumberText[] {
  const found: NumberText[] = [];
  let at = 0;
  while (at < text.length) {
    const number = scanNumber(text, at, ".");
    if (number?.doubtfulMark !== undefined) {
      found.push(number);
    }
    at = number?.end ?? at + 1;
  }
  return found;
}

/** The same text with each doubtful number written so that only one reading is left. */
export function settleMarks(text: string, decimalMark: DecimalMark): string {
  let settled = "";
  let from = 0;
  for (const { start, end, doubtfulMark = "." } of doubtfulNumbers(text)) {
    const [whole = "", rest = ""] = text.slice(start, end).split(doubtfulMark);
    const number = doubtfulMark === decimalMark ? shorten(`${whole}.${rest}`) : whole + rest;
    settled += text.slice(from, start) + number;
    from = end;
  }
  return settled + text.slice(from);
}

/** A number as text that reads back as the same number under every habit: three decimals get a fourth. */
export function writeNumber(value: number): string {
  const text = String(value).replace("e+", "e");
  return /^-?\d{1,3}\.\d{3}$/.test(text) ? `${text}0` : text;
}

/** "1.200" as "1.2", and "1.234" as "1.2340": anything but three decimals. */
function shorten(decimal: string): string {
  return decimal.endsWith("0") && !decimal.endsWith(".000") ? decimal.replace(/0+$/, "") : `${decimal}0`;
}

function bodyEnd(text: string, at: number): number {
  let end = at;
  let hasMark = false;
  let groupStart = at;
  while (end < text.length) {
    const char = text[end];
    if (isDigit(char)) {
      end += 1;
    } else if ((char === "." || char === ",") && isDigit(text[end + 1])) {
      hasMark = true;
      end += 1;
    } else if ((char === "'" || char === " ") && !hasMark && opensGroup(text, end + 1)) {
      const digits = end - groupStart;
      const isFirstGroup = groupStart === at;
      if (text[at] === "0" || (isFirstGroup ? digits > 3 : digits !== 3)) {
        break;
      }
      end += 1;
      groupStart = end;
    } else {
      break;
    }
  }
  return end;
}

function opensGroup(text: string, at: number): boolean {
  return (
    isDigit(text[at]) &&
    isDigit(text[at + 1]) &&
    isDigit(text[at + 2]) &&
    !isDigit(text[at + 3]) &&
    text[at + 3] !== "/"
  );
}

/** "1/2", or "1 1/2" whose whole part has just been read. */
function scanFraction(text: string, at: number, end: number, whole: number): NumberText | undefined {
  const isMixed = text[end] === " ";
  const numeratorStart = isMixed ? end + 1 : at;
  const slash = isMixed ? digitsEnd(text, numeratorStart) : end;
  const fractionEnd = digitsEnd(text, slash + 1);
  if (text[slash] !== "/" || slash === numeratorStart || fractionEnd === slash + 1) {
    return undefined;
  }
  const numerator = isMixed ? Number(text.slice(numeratorStart, slash)) : whole;
  const denominator = Number(text.slice(slash + 1, fractionEnd));
  const share = denominator === 0 ? Number.NaN : numerator / denominator;
  return { start: at, end: fractionEnd, value: isMixed ? whole + share : share, decimals: 0 };
}

function scanExponent(text: string, at: number): string {
  if (text[at] !== "e") {
    return "";
  }
  const digits = text[at + 1] === "-" || text[at + 1] === "+" ? at + 2 : at + 1;
  const end = digitsEnd(text, digits);
  return end === digits ? "" : text.slice(at, end);
}

/** The digits with a point for the decimal mark and nothing between groups; undefined when the marks make no number. */
function plainDecimal(plain: string, settledMark: DecimalMark | undefined): string | undefined {
  const marks = plain.replace(/\d/g, "");
  if (marks === "") {
    return plain;
  }
  const last = marks[marks.length - 1] as DecimalMark;
  const isOneKind = marks === last.repeat(marks.length);
  const isDecimal = settledMark === undefined ? !isOneKind || marks.length === 1 : settledMark === last;
  const cut = isDecimal ? plain.lastIndexOf(last) : plain.length;
  const whole = plain.slice(0, cut);
  const groups = whole.split(/[.,]/);
  const areGroups = groups.length === 1 || groups.every((group, i) => isGroup(group, i === 0));
  const groupMarks = whole.replace(/\d/g, "");
  if (!areGroups || (isDecimal && groupMarks.includes(last)) || new Set(groupMarks).size > 1) {
    return undefined;
  }
  return groups.join("") + (isDecimal ? `.${plain.slice(cut + 1)}` : "");
}

function isGroup(digits: string, isFirst: boolean): boolean {
  return isFirst ? /^[1-9]\d{0,2}$/.test(digits) : digits.length === 3;
}

function digitsEnd(text: string, at: number): number {
  let end = at;
  while (isDigit(text[end])) {
    end += 1;
  }
  return end;
}

function isDigit(char: string | undefined): boolean {
  return char !== undefined && char >= "0" && char <= "9";
}
