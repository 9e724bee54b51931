import { describe, expect, it } from "vitest";
import {
  ashraeEvaporation,
  dewPoint,
  latentHeat,
  shahEvaporation,
  shahRate,
  smithEvaporation,
  vapourPressure,
} from "../../../../src/core/plant/evaporation.ts";
import { dailyEvaporation, type EvaporationInputs } from "../../../../src/core/plant/evaporation-per-day.ts";
import { CONDUCTIVITY, uValue } from "../../../../src/core/plant/heat.ts";
import { type HeatInputs, heatBalance } from "../../../../src/core/plant/heat-balance.ts";
import { temperatureChange } from "../../../../src/core/plant/temperature-change.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const exact = <Q extends number>(value: number) => exactly(value as Q);

describe("moist air", () => {
  // iapws-if97 through a reference library: 3.1697 kPa at 25 °C; latent heat 2.454, 2.442, 2.430 MJ/kg.
  it("has the vapour pressure and latent heat of the steam tables", () => {
    expect(vapourPressure(as(25)) / 3.1697).toBeCloseTo(1, 3);
    for (const [celsius, heat] of [
      [20, 2.454],
      [25, 2.442],
      [30, 2.43],
    ] as const) {
      expect(latentHeat(as(celsius)) / 1e6).toBeCloseTo(heat, 3);
    }
  });
  // green-carritt-1967: 1 − 0.000537 × 35 = 0.9812.
  it("holds a little less over seawater", () => {
    expect(vapourPressure(as(25), as(35)) / vapourPressure(as(25))).toBeCloseTo(0.9812, 4);
  });
  it("settles at the room's own temperature when saturated, and lower when dry", () => {
    expect(dewPoint(as(22), as(1))).toBeCloseTo(22, 9);
    const t = dewPoint(as(22), as(0.45));
    expect(vapourPressure(t)).toBeCloseTo(0.45 * vapourPressure(as(22)), 9);
    expect(dewPoint(as(-5), as(0.5))).toBeLessThan(-5);
  });
});

describe("evaporation from 2.60 m² at 25.5 °C", () => {
  // The three formulas worked apart from this project (shah-2014, ashrae-hvac-applications,
  // smith-lof-jones-1998), fresh water, kg a day to three figures.
  it.each([
    [22, 0.45, 9.3, 11.2, 12.5],
    [20, 0.3, 11.5, 15.3, 15.4],
    [26, 0.6, 5.6, 4.7, 7.5],
  ])("into %d °C at humidity %f", (roomC, humidity, ashrae, shah, smith) => {
    const at = [as<never>(2.6), as<never>(25.5), as<never>(roomC), as<never>(humidity)] as const;
    expect(ashraeEvaporation(...at, 0.5)).toBeCloseTo(ashrae, 0);
    expect(Math.abs(shahEvaporation(...at) - shah)).toBeLessThan(0.1);
    expect(Math.abs(smithEvaporation(...at) - smith)).toBeLessThan(0.1);
  });
  // shah-2014, the second formula: 0.00005 × (2338.8 − 0.3 × 4759) Pa = 0.0456 kg/(m² h), steam-table pressures.
  it("goes on slowly where the room's air is too light to rise", () => {
    expect(shahRate(as(20), as(32), as(0.3))).toBeCloseTo(0.0456, 3);
  });
  it("throws for a humidity given in per cent", () => {
    expect(() => shahRate(as(25), as(22), as(45))).toThrow(RangeError);
  });
  it("is nothing into air as wet as the water is warm", () => {
    expect(shahRate(as(20), as(26), as(1))).toBe(0);
    expect(ashraeEvaporation(as(1), as(20), as(26), as(1), 0.5)).toBe(0);
    expect(smithEvaporation(as(1), as(20), as(26), as(1))).toBe(0);
  });

  const inputs: EvaporationInputs = {
    openAreaM2: exact(2.6),
    waterC: exact(25.5),
    roomC: exact(22),
    humidity: exact(0.45),
    salinity: exact(0),
    isDisturbed: false,
  };
  it("spans the formulas, the middle one being best", () => {
    const answer = answered(dailyEvaporation(inputs));
    const { kgPerDay, coolingW, dewPointC } = answer.value;
    expect(kgPerDay.best).toBeCloseTo(11.2, 1);
    expect(kgPerDay.low).toBeCloseTo(9.3, 1);
    expect(kgPerDay.high).toBeCloseTo(12.5, 1);
    expect(coolingW.best).toBeCloseTo((kgPerDay.best * 2.441e6) / 86_400, 0);
    expect(dewPointC.best).toBeCloseTo(9.5, 1); // 22 °C at 45 %: 9.5 °C in psychrometric tables (from memory)
    expect(raised(answer)).toContain("moisture-into-the-room");
    expect(answer.driver?.input).toBe("choice of formula");
  });
  it("reaches the pool formula at full activity when disturbed", () => {
    // 18.6 kg/day: ashrae-hvac-applications, activity 1.
    const { kgPerDay } = answered(dailyEvaporation({ ...inputs, isDisturbed: true })).value;
    expect(kgPerDay.high).toBeCloseTo(18.6, 1);
    expect(kgPerDay.low).toBeCloseTo(11.2, 1);
  });
  it("refuses a humidity in per cent and water that boils", () => {
    expect(refused(dailyEvaporation({ ...inputs, humidity: exact(45) }))).toBe("unusable-figure");
    expect(refused(dailyEvaporation({ ...inputs, waterC: exact(100) }))).toBe("unusable-figure");
    expect(refused(dailyEvaporation({ ...inputs, openAreaM2: exact(0) }))).toBe("unusable-figure");
  });
});

