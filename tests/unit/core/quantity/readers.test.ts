import { describe, expect, it } from "vitest";
import { readAlkalinity } from "../../../../src/core/quantity/alkalinity.ts";
import { readCount } from "../../../../src/core/quantity/count.ts";
import { readFlow } from "../../../../src/core/quantity/flow.ts";
import { readFraction } from "../../../../src/core/quantity/fraction.ts";
import { readLength } from "../../../../src/core/quantity/length.ts";
import { readMass } from "../../../../src/core/quantity/mass.ts";
import { readMoney } from "../../../../src/core/quantity/money.ts";
import { readPH } from "../../../../src/core/quantity/ph.ts";
import { readPlainNumber } from "../../../../src/core/quantity/plain-number.ts";
import { readPower } from "../../../../src/core/quantity/power.ts";
import type { Habits, Read } from "../../../../src/core/quantity/read.ts";
import { readSpan } from "../../../../src/core/quantity/span.ts";
import { readTemperature, readTemperatureDifference } from "../../../../src/core/quantity/temperature.ts";

type Reader = (
  text: string,
  habits: Habits,
) => Read<{ readonly estimate: { best: number; low: number; high: number } }>;
type Row = readonly [text: string, best: number, low?: number, high?: number];
interface Case {
  readonly read: Reader;
  readonly rows: readonly Row[];
  readonly refused: readonly (readonly [text: string, said: string])[];
}

