import type { PracticalSalinity } from "../quantity/units.ts";
import type { AdjustSalinityInput, SalinityAdjustment } from "./adjust-salinity.ts";
import { seawaterDensity } from "./density.ts";
import { figure } from "./figure.ts";
import { massOfSeawater } from "./mass.ts";
import type { Route } from "./salinity-amounts.ts";
import { absoluteSalinity } from "./salinity-scales.ts";
import type { YieldFactor } from "./salt-product.ts";

/** The sum of a salinity change, step by step with its figures. */
export function adjustmentWorking(
  route: Route,
  input: AdjustSalinityInput,
  added: PracticalSalinity,
  yieldFactor: YieldFactor,
  amounts: Pick<SalinityAdjustment, "saltKg" | "addL" | "resultingVolumeL">,
): readonly string[] {
  const t = input.temperature.best;
  const now = input.now.best;
  const target = input.target.best;
  if (now === target) return ["the tank is at its target already: nothing to do"];
  const tankDensity = seawaterDensity(now, t);
  const massKg = massOfSeawater(input.volume.best, now, t);
  const first = `mass of the tank's water = ${figure(input.volume.best)} L × ${figure(tankDensity, 5)} kg/m³ ÷ 1000 = ${figure(massKg)} kg`;
  const litres = `${figure(amounts.addL.best)} L`;
  switch (route) {
    case "dry salt":
      return [
        first,
        `salt per kg now and at the target: ${figure(absoluteSalinity(now))} and ${figure(absoluteSalinity(target))} g/kg`,
        `product = mass × (target − now) ÷ (1000 × yield factor ${figure(yieldFactor)} − target), in g/kg = ${figure(amounts.saltKg.best)} kg`,
        `volume afterwards = (mass + product) ÷ density at the target = ${figure(amounts.resultingVolumeL.best)} L`,
      ];
    case "pour in":
      return [
        first,
        `water to add = mass × (target ${figure(target)} − now ${figure(now)}) ÷ (added ${figure(added)} − target) ÷ density of the added water = ${litres}`,
        `volume afterwards = both masses ÷ density at the target = ${figure(amounts.resultingVolumeL.best)} L`,
      ];
    case "exchange":
      return [
        `densities: tank ${figure(tankDensity, 5)}, new water ${figure(seawaterDensity(added, t), 5)} kg/m³`,
        `out = tank density × (now ${figure(now)} − target ${figure(target)}); in = new density × (target − new water ${figure(added)})`,
        `litres to exchange = ${figure(input.volume.best)} L × out ÷ (out + in) = ${litres}`,
      ];
  }
}
