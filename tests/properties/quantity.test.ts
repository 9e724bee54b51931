import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatAlkalinity, readAlkalinity } from "../../src/core/quantity/alkalinity.ts";
import { formatConcentration, readConcentration } from "../../src/core/quantity/concentration.ts";
import { formatCount, readCount } from "../../src/core/quantity/count.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { formatFlow, readFlow } from "../../src/core/quantity/flow.ts";
import { formatFraction, readFraction } from "../../src/core/quantity/fraction.ts";
import { formatLength, readLength } from "../../src/core/quantity/length.ts";
import { formatMass, readMass } from "../../src/core/quantity/mass.ts";
import { formatMoney, readMoney } from "../../src/core/quantity/money.ts";
import { formatPH, readPH } from "../../src/core/quantity/ph.ts";
import { formatPlainNumber, readPlainNumber } from "../../src/core/quantity/plain-number.ts";
import { formatPower, readPower } from "../../src/core/quantity/power.ts";
import type { Habits, Read } from "../../src/core/quantity/read.ts";
import { formatSalinity, readSalinity } from "../../src/core/quantity/salinity.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { formatSpan, readSpan } from "../../src/core/quantity/span.ts";
import { FORMS } from "../../src/core/quantity/substances.ts";
import { suggestUnits } from "../../src/core/quantity/suggest.ts";
import {
  formatTemperature,
  formatTemperatureDifference,
  readTemperature,
  readTemperatureDifference,
} from "../../src/core/quantity/temperature.ts";
import { convert, UNITS, type Unit } from "../../src/core/quantity/unit-table.ts";
import { formatVolume, readVolume } from "../../src/core/quantity/volume.ts";

type Reader = (text: string, habits: Habits) => Read<unknown>;
const READERS: readonly (readonly [name: string, read: Reader])[] = [
  ["readVolume", readVolume],
  ["readMass", readMass],
  ["readLength", readLength],
  ["readTemperature", readTemperature],
  ["readTemperatureDifference", readTemperatureDifference],
  ["readFlow", readFlow],
  ["readPower", readPower],
  ["readSpan", readSpan],
  ["readMoney", readMoney],
  ["readFraction", readFraction],
  ["readPlainNumber", readPlainNumber],
  ["readCount", readCount],
  ["readPH", readPH],
  ["readSalinity", readSalinity],
  ["readAlkalinity", readAlkalinity],
  ["readConcentration", (text, habits) => readConcentration(text, habits)],
  [
    "readConcentration of ammonia",
    (text, habits) => readConcentration(text, habits, { substance: "ammonia" }),
  ],
  [
    "readConcentration of phosphate",
    (text, habits) => readConcentration(text, habits, { substance: "phosphate" }),
  ],
];

const habits: fc.Arbitrary<Habits> = fc.record(
  {
    gallon: fc.constantFrom("US" as const, "imperial" as const),
    decimal: fc.constantFrom("point" as const, "comma" as const),
    gravity: fc.constantFrom({ sampleC: 25, referenceC: 25 }, { sampleC: 20, referenceC: 4 }),
    conductivity: fc.constantFrom("at 25 °C" as const, "as measured" as const),
  },
  { requiredKeys: [] },
);

const anything = fc.oneof(
  fc.string({ unit: "binary", maxLength: 2000 }),
  fc.string({ unit: "grapheme", maxLength: 250 }),
  fc.string({
    unit: fc.constantFrom("\ud800", "\udfff", "\u202e", "\u0000", "½", "³", "ﷺ", "1", "/", " "),
    maxLength: 250,
  }),
);

