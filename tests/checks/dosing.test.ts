import { expect, it } from "vitest";
import { ethanolCod, ethanolMass } from "../../src/core/dosing/alcohol.ts";
import { stockForDilution } from "../../src/core/dosing/dilution.ts";
import { pumpSecondsPerDose } from "../../src/core/dosing/dosing-pump.ts";
import { gramsForChange } from "../../src/core/dosing/target-dose.ts";
import { as, type Litres, type Quantity } from "../../src/core/quantity/units.ts";
import { allowedError, checkRows } from "../support/check-rows.ts";

/** Reads one input of a row as a number with the unit that the caller needs. */
type Read = <Q extends Quantity<string>>(name: string) => Q;

const millilitres = (read: Read, name: string) => as<Litres>(read(name) / 1000);
const ethanolPoured = (read: Read) => ethanolMass(millilitres(read, "volume_ml"), read("abv"));

/** What computes each quantity of the table, from the row's inputs, in the row's unit. */
const compute: Record<string, (read: Read, text: (name: string) => string) => number> = {
  dilution_v1_ml: (read) => 1000 * stockForDilution(read("c1"), read("c2"), millilitres(read, "v2_ml")),
  stock_dose_ml: (read) =>
    (1000 * gramsForChange(read("target_mg_l"), read("system_l"))) /
    (read("solute_g") / (read("stock_ml") / 1000)),
  dosing_pump_seconds: (read) =>
    pumpSecondsPerDose(millilitres(read, "total_ml_d"), read("doses_per_day"), read("pump_ml_min")),
  ethanol_mass: (read) => ethanolPoured(read),
  ethanol_cod: (read) => ethanolCod(ethanolPoured(read)),
};

const rows = checkRows("dosing-checks.csv");

it.each(rows.map((row) => [row.id, row.quantity, row] as const))("%s %s", (_id, _quantity, row) => {
  const used = new Set<string>();
  const input = (name: string): unknown => {
    used.add(name);
    if (!(name in row.inputs)) throw new Error(`${row.id} has no input ${name}`);
    return row.inputs[name];
  };
  const read: Read = <Q extends Quantity<string>>(name: string) => as<Q>(Number(input(name)));
  const text = (name: string): string => String(input(name));
  const value = compute[row.quantity]?.(read, text);
  expect(value, "a quantity nobody computes").toBeDefined();
  expect(Math.abs(Number(value) - Number(row.expected))).toBeLessThanOrEqual(allowedError(row));
  expect([...used].sort(), "an input left unread").toEqual(Object.keys(row.inputs).sort());
});

it("computes nothing that no row asks for", () => {
  expect(Object.keys(compute).sort()).toEqual([...new Set(rows.map((row) => row.quantity))].sort());
});
