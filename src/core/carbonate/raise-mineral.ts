import type { MillilitresPerMinute } from "../dosing/dosing-pump.ts";
import { type DoseSource, type TargetDose, targetDose } from "../dosing/target-dose.ts";
import { unusableFigure } from "../dosing/usable-figures.ts";
import { type Estimate, mapEstimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { type Mineral, type MineralSalt, mineralSalt, saltPerUnit } from "./mineral-salts.ts";

interface MineralHabit {
  readonly unit: "dKH" | "mg/L";
  /** Most that one day may change. */
  readonly dailyCap: number;
  /** What marine systems are usually kept at. */
  readonly usual: { readonly low: number; readonly high: number };
}

/** Source: common-practice, all of it. */
const HABITS: Readonly<Record<Mineral, MineralHabit>> = {
  alkalinity: { unit: "dKH", dailyCap: 1, usual: { low: 7, high: 12 } },
  calcium: { unit: "mg/L", dailyCap: 20, usual: { low: 380, high: 460 } },
  magnesium: { unit: "mg/L", dailyCap: 50, usual: { low: 1200, high: 1400 } },
};

export interface MineralDose extends Omit<TargetDose, "changePerDay"> {
  readonly salt: MineralSalt;
  readonly mineral: Mineral;
  /** dKH for alkalinity, mg/L for calcium and magnesium. */
  readonly unit: "dKH" | "mg/L";
  readonly change: Estimate;
  readonly changePerDay: Estimate;
  readonly dailyCap: number;
}

/** A stock made by weighing the salt, as bought, into a finished volume. */
export interface MineralStock {
  readonly gramsPerL: Estimate;
  readonly reservoir?: Estimate<Litres>;
  readonly pump?: Estimate<MillilitresPerMinute>;
}

/** How much of a salt brings alkalinity, calcium or magnesium from one reading to another, day by day. */
export function raiseMineral(question: {
  readonly salt: MineralSalt;
  readonly now: Estimate;
  readonly target: Estimate;
  readonly systemVolume: Estimate<Litres>;
  /** Share of the weighed product that is the salt, its own water of crystallisation included. */
  readonly purity: Estimate<Fraction>;
  /** Absent when the salt is weighed out dry for each dose. */
  readonly stock?: MineralStock;
  readonly dosesPerDay?: number;
  /** A slower pace than the usual limit; a faster one is not taken. */
  readonly slowerCap?: number;
  readonly isAmmoniaPresent: boolean;
}): Answer<MineralDose> | NoAnswer {
  const { salt, now, target, systemVolume, purity } = question;
  const { mineral } = mineralSalt(salt);
  const { unit, dailyCap: usualCap, usual } = HABITS[mineral];
  const dailyCap = Math.min(usualCap, question.slowerCap ?? usualCap);
  const unusable = unusableFigure([
    { name: `${mineral} now`, estimate: now, unit, zeroAllowed: true },
    { name: `${mineral} wanted`, estimate: target, unit },
    { name: "purity", estimate: purity, unit: "of one", max: 1 },
    { name: "daily limit", estimate: { best: dailyCap, low: dailyCap, high: dailyCap }, unit },
    ...(question.stock === undefined
      ? []
      : [{ name: "stock strength", estimate: question.stock.gramsPerL, unit: "g/L" }]),
  ]);
  if (unusable !== undefined) return unusable;
  const gap = propagate({ "reading now": now, target }, (v) => ({ change: v.target - v["reading now"] }));
  const { change } = gap.estimates;
  if (!(change.low > 0)) {
    return noAnswer("mineral-already-there", { mineral, now: now.high, target: target.low, unit });
  }
  const perUnit = saltPerUnit(salt);
  const dose = targetDose({
    change: mapEstimate(change, (value) => as<MgPerL>(value * perUnit)),
    systemVolume,
    source: doseSource(question.stock, purity),
    dailyCap: as<MgPerL>(dailyCap * perUnit),
    dosesPerDay: question.dosesPerDay ?? 1,
    substance: mineralSalt(salt).name,
    ...soluteOf(salt),
  });
  if (dose.kind === "no-answer") return dose;
  const { changePerDay, ...amounts } = dose.value;
  const { driver } = dose;
  return {
    ...dose,
    value: {
      ...amounts,
      salt,
      mineral,
      unit,
      change,
      changePerDay: mapEstimate(changePerDay, (value) => value / perUnit),
      dailyCap,
    },
    method: `${mineralSalt(salt).name} by what it holds of ${mineral}`,
    working: [
      `salt per litre = change in ${unit} × ${perUnit.toFixed(2)} mg per ${unit}`,
      ...dose.working,
      `days = change / ${dailyCap} ${unit}, rounded up`,
    ],
    constants: [
      {
        name: `${mineralSalt(salt).name} per ${unit} and litre`,
        value: `${perUnit.toFixed(2)} mg`,
        source: "standard-atomic-weights",
      },
      { name: "daily limit", value: `${usualCap} ${unit}`, source: "common-practice" },
    ],
    sources: ["mass-balance", "standard-atomic-weights", "common-practice"],
    cautions: [
      ...(target.best < usual.low || target.best > usual.high
        ? [caution("target-unusual", { mineral, target: target.best, unit, ...usual })]
        : []),
      ...saltCautions(salt, mineral, question.isAmmoniaPresent),
      ...dose.cautions.map((item) =>
        item.code === "split-over-days"
          ? caution("split-over-days", { days: amounts.days, cap: dailyCap, unit }, item.level)
          : item,
      ),
    ],
    driver: driver?.input === "change wanted" ? (gap.drivers.change ?? driver) : driver,
  };
}

function soluteOf(salt: MineralSalt) {
  const { solute } = mineralSalt(salt);
  return solute === undefined ? {} : { solute };
}

/** The stock counted by its pure salt, so that purity is one of its ranges. */
function doseSource(stock: MineralStock | undefined, purity: Estimate<Fraction>): DoseSource {
  if (stock === undefined) return { kind: "solid", purity };
  const { gramsPerL, ...rest } = stock;
  const { estimates } = propagate({ gramsPerL, purity }, (v) => ({ pure: v.gramsPerL * v.purity }));
  return { kind: "stock", strength: { value: estimates.pure, kind: "g/L" }, ...rest };
}

function saltCautions(salt: MineralSalt, mineral: Mineral, isAmmoniaPresent: boolean): Caution[] {
  const cautions: Caution[] = [];
  if (mineral === "alkalinity" && isAmmoniaPresent) {
    cautions.push(caution("alkalinity-with-ammonia", {}, "danger"));
  }
  if (mineral !== "magnesium") cautions.push(caution("dissolve-apart", {}, "warning"));
  cautions.push(caution("raise-in-order", {}, "note"));
  if (salt === "NaHCO3") cautions.push(caution("bicarbonate-dips-ph", {}, "note"));
  else if (mineral === "alkalinity") {
    cautions.push(caution("carbonate-jumps-ph", {}, "warning"));
    if (salt.startsWith("Na2CO3")) cautions.push(caution("carbonate-irritates", {}, "warning"));
  }
  if (salt === "CaCl2" || salt === "CaCl2.2H2O" || salt === "MgCl2") {
    cautions.push(caution("calcium-chloride-heats", {}, "warning"));
  }
  if (salt.includes("Cl2")) cautions.push(caution("chloride-builds-up", {}, "note"));
  if (salt.includes("SO4")) cautions.push(caution("sulphate-builds-up", {}, "note"));
  return cautions;
}
