import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type KiloPascals,
  type Litres,
  type Metres,
  type MgPerL,
  type PH,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { blendMatch, type Water } from "../../../../src/core/water/blend-match.ts";
import { convertSalinity } from "../../../../src/core/water/convert-salinity.ts";
import { oxygenSolubility } from "../../../../src/core/water/oxygen-solubility.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const ppt = (s: number) => exactly(as<PracticalSalinity>(s));
const celsius = (t: number) => exactly(as<DegreesC>(t));

describe("one salinity on all scales", () => {
  it("35 at 20 °C", () => {
    const { value } = answered(convertSalinity(ppt(35), celsius(20)));
    // TEOS-10 reference library (gsw 3.6.16), and definitions: 35.16504 g/kg, 35 ÷ 1.80655.
    expect(value.absolute.best).toBeCloseTo(35.16504, 5);
    expect(value.gramsPerLitre.best).toBeCloseTo(36.036, 3);
    expect(value.gramsPerKgOfWater.best).toBeCloseTo(36.447, 3);
    expect(value.gravity25at25.best).toBeCloseTo(1.02637, 5);
    expect(value.gravity20at20.best).toBeCloseTo(1.0266, 4);
    expect(value.gravity60FAt60F.best).toBeCloseTo(1.02686, 5);
    expect(value.gravity15point6at4.best).toBeCloseTo(1.02586, 4);
    expect(value.gravity20at4.best).toBeCloseTo(1.02479, 4);
    expect(value.conductivityAt25.best).toBeCloseTo(53.071, 2);
    expect(value.conductivityAsMeasured.best).toBeCloseTo(47.918, 2);
    expect(value.chlorinity.best).toBeCloseTo(19.3739, 4);
    expect(value.density.best).toBeCloseTo(1024.76, 1);
  });

  it("says what the scales are good for", () => {
    expect(raised(convertSalinity(ppt(0.5), celsius(20)))).toContain("not-for-tap-water");
    expect(raised(convertSalinity(ppt(35), celsius(20)))).not.toContain("not-for-tap-water");
    expect(raised(convertSalinity(ppt(45), celsius(20)))).toContain("outside-fitted-range");
    expect(refused(convertSalinity(ppt(-1), celsius(20)))).toBe("not-credible");
    expect(refused(convertSalinity(ppt(35), celsius(80)))).toBe("not-credible");
  });
});

describe("new water against the tank", () => {
  const water = (v: number, s: number, t: number, pH?: number): Water => ({
    volume: exactly(as<Litres>(v)),
    salinity: ppt(s),
    temperature: celsius(t),
    pH: pH === undefined ? undefined : as<PH>(pH),
  });

  it("20 L of fresh at 20 °C into 100 L of 35 at 25 °C", () => {
    // By hand: 102.3344 and 19.9641 kg (gsw 3.6.16 densities); heat capacities 3.999 and 4.18.
    const { value } = answered(
      blendMatch({ tank: water(100, 35, 25), added: water(20, 0, 20), isExchange: false }),
    );
    expect(value.salinity.best).toBeCloseTo(29.2866, 3);
    expect(value.temperature.best).toBeCloseTo(24.1531, 3);
    expect(value.temperatureStep.best).toBeCloseTo(-0.8469, 3);
  });

  it("the same water moves nothing", () => {
    const { value } = answered(
      blendMatch({ tank: water(100, 35, 25), added: water(30, 35, 25), isExchange: true }),
    );
    expect(value.salinityStep.best).toBeCloseTo(0, 12);
    expect(value.temperatureStep.best).toBeCloseTo(0, 12);
    expect(value.volumeL.best).toBeCloseTo(100, 9);
  });

  it("warns of steps above 1 ppt and 1 °C (common practice, no source)", () => {
    const gentle = blendMatch({ tank: water(100, 35, 25), added: water(10, 34, 22), isExchange: true });
    expect(raised(gentle)).not.toContain("salinity-step");
    expect(raised(gentle)).not.toContain("temperature-step");
    const rough = blendMatch({ tank: water(100, 35, 25), added: water(40, 30, 18), isExchange: true });
    expect(raised(rough)).toEqual(expect.arrayContaining(["salinity-step", "temperature-step"]));
  });

  it("does not average pH", () => {
    const both = blendMatch({
      tank: water(100, 35, 25, 8.2),
      added: water(20, 35, 25, 7.8),
      isExchange: true,
    });
    expect(raised(both)).toContain("ph-is-not-blended");
    expect(answered(both).value).not.toHaveProperty("pH");
  });

  it("refuses to exchange more than there is", () => {
    const result = blendMatch({ tank: water(100, 35, 25), added: water(120, 35, 25), isExchange: true });
    expect(refused(result)).toBe("more-than-there-is");
  });
});