/** Texts put together from the pieces that readings are made of, where the turnings are. */
const nearly = fc
  .array(
    fc.oneof(
      {
        weight: 4,
        arbitrary: fc.constantFrom(
          "1",
          "26",
          "1.026",
          "1,200",
          "1.200",
          "0.5",
          "35",
          "1e3",
          "1e309",
          "½",
          "1 200",
          "1'200",
          "12.345.678",
          "1/0",
          "0",
          "-3",
          "٣",
        ),
      },
      {
        weight: 4,
        arbitrary: fc.constantFrom(
          ...Object.values(UNITS).flatMap((units: readonly Unit[]) =>
            units.flatMap(({ spellings }) => spellings),
          ),
          ..."ppt psu sg SG mS µS/cm g/kg % $ € EUR pH NO3-N Ca mg as N (N) 25/25 60/60°F".split(" "),
          "at 20 C uncompensated",
          "at 25 °C",
          "compensated",
        ),
      },
      {
        weight: 3,
        arbitrary: fc.constantFrom(
          "±",
          "+/-",
          "+",
          "x",
          "×",
          "-",
          "–",
          "to",
          "between",
          "and",
          "from",
          "about",
          "~",
          "<",
          ">",
          "(",
          ")",
          "%",
          "by",
          ".",
        ),
      },
    ),
    { maxLength: 12 },
  )
  .chain((pieces) => fc.constantFrom(pieces.join(" "), pieces.join("")));

const NUMBERS = [
  "1",
  "26",
  "1.026",
  "1,026",
  "1,200",
  "1.200",
  "0.5",
  "35",
  "8.1",
  "53",
  "1026",
  "2 1/2",
  "-3",
  "1 200",
];
const UNIT_TEXTS = [
  ...Object.values(UNITS).flatMap((units: readonly Unit[]) => units.map(({ id }) => id)),
  ...["", "", "", "ppt", "SG", "mS", "g/kg", "%", "€", "pH", "gph", "fish", "NO3-N", "ppb"],
];
/** Texts of the right build, most of which some reader takes. */
const built = fc
  .tuple(
    fc.constantFrom("", "", "", "about ", "~", "<", "between ", "Ca ", "NO3 ", "$", "pH ", "SG "),
    fc.constantFrom(...NUMBERS),
    fc.constantFrom(...UNIT_TEXTS),
    fc.constantFrom("", "", "", " to ", "-", " ± ", " x ", " + ", " and ", " ("),
    fc.constantFrom(...NUMBERS),
    fc.constantFrom(...UNIT_TEXTS, ")"),
    fc.constantFrom("", "", "", " 25/25", " at 24 °C", " at 22 C uncompensated", " as N", " %"),
  )
  .map(([opening, a, unit, joint, b, other, ending]) =>
    joint === "" ? `${opening}${a} ${unit}${ending}` : `${opening}${a} ${unit}${joint}${b} ${other}${ending}`,
  );

describe.each(READERS)("%s", (_, read) => {
  it("answers any text at all, and at once", () => {
    fc.assert(
      fc.property(fc.oneof(anything, nearly, built), habits, (text, known) => {
        const outcome = read(text, known);
        expect(["read", "ask", "unreadable"]).toContain(outcome.kind);
      }),
      { numRuns: 400 },
    );
  });

  it("reads finite figures, in order", () => {
    fc.assert(
      fc.property(fc.oneof(nearly, built), habits, (text, known) => {
        const outcome = read(text, known);
        if (outcome.kind !== "read") {
          return;
        }
        for (const { best, low, high } of estimatesIn(outcome.value)) {
          expect([best, low, high].every(Number.isFinite)).toBe(true);
          expect(low).toBeLessThanOrEqual(best);
          expect(best).toBeLessThanOrEqual(high);
        }
        expect(outcome.readAs).not.toMatch(/NaN|undefined|Infinity/);
      }),
      { numRuns: 1000 },
    );
  });

  it("offers only choices that read without asking again, each differently", () => {
    fc.assert(
      fc.property(fc.oneof(nearly, built), habits, (text, known) => {
        const outcome = read(text, known);
        if (outcome.kind !== "ask") {
          return;
        }
        expect(outcome.choices.length).toBeGreaterThan(0);
        for (const choice of outcome.choices) {
          expect(read(choice.text, known)).toMatchObject({ kind: "read", readAs: choice.label });
        }
        expect(new Set(outcome.choices.map(({ label }) => label)).size).toBe(outcome.choices.length);
      }),
      { numRuns: 1000 },
    );
  });

  it("explains itself in one line, without the member's control characters or long quotations", () => {
    fc.assert(
      fc.property(fc.oneof(anything, nearly, built), habits, (text, known) => {
        const outcome = read(text, known);
        const said =
          outcome.kind === "unreadable" ? outcome.message : outcome.kind === "ask" ? outcome.question : "";
        expect(said).not.toMatch(/[\p{Cc}\p{Cs}\u202a-\u202e]/u);
        for (const [, quoted = ""] of said.matchAll(/“([^”]*)”/g)) {
          expect(Array.from(quoted).length).toBeLessThanOrEqual(40);
        }
      }),
      { numRuns: 400 },
    );
  });
});