/** Expected figures follow from the definitions of the units, worked by hand. */
const cases: readonly (readonly [name: string, Case])[] = [
  [
    "readMass, kg",
    {
      read: readMass,
      rows: [
        ["2.5 kg", 2.5],
        ["400 g", 0.4],
        ["400g", 0.4],
        ["250 mg", 0.00025],
        ["1 lb", 0.45359237],
        ["2 lbs", 0.90718474],
        ["16 oz", 0.45359237],
        ["3 lb 4 oz", 3.25 * 0.45359237],
        ["1.5 t", 1500],
        ["2 x 500 g", 1],
        ["1 kg + 500 g", 1.5],
        ["1.5 to 2 kg", 1.75, 1.5, 2],
        ["500 g to 1 kg", 0.75, 0.5, 1],
        ["3.6 kg (3.4–3.9)", 3.6, 3.4, 3.9],
        ["about 2 kg", 2, 1.8, 2.2],
        ["2 kg ± 50 g", 2, 1.95, 2.05],
        ["0 g", 0],
      ],
      refused: [
        ["5", "“5” has no unit. Try “5 g”, “5 kg” or “5 lb”."],
        ["5 L", "“L” is not a unit of mass I know."],
        ["-1 kg", "goes below zero, and a mass cannot"],
        ["1e20 kg", "larger than I can work with"],
      ],
    },
  ],
  [
    "readLength, cm",
    {
      read: readLength,
      rows: [
        ["55 cm", 55],
        ["550 mm", 55],
        ["1.2 m", 120],
        ["10 in", 25.4],
        ['10"', 25.4],
        ["10 inches", 25.4],
        ["10″", 25.4],
        ["2 ft", 60.96],
        ["2'", 60.96],
        ["4 ft 6 in", 137.16],
        ["4ft6in", 137.16],
        ["4'6\"", 137.16],
        ["4′ 6″", 137.16],
        ["1 m 20 cm", 120],
        ["12-15 cm", 13.5, 12, 15],
        ["4 ft 6 in ± 1 in", 137.16, 134.62, 139.7],
        ["15 cm + 3 cm + 2 cm", 20],
      ],
      refused: [
        ["120", "“120” has no unit. Try “120 cm” or “120 in”."],
        ["5 gal", "“gal” is not a unit of length I know."],
        ["3 cm x 4 cm", "multiplies two units"],
      ],
    },
  ],
  [
    "readTemperature, °C",
    {
      read: readTemperature,
      rows: [
        ["26 °C", 26],
        ["26C", 26],
        ["26 c", 26],
        ["26 ℃", 26],
        ["26º C", 26],
        ["26 degC", 26],
        ["26 deg C", 26],
        ["26 degrees Celsius", 26],
        ["26 celsius", 26],
        ["77 F", 25],
        ["77°F", 25],
        ["77 ℉", 25],
        ["77 fahrenheit", 25],
        ["-2 °C", -2],
        ["−2 °C", -2],
        ["25.125 °C", 25.125],
        ["25,5 °C", 25.5],
        ["24-26 °C", 25, 24, 26],
        ["between 24 and 26 C", 25, 24, 26],
        ["75.2 F to 26 °C", 25, 24, 26],
        ["26 °C ± 0.5", 26, 25.5, 26.5],
        ["26 ± 0.5 °C", 26, 25.5, 26.5],
        ["77 °F ± 1.8", 25, 24, 26],
        ["77 °F ± 1 °C", 25, 24, 26],
        ["about 26 °C", 26, 25, 27],
        ["about 77 F", 25, 24, 26],
      ],
      refused: [
        ["26", "“26” has no unit. Try “26 °C” or “79 °F”."],
        ["79", "“79” has no unit. Try “26 °C” or “79 °F”."],
        ["26 K", "“K” is not a unit of temperature I know."],
        ["-300 °C", "is lower than a temperature can be"],
        ["26 °C ± 10 %", "A percentage of a temperature says little."],
        ["2 x 13 °C", "“2 x 13 °C” adds up or multiplies, which a temperature cannot be."],
        ["25 °C + 1 °C", "adds up or multiplies"],
        ["26 ° С", "“С” is not a Latin letter"],
      ],
    },
  ],
  [
    "readTemperatureDifference, °C apart",
    {
      read: readTemperatureDifference,
      rows: [
        ["2 °C", 2],
        ["2 K", 2],
        ["3.6 °F", 2],
        ["-3.6 F", -2],
        ["1-2 °C", 1.5, 1, 2],
      ],
      refused: [["2", "“2” has no unit. Try “2 °C” or “2 °F”."]],
    },
  ],
  [
    "readFlow, L/h",
    {
      read: readFlow,
      rows: [
        ["2000 L/h", 2000],
        ["2000 lph", 2000],
        ["2000 l/hr", 2000],
        ["30 L/min", 1800],
        ["30 lpm", 1800],
        ["0.5 L/s", 1800],
        ["2 m³/h", 2000],
        ["2 m3/h", 2000],
        ["24 L/day", 1],
        ["24 l per day", 1],
        ["240 mL/day", 0.01],
        ["100 US gal/h", 378.5411784],
        ["100 US gph", 378.5411784],
        ["100 imp gal/h", 454.609],
        ["10 US gal/min", 2271.2470704],
        ["24 US gal/day", 3.785411784],
        ["2 x 1000 L/h", 2000],
        ["2000-3000 L/h", 2500, 2000, 3000],
      ],
      refused: [
        ["2000", "“2000” has no unit. Try “2000 L/h” or “2000 US gal/h”."],
        ["2000 L", "“L” is not a unit of flow I know."],
      ],
    },
  ],
  [
    "readPower, W",
    {
      read: readPower,
      rows: [
        ["300 W", 300],
        ["300 watts", 300],
        ["1.5 kW", 1500],
        ["2 x 300 W", 600],
        ["1 hp", 745.699872],
        ["300 W + 25 W", 325],
      ],
      refused: [
        ["300", "“300” has no unit."],
        ["300 V", "“V” is not a unit of power I know."],
      ],
    },
  ],
  [
    "readSpan, h",
    {
      read: readSpan,
      rows: [
        ["12 h", 12],
        ["30 min", 0.5],
        ["2 h 30 min", 2.5],
        ["2h30min", 2.5],
        ["2 hours 30 minutes", 2.5],
        ["10 days", 240],
        ["10d", 240],
        ["3 weeks", 504],
        ["1 week 3 days", 240],
        ["90 s", 0.025],
        ["7-10 days", 204, 168, 240],
      ],
      refused: [
        ["10", "“10” has no unit. Try “10 h” or “10 days”."],
        ["10 months", "“months” is not a unit of span of time I know."],
      ],
    },
  ],
  [
    "readMoney",
    {
      read: readMoney,
      rows: [
        ["0.35", 0.35],
        ["$20", 20],
        ["20 €", 20],
        ["EUR 12,50", 12.5],
        ["12.50 eur", 12.5],
        ["35 cents", 0.35],
        ["35 ct", 0.35],
        ["$1,200.50", 1200.5],
        ["1.234,50 €", 1234.5],
        ["€20-30", 25, 20, 30],
        ["about 30 €", 30, 27, 33],
        ["$5 + $7", 12],
      ],
      refused: [
        ["-5 €", "goes below zero, and an amount of money cannot"],
        ["£3 + $4", "names two currencies"],
        ["20 apples", "“apples” is not a unit of amount of money I know."],
      ],
    },
  ],
  [
    "readFraction, share of one",
    {
      read: readFraction,
      rows: [
        ["30 %", 0.3],
        ["30%", 0.3],
        ["30 percent", 0.3],
        ["0.3", 0.3],
        ["0,3", 0.3],
        ["1/4", 0.25],
        ["½", 0.5],
        ["20-30 %", 0.25, 0.2, 0.3],
        ["30 ± 5 %", 0.3, 0.25, 0.35],
        ["about 30 %", 0.3, 0.27, 0.33],
        ["0", 0],
        ["100 %", 1],
      ],
      refused: [
        ["150 %", "a share runs from 0 to 100 %"],
        ["-5 %", "a share runs from 0 to 100 %"],
        ["-0.2", "goes below zero"],
        ["500", "a share runs from 0 to 100 %"],
      ],
    },
  ],
  [
    "readPlainNumber",
    {
      read: readPlainNumber,
      rows: [
        ["12", 12],
        ["-3.5", -3.5],
        ["1e5", 100000],
        ["1/8", 0.125],
        ["3-4", 3.5, 3, 4],
        ["12 ± 10 %", 12, 10.8, 13.2],
      ],
      refused: [
        ["twelve", "I find no number in “twelve”"],
        ["12 L", "“L” is not a unit of number I know."],
        ["NaN", "I find no number in “NaN”"],
        ["-Infinity", "I find no number in “-Infinity”"],
        ["1e309", "is larger than I can work with"],
      ],
    },
  ],
  [
    "readCount",
    {
      read: readCount,
      rows: [
        ["12", 12],
        ["12 fish", 12],
        ["1,200 eggs", 1200],
        ["1 200 eggs", 1200],
        ["20-30 fry", 25, 20, 30],
        ["about 25", 25, 22, 28],
        ["2 x 12", 24],
      ],
      refused: [
        ["2.5", "“2.5” is not a whole number."],
        ["-3", "goes below zero, and a count cannot"],
      ],
    },
  ],
  [
    "readPH",
    {
      read: readPH,
      rows: [
        ["8.1", 8.1],
        ["pH 8.1", 8.1],
        ["8.1 pH", 8.1],
        ["8,1", 8.1],
        ["8.125", 8.125],
        ["8.1-8.3", 8.2, 8.1, 8.3],
        ["8.1 ± 0.1", 8.1, 8, 8.2],
        ["about 8", 8, 7.9, 8.1],
      ],
      refused: [
        ["15", "pH runs from 0 to 14"],
        ["-1", "pH runs from 0 to 14"],
        ["8.1 dKH", "“dKH” is not a unit of pH I know."],
      ],
    },
  ],
  [
    "readAlkalinity, meq/L",
    {
      read: readAlkalinity,
      rows: [
        ["2.9 meq/L", 2.9],
        ["2,9 mmol/L", 2.9],
        ["28.0387 dKH", 10],
        ["28.0387 °dH", 10],
        ["28.0387 KH", 10],
        ["KH 28.0387", 10],
        ["28.0387 degrees", 10],
        ["500.4345 ppm CaCO3", 10],
        ["500.4345 mg/L as CaCO3", 10],
        ["500.4345 ppm", 10],
        ["<2 meq/L", 1, 0, 2],
        [">8 meq/L", 8],
        ["2-3 meq/L", 2.5, 2, 3],
      ],
      refused: [["8 kg", "“kg” is not a unit of alkalinity I know."]],
    },
  ],
];