describe("oxygen the water can hold", () => {
  // APHA 4500-O table and the Benson & Krause equation behind it.
  it.each([
    { s: 0, t: 20, mgPerL: 9.092 },
    { s: 35, t: 25, mgPerL: 6.772 },
    { s: 35, t: 28, mgPerL: 6.442 },
    { s: 20, t: 10, mgPerL: 9.933 },
  ])("$mgPerL mg/L at salinity $s and $t °C", ({ s, t, mgPerL }) => {
    const { value } = answered(oxygenSolubility(ppt(s), celsius(t)));
    expect(Math.abs(value.saturation.best - mgPerL)).toBeLessThan(0.002);
  });

  // The same equation with the pressure of the US Standard Atmosphere 1976.
  it.each([
    { metres: 500, mgPerL: 8.554 },
    { metres: 1000, mgPerL: 8.041 },
    { metres: 2000, mgPerL: 7.088 },
  ])("$mgPerL mg/L in fresh water at $metres m", ({ metres, mgPerL }) => {
    const altitude = exactly(as<Metres>(metres));
    const { value } = answered(
      oxygenSolubility(ppt(0), celsius(20), { air: { kind: "altitude", altitude } }),
    );
    expect(Math.abs(value.saturation.best - mgPerL)).toBeLessThan(0.002);
  });

  it("the two published fits agree within half a per cent", () => {
    // mg/L ÷ 31.9988 g/mol ÷ density is µmol/kg; both rest on the same measurements.
    for (const t of [5, 15, 25, 30]) {
      const { value } = answered(oxygenSolubility(ppt(35), celsius(t)));
      const { density } = answered(convertSalinity(ppt(35), celsius(t))).value;
      const fromMg = ((value.saturation.best / 31.9988) * 1e6) / density.best;
      expect(fromMg / value.saturationPerKg.best).toBeCloseTo(1, 2);
    }
  });

  it("puts a reading beside it", () => {
    const measured = (c: number) =>
      oxygenSolubility(ppt(35), celsius(25), { measured: exactly(as<MgPerL>(c)) });
    expect(answered(measured(6)).value.percentOfSaturation?.best).toBeCloseTo(88.6, 1);
    expect(raised(measured(6))).toContain("meter-set-to-fresh");
    expect(raised(measured(4))).toContain("oxygen-low");
    expect(raised(measured(8))).toContain("oversaturated");
    expect(answered(oxygenSolubility(ppt(35), celsius(25))).value).not.toHaveProperty("percentOfSaturation");
  });

  it("is as vague as the temperature", () => {
    const answer = answered(
      oxygenSolubility(ppt(35), between(as<DegreesC>(20), as<DegreesC>(25)), {
        air: { kind: "pressure", pressure: exactly(as<KiloPascals>(101.325)) },
      }),
    );
    expect(answer.value.saturation.low).toBeCloseTo(6.772, 2);
    expect(answer.value.saturation.high).toBeCloseTo(7.396, 2);
    expect(answer.driver?.input).toBe("temperature");
  });

  it("refuses air nobody breathes", () => {
    const pressure = exactly(as<KiloPascals>(2));
    const result = oxygenSolubility(ppt(0), celsius(20), { air: { kind: "pressure", pressure } });
    expect(refused(result)).toBe("not-credible");
  });
});