/** Figures as instruments and people give them, with and without a range. */
const figures = (min: number, max: number): fc.Arbitrary<Estimate> =>
  fc
    .tuple(
      fc.double({ min, max, noNaN: true }),
      fc.double({ min, max, noNaN: true }),
      fc.double({ min, max, noNaN: true }),
      fc.boolean(),
      fc.integer({ min: 0, max: 6 }),
    )
    .map(([a, b, c, isExact, decimals]) => {
      const [low = 0, best = 0, high = 0] = [a, b, c]
        .map((value) => Number(value.toFixed(decimals)))
        .map((value) => (value === 0 ? 0 : value))
        .sort((x, y) => x - y);
      return isExact ? { best, low: best, high: best } : { best, low, high };
    });

type Kind = readonly [
  name: string,
  min: number,
  max: number,
  format: (e: Estimate<never>) => string,
  read: Reader,
];
const KINDS: readonly Kind[] = [
  ["volume", 0, 1e6, (estimate) => formatVolume({ estimate }), readVolume],
  ["mass", 0, 1e6, formatMass, readMass],
  ["length", 0, 1e6, formatLength, readLength],
  ["temperature", -200, 1000, formatTemperature, readTemperature],
  ["temperature difference", -100, 100, formatTemperatureDifference, readTemperatureDifference],
  ["flow", 0, 1e6, formatFlow, readFlow],
  ["power", 0, 1e6, formatPower, readPower],
  ["span", 0, 1e6, formatSpan, readSpan],
  ["fraction", 0, 1, formatFraction, readFraction],
  ["number", -1e6, 1e6, formatPlainNumber, readPlainNumber],
  ["pH", 0, 14, formatPH, readPH],
  ["alkalinity", 0, 1000, formatAlkalinity, readAlkalinity],
  ["money", 0, 1e6, (estimate) => formatMoney({ estimate, currency: "€" }), readMoney],
];