describe.each(cases)("%s", (_, { read, rows, refused }) => {
  it.each(rows.map(([text, best, low = best, high = best]) => ({ text, best, low, high })))(
    "reads $text as $best, $low to $high",
    ({ text, best, low, high }) => {
      const outcome = read(text, {});
      expect(outcome).toMatchObject({ kind: "read" });
      if (outcome.kind === "read") {
        expect(outcome.value.estimate.best).toBeCloseTo(best, 4);
        expect(outcome.value.estimate.low).toBeCloseTo(low, 4);
        expect(outcome.value.estimate.high).toBeCloseTo(high, 4);
      }
    },
  );

  it.each(refused)("refuses %s and says why", (text, said) => {
    const outcome = read(text, {});
    expect(outcome).toMatchObject({ kind: "unreadable" });
    expect(outcome.kind === "unreadable" && outcome.message).toContain(said);
  });
});

describe("what is asked", () => {
  const asked: readonly (readonly [
    text: string,
    read: Reader,
    habits: Habits,
    choices: readonly string[],
  ])[] = [
    ["500 gph", readFlow, {}, ["500 US gal/h", "500 imp gal/h"]],
    ["10 gal/day", readFlow, {}, ["10 US gal/d", "10 imp gal/d"]],
    ["5 gal/min", readFlow, {}, ["5 US gal/min", "5 imp gal/min"]],
    ["1.026 kg", readMass, {}, ["1.0260 kg", "1026 kg"]],
    ["1,026 kg", readMass, {}, ["1026 kg", "1.0260 kg"]],
    ["1,026 kg", readMass, { decimal: "point" }, ["1026 kg", "1.0260 kg"]],
    ["$1,200", readMoney, {}, ["$1200", "$1.2"]],
    ["30", readFraction, {}, ["30 %"]],
    ["1", readFraction, {}, ["1 %", "100 %"]],
    ["8", readAlkalinity, {}, ["8 dKH", "8 meq/L", "8 ppm CaCO3"]],
    ["1,200", readPlainNumber, {}, ["1200", "1.2"]],
  ];
  it.each(asked)("%s", (text, read, habits, choices) => {
    const outcome = read(text, habits);
    expect(outcome).toMatchObject({ kind: "ask" });
    expect(outcome.kind === "ask" && outcome.choices.map((choice) => choice.text)).toEqual(choices);
  });

  it.each([
    ["500 gph", readFlow, { gallon: "US" }, 1892.705892],
    ["500 gph", readFlow, { gallon: "imperial" }, 2273.045],
    ["1.026 kg", readMass, { decimal: "point" }, 1.026],
    ["1,026 kg", readMass, { decimal: "comma" }, 1.026],
  ] as const)("%s is settled by a habit", (text, read, habits, best) => {
    const outcome = read(text, habits);
    expect(outcome.kind === "read" && outcome.value.estimate.best).toBeCloseTo(best, 6);
  });
});

