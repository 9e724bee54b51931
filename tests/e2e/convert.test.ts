import { describe, expect, it } from "vitest";
import { readTarget } from "../../src/core/quantity/conversion-target.ts";
import { memberId, openClub, textOf } from "../support/club.ts";

describe("/convert", () => {
  /** Factors: NIST SP 811, B.8. Alkalinity: 1 °dH is 10 mg CaO per litre, CaO 56.0774, CaCO₃ 100.0869 g/mol.
   *  Salinity: EOS-80 and PSS-78 (UNESCO 1983); 53.071 mS/cm at 25 °C is 35 by the reference library GSW 3.6.
   *  Nitrate: 14.0067 and 62.0049 g/mol. Density of sea water 35 at 25 °C: 1023.34 kg/m³ (UNESCO 1983). */
  it.each([
    ["quantity:55 US gal to:L", "208.198 L"],
    ["quantity:78 °F to:°C", "25.5556 °C"],
    ["quantity:120x50x55 cm to:L", "330 L"],
    ["quantity:500 US gal/h to:L/h", "1892.71 L/h"],
    ["quantity:3 h to:min", "180 min"],
    ["quantity:2 lb to:g", "907.185 g"],
    ["quantity:8 dKH to:meq/L", "2.8532 meq/L"],
    ["quantity:8 dKH to:mg/L CaCO3", "142.784 mg/L CaCO3"],
    ["quantity:10 ppm to:dKH", "0.560287 dKH"],
    ["quantity:35 ppt to:mS/cm", "53.071 mS/cm at 25 °C"],
    ["quantity:1.026 SG 25/25 to:ppt", "34.508 ppt (PSU)"],
    ["quantity:35.16504 g/kg to:ppt", "35 ppt (PSU)"],
    ["quantity:nitrate 20 mg/L to:mg/L as N", "4.5179 mg/L as NO3-N"],
    ["quantity:nitrate-N 4.5 to:NO3", "19.921 mg/L as NO3"],
    ["quantity:20 mg/L to:µmol/L of:nitrate", "322.56 µmol/L"],
    ["quantity:400 mg/L to:mg/kg salinity:35 ppt temperature:25 °C", "390.88 mg/kg"],
    ["quantity:400 mg/kg to:mg/L salinity:35 ppt temperature:25 °C", "409.34 mg/L"],
    ["quantity:2.3 meq/L to:µmol/kg salinity:35 ppt temperature:25 °C", "2247.5 µmol/kg"],
    ["quantity:5 % w/v to:mg/mL", "50 mg/mL"],
    ["quantity:30 % w/w to:g/L density:1.15 kg/L", "345 g/L"],
    ["quantity:2 °C apart to:°F", "3.6 °F"],
    ["quantity:about 200 L to:US gal", "53 US gal (48–58)"],
    ["quantity:<5 mg/L to:µg/L", "below 5000 µg/L"],
  ])("%s gives %s", async (options, headline) => {
    const reply = await openClub().ask(`/convert ${options}`);
    expect(reply.headline).toBe(headline);
  });

  it("shows all usual units when none is asked for", async () => {
    const club = openClub();
    const volume = await club.ask("/convert quantity:55 US gal");
    expect(textOf(volume)).toContain("imp gal | 45.7971");
    const salinity = await club.ask("/convert quantity:1.026 SG 25/25");
    expect(textOf(salinity)).toContain("SG 20/4 °C | 1.0244");
    const alkalinity = await club.ask("/convert quantity:8 dKH");
    expect(textOf(alkalinity)).toContain("mg/L CaCO3 | 142.784");
  });

  it("asks one question when a text could be two things, and goes on from the answer", async () => {
    const club = openClub();
    const asked = await club.say("/convert quantity:20 C to:°F");
    expect(textOf(asked)).toContain("What is “20 C”?");
    const warm = await club.pick("a temperature");
    expect(warm.kind === "reply" && warm.headline).toBe("68 °F");
    await club.say("/convert quantity:20 C to:°F");
    const apart = await club.pick("a difference of temperatures");
    expect(apart.kind === "reply" && apart.headline).toBe("36 °F");
  });

  it("asks what a bare 1.026 is, offering the scales of a hydrometer first", async () => {
    const club = openClub();
    const asked = await club.say("/convert quantity:1.026 to:ppt");
    expect(asked.kind === "question" && asked.choices[0]?.label).toBe("1.026 SG 25/25");
    const reply = await club.pick("SG 25/25");
    expect(reply.kind === "reply" && reply.headline).toBe("34.508 ppt (PSU)");
  });

  it("asks for what the conversion lacks: the substance, the salinity, the density, the gallon", async () => {
    const club = openClub();
    await club.say("/convert quantity:20 µmol/L to:mg/L");
    const phosphate = await club.pick("phosphate");
    // 20 × 94.9714 g/mol / 1000.
    expect(phosphate.kind === "reply" && phosphate.headline).toBe("1.8994 mg/L as PO4");
    await club.say("/convert quantity:400 mg/L to:mg/kg temperature:25 °C");
    const fresh = await club.fill("35 ppt");
    expect(fresh.kind === "reply" && fresh.headline).toBe("390.88 mg/kg");
    expect(textOf(await club.say("/convert quantity:30 % w/w to:g/L"))).toContain("weigh?");
    expect(textOf(await club.say("/convert quantity:55 L to:gal"))).toContain("US gal or imp gal");
    const gallons = await club.pick("US gal");
    expect(gallons.kind === "reply" && gallons.headline).toBe("14.5295 US gal");
  });

  it("offers units that read while one is typed", () => {
    const { app } = openClub();
    const request = { member: memberId("ines"), isSteward: false, path: "convert", options: {}, answers: {} };
    for (const begun of ["", "g", "SG", "mg", "µ", "°"]) {
      const offered = app.suggest(request, "to", begun);
      expect(offered.length).toBeGreaterThan(0);
      for (const unit of offered) expect(readTarget(unit, {}).kind).toBe("read");
    }
  });

  it("refuses what does not convert, in a sentence", async () => {
    const club = openClub();
    const kinds = await club.ask("/convert quantity:55 US gal to:kg");
    expect(kinds.ok).toBe(false);
    expect(kinds.body[0]).toContain("A volume cannot be turned into “kg”.");
    const forms = await club.ask("/convert quantity:nitrate 20 mg/L to:mg/L as P");
    expect(forms.ok).toBe(false);
  });

  it.each([
    "banana",
    "-5 L",
    "1e400 L",
    "5 L; rm -rf /",
    "__proto__",
    "%n%s",
    "\u202e5 L\u202e x",
    "()".repeat(80),
    "9".repeat(300),
    "20 furlongs",
    "0.5 SG 25/25",
    "500 % w/v",
    "-300 °C",
    "nitrate",
    "mol mol mol",
    "5 mg/L as nitrate as P",
  ])("answers %j with a sentence", async (text) => {
    const club = openClub();
    for (const to of ["", " to:L", " to:µmol/kg", " to:SG 25/25", " to:mg/L as N"]) {
      const outcome = await club.say(`/convert quantity:${text}${to}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
      expect(textOf(outcome).length).toBeGreaterThan(15);
    }
  });

  it.each([
    "furlong",
    "constructor",
    "SG 900/900",
    "SG banana",
    "mg/L as",
    "as as",
    "µmol",
    "%",
    "§",
    "to",
    "1 L",
  ])("answers a wanted unit %j with a sentence", async (to) => {
    const club = openClub();
    for (const quantity of ["20 L", "35 ppt", "nitrate 20 mg/L", "8 dKH", "5 % w/v"]) {
      const outcome = await club.say(`/convert quantity:${quantity} to:${to}`);
      expect(outcome.kind === "question" || !outcome.ok).toBe(true);
    }
  });
});