describe("parse ∘ format is identity", () => {
  it.each(KINDS)("for a %s, under every habit", (_, min, max, format, read) => {
    fc.assert(
      fc.property(figures(min, max), habits, (estimate, known) => {
        expect(read(format(estimate as Estimate<never>), known)).toMatchObject({
          kind: "read",
          value: { estimate },
        });
      }),
      { numRuns: 500 },
    );
  });

  it("for a count", () => {
    fc.assert(
      fc.property(figures(0, 1e6), habits, (raw, known) => {
        const estimate = { best: Math.round(raw.best), low: Math.floor(raw.low), high: Math.ceil(raw.high) };
        const whole =
          raw.low === raw.high ? { best: estimate.best, low: estimate.best, high: estimate.best } : estimate;
        expect(readCount(formatCount(whole), known)).toMatchObject({
          kind: "read",
          value: { estimate: whole },
        });
      }),
    );
  });

  it("for a concentration of any form, censored or not", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FORMS),
        figures(0, 1e4),
        fc.constantFrom(undefined, "below" as const, "above" as const),
        habits,
        (form, estimate, censored, known) => {
          const { substance, basis } = form;
          const end = estimate.high;
          const shown =
            censored === undefined
              ? estimate
              : {
                  best: censored === "below" ? end / 2 : end,
                  low: censored === "below" ? 0 : end,
                  high: end,
                };
          const entry = {
            estimate: shown as Estimate<never>,
            typedUnit: "mg/L",
            substance,
            basis,
            ...(censored === undefined ? {} : { censored }),
          };
          expect(readConcentration(formatConcentration(entry), known)).toMatchObject({
            kind: "read",
            value: entry,
          });
          expect(readConcentration(formatConcentration(entry), known, { substance })).toMatchObject({
            value: entry,
          });
        },
      ),
      { numRuns: 500 },
    );
  });

  it("for a salinity on each of its scales", () => {
    const texts = fc.oneof(
      fc.tuple(figures(0, 60), fc.constantFrom("ppt", "g/kg", "g/L at 24 °C")),
      fc.tuple(figures(1, 1.04), fc.constantFrom("SG 25/25", "SG 60/60 °F", "SG 20/20")),
      fc.tuple(figures(1, 60), fc.constantFrom("mS/cm at 25 °C", "mS/cm at 22.5 °C uncompensated")),
    );
    fc.assert(
      fc.property(texts, habits, ([{ best }, unit], known) => {
        const once = readSalinity(`${best.toFixed(4)} ${unit}`, known);
        expect(once.kind).toBe("read");
        if (once.kind === "read") {
          const again = readSalinity(formatSalinity(once.value), known);
          expect(again).toMatchObject({ kind: "read", value: once.value });
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe("units", () => {
  it("convert there and back", () => {
    const pairs = Object.values(UNITS).flatMap((units: readonly Unit[]) =>
      units
        .filter(({ asks }) => asks === undefined)
        .flatMap((a) => units.filter(({ asks }) => asks === undefined).map((b) => [a.id, b.id] as const)),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        ([a, b], value) => {
          const there = convert(value, a, b);
          const back = there === undefined ? undefined : convert(there, b, a);
          expect(Math.abs((back ?? Number.NaN) - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, value));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("are spelled once each within a kind", () => {
    for (const units of Object.values(UNITS) as readonly (readonly Unit[])[]) {
      const spellings = units.flatMap((unit) => unit.spellings);
      expect(spellings.filter((spelling, i) => spellings.indexOf(spelling) !== i)).toEqual([]);
    }
  });

  it("are suggested as texts that read", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom("", " ", " g", "l", " us", " m"),
        (number, tail) => {
          for (const text of suggestUnits("volume", `${number}${tail}`)) {
            expect(readVolume(text, {}).kind).toBe("read");
          }
        },
      ),
    );
  });
});

describe("shown figures", () => {
  it("of a number differ from it by no more than half of the last figure", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        fc.integer({ min: 1, max: 6 }),
        (value, significant) => {
          const shown = Number(showNumber(value, significant));
          expect(Math.abs(shown - value) / value).toBeLessThanOrEqual(
            0.5 * 10 ** (1 - significant) * (1 + 1e-9),
          );
        },
      ),
    );
  });

  it("of an estimate read back within a tenth of its width", () => {
    fc.assert(
      fc.property(figures(0, 1e5), (estimate) => {
        const width = estimate.high - estimate.low;
        fc.pre(width === 0 || width > 1e-4 * estimate.high);
        const read = readMass(showEstimate(estimate, "kg"), { decimal: "point" });
        expect(read.kind).toBe("read");
        if (read.kind === "read") {
          const slack = width === 0 ? 0.0006 * estimate.best : width * 0.06;
          expect(Math.abs(read.value.estimate.low - estimate.low)).toBeLessThanOrEqual(slack);
          expect(Math.abs(read.value.estimate.high - estimate.high)).toBeLessThanOrEqual(slack);
        }
      }),
    );
  });
});

/** Every estimate in a value read, however deep. */
function estimatesIn(value: unknown): readonly Estimate[] {
  if (typeof value !== "object" || value === null) {
    return [];
  }
  if ("best" in value && "low" in value && "high" in value) {
    const { best, low, high } = value;
    return [{ best: Number(best), low: Number(low), high: Number(high) }];
  }
  return Object.values(value).flatMap(estimatesIn);
}
