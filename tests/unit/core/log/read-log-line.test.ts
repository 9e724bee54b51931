import { describe, expect, it } from "vitest";
import type { EventEntry, LogEntry, ReadingEntry } from "../../../../src/core/log/entry.ts";
import { readLogLine } from "../../../../src/core/log/read-log-line.ts";
import type { Habits } from "../../../../src/core/quantity/read.ts";

const SETTLED: Habits = { gravity: { sampleC: 25, referenceC: 25 }, gallon: "US" };

function entries(line: string, habits: Habits = SETTLED): readonly LogEntry[] {
  const read = readLogLine(line, habits);
  if (read.kind !== "read") throw new Error(read.kind === "ask" ? read.question : read.message);
  return read.value;
}
function reading(line: string): ReadingEntry {
  const [entry, ...rest] = entries(line);
  expect(rest).toEqual([]);
  if (entry?.kind !== "reading") throw new Error("no reading");
  return entry;
}
function event(line: string): EventEntry {
  const [entry, ...rest] = entries(line);
  expect(rest).toEqual([]);
  if (entry?.kind !== "event") throw new Error("no event");
  return entry;
}
function choices(line: string, habits: Habits = SETTLED): readonly string[] {
  const read = readLogLine(line, habits);
  if (read.kind !== "ask") throw new Error(`${read.kind}, not asked`);
  for (const { text } of read.choices) expect(readLogLine(text, SETTLED).kind).toBe("read");
  return read.choices.map(({ text }) => text);
}
const refusal = (line: string) => {
  const read = readLogLine(line, SETTLED);
  return read.kind === "unreadable" ? read.message : `${read.kind}!`;
};

describe("a reading in its usual unit", () => {
  // Factors by hand from atomic weights N 14.0067, O 15.9994, H 1.00794, P 30.9738: NO₃/N 4.4268,
  // NH₄/N 1.2878, NH₃/N 1.2159, PO₄/P 3.0662; 1 dKH = 0.35663 meq/L; 1 °dH = 17.848 mg/L CaCO₃;
  // SG 25/25 of 1.0264 is 35.0 (EOS-80).
  it.each([
    ["no3 20", "nitrate", 20],
    ["nitrate 20 ppm", "nitrate", 20],
    ["nitrate-N 4.5", "nitrate", 4.5 * 4.4268],
    ["no3 4.5 as N", "nitrate", 4.5 * 4.4268],
    ["NO₃-N: 4.5 mg/L", "nitrate", 4.5 * 4.4268],
    ["nh3 0.25 as N", "ammonia", 0.25],
    ["nh4 0.5 as NH4", "ammonia", 0.5 / 1.2878],
    ["ammonia 0.5 as NH3", "ammonia", 0.5 / 1.2159],
    ["tan 0.1", "ammonia", 0.1],
    ["nh4 0", "ammonia", 0],
    ["po4-p 0.03", "phosphate", 0.03 * 3.0662],
    ["phosphorus 0.03", "phosphate", 0.03 * 3.0662],
    ["temp 25.5", "temperature", 25.5],
    ["temp 78", "temperature", (78 - 32) / 1.8],
    ["temp 78F", "temperature", (78 - 32) / 1.8],
    ["temp 25,5", "temperature", 25.5],
    ["sg 1.0264", "salinity", 35],
    ["sal 35", "salinity", 35],
    ["ppt 34", "salinity", 34],
    ["salinity was 34.5", "salinity", 34.5],
    ["ph 8.1", "ph", 8.1],
    ["ph8.1", "ph", 8.1],
    ["ph=8,1", "ph", 8.1],
    ["alk 7.4", "alkalinity", 7.4 * 0.35663],
    ["kh 3", "alkalinity", 3 * 0.35663],
    ["alk 2.6 meq/L", "alkalinity", 2.6],
    ["alk 143", "alkalinity", 143 / 50.04],
    ["ca 430", "calcium", 430],
    ["mg 1,290", "magnesium", 1290],
    ["do 6.5", "oxygen", 6.5],
    ["nh3 1.026 as N", "ammonia", 1.026],
    ["kh 7,412", "alkalinity", 7.412 * 0.35663],
    ["orp 350 mV", "redox", 350],
    ["redox -50", "redox", -50],
    ["gh 8", "hardness", 8],
    ["gh 140 ppm", "hardness", 140 / 17.848],
    ["20 ppm nitrate", "nitrate", 20],
    ["1.0264 sg", "salinity", 35],
  ] as const)("%j", (line, parameter, value) => {
    const entry = reading(line);
    expect(entry.parameter).toBe(parameter);
    const digits = parameter === "salinity" ? 1 : 3;
    expect(entry.estimate.best).toBeCloseTo(value, digits);
    expect(entry.typed).toBe(line.normalize("NFKC"));
    expect(entry.censored).toBeUndefined();
  });

  it("keeps a range, and the unit and basis it is stored in", () => {
    expect(reading("no3 10-20")).toMatchObject({
      estimate: { best: 15, low: 10, high: 20 },
      unit: "mg/L",
      basis: "as NO₃",
    });
  });

  it.each([
    ["no3 <5", "below", 0, 5],
    ["no3 under 5 ppm", "below", 0, 5],
    ["no3 >160", "above", 160, 999],
    ["po4 not detected", "below", 0, 0.1],
    ["no2 none", "below", 0, 0.125],
    ["ammonia undetectable", "below", 0, 0.125],
  ] as const)("%j is a bound, not a value", (line, censored, low, high) => {
    expect(reading(line)).toMatchObject({ censored, estimate: { low, high } });
  });

  it("says back what was assumed", () => {
    expect(reading("temp 78").readAs).toBe("temperature 78 °F = 25.56 °C");
    expect(reading("alk 7.4").readAs).toContain("7.4 dKH");
    expect(reading("nitrate-N 4.5").readAs).toBe("nitrate 4.5 mg/L as NO3-N = 19.9 mg/L as NO₃");
  });
});

