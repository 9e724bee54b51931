import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toTotalScale } from "../../src/core/carbonate/ph-scales.ts";
import * as ammonia from "../../src/core/nitrogen/ammonia-fraction.ts";
import * as chamber from "../../src/core/nitrogen/chamber-oxygen.ts";
import { cyclingState, totalNitrogen } from "../../src/core/nitrogen/cycling-model.ts";
import { runCycle } from "../../src/core/nitrogen/cycling-run.ts";
import * as meal from "../../src/core/nitrogen/meal-pulse.ts";
import { nitrateBeforeChange, steadyNitrate } from "../../src/core/nitrogen/nitrate.ts";
import { nitrogenBalance } from "../../src/core/nitrogen/nitrogen-balance.ts";
import { asNitrogen, fromNitrogen, type NitrogenForm } from "../../src/core/nitrogen/nitrogen-units.ts";
import { boxOut } from "../../src/core/nitrogen/train-box.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { as, type Fraction, type Quantity } from "../../src/core/quantity/units.ts";

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);

describe("un-ionised ammonia", () => {
  it("rises with pH and with temperature, and falls with salinity", () => {
    fc.assert(
      fc.property(within(6.5, 9), within(6, 38), within(0, 40), (pH, t, s) => {
        const share = (ph: number, tC: number, sp: number) =>
          ammonia.ammoniaFraction(ammonia.ammoniumPkaKhoo(q(sp), q(tC)), q(ph));
        const here = share(pH, t, s);
        expect(here).toBeGreaterThan(0);
        expect(here).toBeLessThan(1);
        expect(share(pH + 0.1, t, s)).toBeGreaterThan(here);
        expect(share(pH, t + 1, s)).toBeGreaterThan(here);
        expect(share(pH, t, s + 1)).toBeLessThan(here);
      }),
    );
  });

  it("comes out the same from both sea-water models once they are on one scale", () => {
    // Source: the two fits agree within 0.0043 pK over salinity 20–40 and 15–30 °C.
    fc.assert(
      fc.property(within(20, 40), within(15, 30), (s, t) => {
        const total = ammonia.ammoniumPkaTotalScale(q(s), q(t));
        const free = total - toTotalScale("free", q(s), q(t));
        expect(Math.abs(free - ammonia.ammoniumPkaKhoo(q(s), q(t)))).toBeLessThan(0.005);
      }),
    );
  });
});