describe("what is said back", () => {
  it.each([
    ["78 F", readTemperature, "78 °F = 25.56 °C"],
    ["about 26 °C", readTemperature, "about, taken as ± 1 °C: 26 °C (25–27)"],
    ["-3 to -1 °C", readTemperature, "-2 °C (-3 to -1)"],
    ["3 lb 4 oz", readMass, "3.25 lb = 1.474 kg"],
    ["1.5 to 2 kg", readMass, "1.75 kg (1.50–2.00)"],
    ["<2 dKH", readAlkalinity, "below 2 dKH = below 0.7133 meq/L"],
    ["8.1", readPH, "pH 8.1"],
    ["0.3", readFraction, "30 %"],
    ["20 $", readMoney, "$20"],
    ["35 cents", readMoney, "35 cents = 0.35"],
  ] as const)("%s", (text, read, said) => {
    expect(read(text, {})).toMatchObject({ kind: "read", readAs: said });
  });

  it("keeps an open end of a reading", () => {
    expect(readAlkalinity("<2 dKH", {})).toMatchObject({ value: { censored: "below", typedUnit: "dKH" } });
    expect(readAlkalinity(">20 dKH", {})).toMatchObject({ value: { censored: "above" } });
  });

  it("keeps the currency that was typed, and invents none", () => {
    expect(readMoney("20 €", {})).toMatchObject({ value: { currency: "€" } });
    expect(readMoney("20 nok", {})).toMatchObject({ value: { currency: "NOK" } });
    const bare = readMoney("20", {});
    expect(bare.kind === "read" && "currency" in bare.value).toBe(false);
  });
});