describe("an event", () => {
  it.each([
    ["wc 30%", "water change", { best: 0.3 }, "fraction", ""],
    ["30% water change", "water change", { best: 0.3 }, "fraction", ""],
    ["changed 30% of the water", "water change", { best: 0.3 }, "fraction", ""],
    ["water change 200 L", "water change", { best: 200 }, "L", ""],
    ["wc 10 gal", "water change", { best: 37.85411784 }, "L", ""],
    ["fed 280 g prawn", "feeding", { best: 0.28 }, "kg", "prawn"],
    ["dosed 30 ml bicarbonate", "dose", { best: 0.03 }, "L", "bicarbonate"],
    ["added 30 ml bicarbonate", "dose", { best: 0.03 }, "L", "bicarbonate"],
    ["harvested algae 800 g", "harvest", { best: 0.8 }, "kg", "algae"],
    ["added 1 trigger", "livestock in", { best: 1 }, "", "trigger"],
    ["added a clownfish", "livestock in", { best: 1 }, "", "clownfish"],
    ["sold 2 tangs", "livestock out", { best: 2 }, "", "tangs"],
    ["dead 1 damsel", "death", { best: 1 }, "", "damsel"],
    ["2 damsels died", "death", { best: 2 }, "", "damsels"],
  ] as const)("%j has its amount", (line, kind, amount, unit, text) => {
    const found = event(line);
    expect(found).toMatchObject({ event: kind, text, amount: { unit } });
    expect(found.amount?.estimate.best).toBeCloseTo(amount.best, 9);
  });

  it.each([
    ["skimmer off", "equipment off", "skimmer"],
    ["skimmer on", "equipment on", "skimmer"],
    ["return pump 2 off", "equipment off", "return pump 2"],
    ["turned off the heater", "equipment off", "heater"],
    ["media changed", "media change", ""],
    ["changed the carbon", "media change", "carbon"],
    ["fed twice", "feeding", "twice"],
    ["removed dead snail", "livestock out", "dead snail"],
    ["added 20 kg rock", "note", "added 20 kg rock"],
    ["note glass cleaned today", "note", "glass cleaned today"],
    ["wc", "water change", ""],
  ] as const)("%j needs none", (line, kind, text) => {
    const found = event(line);
    expect(found).toMatchObject({ event: kind, text });
    expect(found.amount).toBeUndefined();
  });
});