describe("heat", () => {
  // 1 ÷ (1/200 + t/k + 1/7.7), by hand: iso-6946 films.
  it.each([
    ["acrylic", 25, 3.75],
    ["glass", 15, 6.67],
    ["plastic", 4, 6.96],
  ] as const)("through %s of %d mm passes %f W/m²K", (material, mm, u) => {
    expect(uValue(200, as(mm), CONDUCTIVITY[material], 7.7)).toBeCloseTo(u, 1);
    expect(() => uValue(0, as(mm), CONDUCTIVITY[material], 7.7)).toThrow(RangeError);
  });

  const inputs: HeatInputs = {
    walls: [{ areaM2: as(5), material: "acrylic", thicknessMm: as(25) }],
    openAreaM2: exact(2.6),
    waterC: exact(25.5),
    roomC: exact(20),
    humidity: exact(0.45),
    isDisturbed: false,
    equipmentW: exact(100),
  };
  it("leaves through walls, surface and evaporation, and sets the heater", () => {
    const answer = answered(heatBalance(inputs));
    const { wallsW, surfaceW, evaporationW, lossW, heaterW, chillerW, uaWPerK } = answer.value;
    expect(wallsW.best).toBeCloseTo(103.2, 1); // 3.753 × 5 × 5.5
    expect(surfaceW.best).toBeCloseTo(9 * 2.6 * 5.5, 6);
    expect(lossW.best).toBeCloseTo(wallsW.best + surfaceW.best + evaporationW.best, 9);
    expect(heaterW.best).toBeCloseTo(lossW.best * 1.25, 9);
    expect(chillerW.best).toBe(0);
    expect(uaWPerK.best).toBeCloseTo(3.753 * 5 + 9 * 2.6, 2);
    expect(raised(answer)).toContain("two-heaters");
    expect(raised(answer)).toContain("ask-an-electrician");
    expect(raised(answer)).not.toContain("room-takes-the-heat");
  });
  it("has to be removed when the equipment gives more than is lost", () => {
    const answer = answered(
      heatBalance({ ...inputs, roomC: exact(30), humidity: exact(0.6), equipmentW: exact(900) }),
    );
    const { chillerW, chillerTons, lossW } = answer.value;
    expect(chillerW.best).toBeCloseTo(900 - lossW.best, 9);
    expect(chillerTons.best * 3516.85).toBeCloseTo(chillerW.best, 1); // ashrae-ton
    expect(raised(answer)).toContain("room-takes-the-heat");
    expect(raised(answer)).toContain("chiller-by-heat-removed");
  });
  it("refuses a wall less than nothing and equipment that draws less", () => {
    const walls = [{ areaM2: as<never>(-1), material: "glass", thicknessMm: as<never>(10) }] as const;
    expect(refused(heatBalance({ ...inputs, walls }))).toBe("unusable-figure");
    expect(refused(heatBalance({ ...inputs, equipmentW: exact(-1) }))).toBe("unusable-figure");
  });
});

describe("changing the temperature", () => {
  const inputs = {
    volumeL: exact<never>(2700),
    kelvin: exact<number>(10),
    powerW: exact<never>(2000),
    againstW: exact<never>(0),
  };
  it("takes 31 kWh and 15 hours of 2 kW for 2700 L by 10 K", () => {
    // 2700 L × 4.092 kJ/(L K) × 10 K ÷ 3600 = 30.7 kWh: gsw-heat-capacity.
    const { value } = answered(temperatureChange(inputs));
    expect(value.energyKWh.best).toBeCloseTo(30.7, 1);
    expect(value.hours.best).toBeCloseTo(15.3, 1);
  });
  it("takes longer against a loss, and is refused when the loss wins", () => {
    expect(answered(temperatureChange({ ...inputs, againstW: exact(500) })).value.hours.best).toBeCloseTo(
      20.5,
      1,
    );
    expect(refused(temperatureChange({ ...inputs, againstW: exact(2000) }))).toBe("power-does-not-suffice");
    expect(refused(temperatureChange({ ...inputs, kelvin: exact(0) }))).toBe("unusable-figure");
  });
});