describe("forms of nitrogen", () => {
  it("come back unchanged from nitrogen", () => {
    const forms: NitrogenForm[] = ["NO3-N", "NO3", "NO2-N", "NO2", "NH4-N", "NH4", "NH3-N", "NH3", "TAN"];
    fc.assert(
      fc.property(within(0, 500), fc.constantFrom(...forms), (value, form) => {
        expect(fromNitrogen(asNitrogen(value, form), form)).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe("the pulse after a meal", () => {
  it("gives off all of it in the end, and never less as time goes on", () => {
    fc.assert(
      fc.property(within(0.1, 50), within(1, 20), within(0, 100), (total, tau, hours) => {
        const soFar = meal.mealAmmoniaSoFar(q(total), q(tau), q(hours));
        expect(meal.mealAmmoniaSoFar(q(total), q(tau), q(hours + 1))).toBeGreaterThanOrEqual(soFar);
        expect(soFar).toBeLessThanOrEqual(total);
        expect(meal.mealAmmoniaSoFar(q(total), q(tau), q(tau * 60))).toBeCloseTo(total, 9);
      }),
    );
  });

  it("peaks between the average and the lone meal", () => {
    fc.assert(
      fc.property(within(0.1, 50), within(2, 20), within(1, 200), (total, tau, every) => {
        const peak = meal.repeatedMealPeak(q(total), q(tau), q(every));
        expect(peak).toBeGreaterThanOrEqual((total / every) * (1 - 1e-9));
        // Meals far apart leave only the lone peak; earlier meals can only add to it.
        expect(peak).toBeGreaterThanOrEqual(meal.mealAmmoniaPeak(q(total), q(tau)) * (1 - 1e-9));
      }),
    );
  });

  it("stands lower in the water the faster it is taken out, and near output ÷ removal when meals run together", () => {
    fc.assert(
      fc.property(within(0.1, 50), within(2, 20), within(1, 100), within(0.01, 5), (g, tau, every, k) => {
        const here = meal.highestStanding(q(g), q(tau), q(every), k);
        expect(meal.highestStanding(q(g), q(tau), q(every), k * 1.3)).toBeLessThan(here);
        expect(here * k).toBeGreaterThanOrEqual((g / every) * (1 - 1e-3));
        expect(here * k).toBeLessThanOrEqual(meal.repeatedMealPeak(q(g), q(tau), q(every)) * (1 + 1e-6));
      }),
    );
  });
});

describe("a stirred chamber", () => {
  it("balances its oxygen: in + air = out + use", () => {
    fc.assert(
      fc.property(
        within(0.01, 300),
        within(0, 8),
        within(0, 200),
        within(0.1, 2),
        within(0, 50),
        (flow, oxygenIn, demand, half, capacity) => {
          const out = chamber.oxygenOutMonod(q(flow), q(oxygenIn), q(demand), q(half), {
            capacityM3PerDay: capacity,
            saturation: q(6.8),
          });
          const use = (demand * out) / (half + out);
          const supply = flow * oxygenIn + capacity * 6.8;
          expect(out).toBeGreaterThanOrEqual(0);
          expect(flow * out + capacity * out + use).toBeCloseTo(supply, 6);
        },
      ),
    );
  });
});

describe("nitrate under water changes", () => {
  it("loses at each change, once settled, just what was gained", () => {
    fc.assert(
      fc.property(within(0.01, 50), within(0.01, 1), within(0, 20), (rise, changed, source) => {
        const { before, after } = steadyNitrate(q(rise), q<Fraction>(changed), q(source));
        expect(before - after).toBeCloseTo(rise, 6);
        expect(after).toBeCloseTo((1 - changed) * before + changed * source, 6);
      }),
    );
  });

  it("settles where the recurrence leads", () => {
    fc.assert(
      fc.property(within(0.1, 20), within(0.05, 0.9), within(0, 100), (rise, changed, start) => {
        const { before } = steadyNitrate(q(rise), q<Fraction>(changed), q(0));
        expect(nitrateBeforeChange(2000, q(start), q(rise), q(changed), q(0))).toBeCloseTo(before, 6);
      }),
    );
  });
});

describe("a box of the filter", () => {
  it("balances ammonia and oxygen together", () => {
    fc.assert(
      fc.property(
        within(0.01, 300),
        within(0, 300),
        within(0, 20),
        within(0, 100),
        within(0, 20),
        within(0, 7),
        (flow, area, wasteDemand, aeration, tan, oxygen) => {
          const film = { firstOrder: q<Quantity<"m/d">>(0.09), ceiling: q<Quantity<"g N/m²/d">>(0.28) };
          const box = {
            flow: q<Quantity<"m³/d">>(flow),
            area: q<Quantity<"m²">>(area),
            wasteDemand,
            aeration,
          };
          const out = boxOut(box, { tan: q(tan), oxygen: q(oxygen) }, film, q(6.7));
          // Source: mass balance with the published half-speed levels 0.5 and 0.2 mg/L and 4.57 g O₂ per g N.
          const uptake = Math.min(0.28, 0.09 * out.tan) * area * (out.oxygen / (0.5 + out.oxygen));
          expect(flow * (tan - out.tan)).toBeCloseTo(uptake, 6);
          const used = 4.57 * uptake + (wasteDemand * out.oxygen) / (0.2 + out.oxygen);
          const brought = flow * (oxygen - out.oxygen) + aeration * (6.7 - out.oxygen);
          expect(Math.abs(used - brought)).toBeLessThan(1e-6 * (1 + flow + aeration + used));
        },
      ),
    );
  });
});

describe("the nitrogen balance sheet", () => {
  it("closes: every gram of food is found again", () => {
    const share = within(0, 0.5);
    fc.assert(
      fc.property(
        within(0, 50),
        share,
        share,
        within(0, 3),
        within(0, 3),
        within(0, 100),
        within(0.01, 1),
        (n, growth, solids, skim, algae, nitrate, changed) => {
          const result = nitrogenBalance({
            volumeL: exactly(q(1000)),
            feedN: exactly(q(n)),
            retainedShare: exactly(q(growth)),
            solidsShare: exactly(q(solids)),
            skimmate: exactly(q(skim)),
            algaeHarvest: exactly(q(algae)),
            nitrate: exactly(q(nitrate)),
            waterChange: { changed: exactly(q(changed)), everyDays: q(7), sourceNitrate: exactly(q(1)) },
          });
          if (result.kind === "no-answer") throw new Error(result.reason.code);
          const { lines } = result.value;
          const left = lines.find((line) => line.name === "left in the water")?.gNPerDay.best ?? Number.NaN;
          const others = lines.filter((line) => line.name !== "left in the water");
          expect(others.reduce((sum, line) => sum + line.gNPerDay.best, 0)).toBeCloseTo(left, 9);
        },
      ),
    );
  });
});

describe("a cycling filter", () => {
  it("keeps every milligram of nitrogen, through doses, water changes, growth and decay", () => {
    const parameters = fc.record({
      temperatureC: within(15, 30),
      oxygenMgPerL: within(2, 8),
      saltFactor: within(0.3, 1),
      ammoniaGrowthScale: within(0.6, 1.5),
      nitriteGrowthScale: within(0.6, 1.5),
      halfFoodScale: within(0.5, 2),
      mineralisationPerDay: within(0, 0.2),
      loadMgNPerLDay: within(0, 2),
      loadAlkalinity: fc.constantFrom(0, 1),
      isAlkalinityLimited: fc.boolean(),
    });
    const change = fc.record({ day: fc.integer({ min: 0, max: 39 }), changed: within(0, 0.9) });
    const dose = fc.record({ day: fc.integer({ min: 0, max: 39 }), rise: within(0, 4) });
    fc.assert(
      fc.property(
        parameters,
        within(0, 4),
        within(-5, -1),
        fc.array(change, { maxLength: 3 }),
        fc.array(dose, { maxLength: 3 }),
        (p, tan, logSeed, waterChanges, loggedDoses) => {
          const start = cyclingState(tan, 10 ** logSeed, 10 ** logSeed, 2.5);
          const run = runCycle(p, start, {
            days: 40,
            pointsPerDay: 1,
            doseTo: 2,
            againBelow: 0.5,
            waitsAboveNitrite: 5,
            handUntilDay: -1,
            loggedDoses,
            waterChanges,
            sourceAlkalinity: 2.5,
            proof: 2,
            passBelow: 0.1,
          });
          const expected = totalNitrogen(start) + run.added - run.removed;
          expect(Math.abs(totalNitrogen(run.state) - expected)).toBeLessThan(1e-6);
          // Nothing goes below zero by more than the stepper's accuracy.
          for (const each of run.state.subarray(0, 6)) expect(each).toBeGreaterThan(-1e-4);
        },
      ),
      { numRuns: 60 },
    );
  });
});