describe("a whole line", () => {
  const kinds = (line: string) =>
    entries(line).map((entry) => (entry.kind === "reading" ? entry.parameter : entry.event));

  it.each([
    ["sg 1.0255 temp 25.5 alk 7.4", ["salinity", "temperature", "alkalinity"]],
    ["ca 430, mg 1290", ["calcium", "magnesium"]],
    ["no3 20 mg/l ca 430 mg 1290 mg/l", ["nitrate", "calcium", "magnesium"]],
    ["alk 7.4 dkh no3 5", ["alkalinity", "nitrate"]],
    ["sg 1.0255 25/25 ph 8.1 ph 8.2", ["salinity", "ph", "ph"]],
    ["temp 25,5, ph 8,1", ["temperature", "ph"]],
    ["nitrate 5 and nitrite 0", ["nitrate", "nitrite"]],
    ["wc 30% fed 280 g prawn skimmer off, no3 10", ["water change", "feeding", "equipment off", "nitrate"]],
    ["dosed 5 mL iodine ph 8", ["dose", "ph"]],
    ["lost 1 tang; note: found behind the rock, sad", ["death", "note"]],
    ["no3 5\nph 8", ["nitrate", "ph"]],
  ])("%j", (line, expected) => {
    expect(kinds(line)).toEqual(expected);
  });

  it("gives a note the rest, commas and all", () => {
    expect(entries("ph 8, note pump loud, ph probe old, no3 kit empty").at(-1)).toMatchObject({
      event: "note",
      text: "pump loud, ph probe old, no3 kit empty",
    });
  });
});

describe("two meanings are asked about, in the whole line", () => {
  it.each([
    ["no3 5, alk 2.8, ph 8", ["no3 5, alk 2.8 dKH, ph 8", "no3 5, alk 2.8 meq/L, ph 8"]],
    ["temp 45", ["temp 45 °C", "temp 45 °F"]],
    ["gh 40", ["gh 40 °dH", "gh 40 ppm CaCO3"]],
    ["wc 30", ["wc 30 %", "wc 30 L"]],
    ["nh3 0.25", ["nh3 0.25 mg/L as TAN", "nh3 0.25 mg/L as NH3", "nh3 0.25 mg/L as NH4"]],
  ])("%j", (line, texts) => {
    expect(choices(line)).toEqual(texts);
  });

  it("when the member's gallon or hydrometer is not known", () => {
    expect(choices("wc 10 gal, ph 8", {})).toEqual(["wc 10 US gal, ph 8", "wc 10 imp gal, ph 8"]);
    expect(choices("sg 1.0255 temp 25", {}).length).toBeGreaterThan(1);
  });

  it.each([
    ["temp 255", "temp 25.5"],
    ["temp 78 °C", "temp 78 °F"],
    ["temp 25.5F", "temp 25.5 °C"],
    ["ph 82", "ph 8.2"],
    ["ca 43000", "ca 430"],
    ["sal 350", "sal 35"],
    ["sg 1026", "sg 1.026 SG"],
  ])("and so is what cannot be: %j", (line, meant) => {
    expect(choices(line)[0]).toBe(meant);
  });
});

describe("a line that cannot all be read loses nothing", () => {
  it("names the piece, and gives the rest as understood", () => {
    const message = refusal("ph 8.1 looks high, no3 5");
    expect(message).toContain("“looks high”");
    expect(message).toContain("pH 8.1; nitrate 5 mg/L");
    expect(message).toContain("Nothing is logged yet");
  });

  it.each([
    ["temp", "temperature needs a figure"],
    ["no3 -5", "below zero"],
    ["no3 twenty", "“no3 twenty”"],
    ["wc 110%", "“wc 110%”"],
    ["wc -5 L", "“wc -5 L”"],
    ["no3 7000000", "cannot be"],
    ["tan 1026 mg/L as N", "cannot be"],
    ["temp none", "there is always some"],
    ["do 2 water changes", "“do 2”"],
    ["hello world", "“hello world”"],
    ["note", "needs its words"],
    ["", "nothing to log"],
    [" ,;. ", "nothing to log"],
    ["ph 8 ".repeat(300), "characters long"],
  ])("%.30j", (line, part) => {
    expect(refusal(line)).toContain(part);
  });
});
