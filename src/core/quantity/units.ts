/** Quantities are plain numbers carrying their unit in the type only, so that litres cannot be
 *  passed where kilograms are meant. The brand costs nothing when running. */
export type Quantity<Unit extends string> = number & { readonly unit: Unit };

export type Litres = Quantity<"L">;
export type Kilograms = Quantity<"kg">;
export type Grams = Quantity<"g">;
export type Metres = Quantity<"m">;
export type Centimetres = Quantity<"cm">;
export type SquareMetres = Quantity<"m²">;
export type DegreesC = Quantity<"°C">;
/** How far two temperatures lie apart; not a point on the scale. */
export type DegreesCApart = Quantity<"°C apart">;
export type LitresPerHour = Quantity<"L/h">;
export type LitresPerDay = Quantity<"L/d">;
export type Watts = Quantity<"W">;
export type Seconds = Quantity<"s">;
export type Hours = Quantity<"h">;
export type Days = Quantity<"d">;
/** Practical salinity, PSS-78: a ratio with no unit; what hobby instruments call ppt or PSU. */
export type PracticalSalinity = Quantity<"PSS-78">;
/** Absolute salinity: grams of sea salt per kilogram of solution. */
export type AbsoluteSalinity = Quantity<"g/kg">;
/** Specific gravity: a ratio of two densities, meaningless without both temperatures. */
export type SpecificGravity = Quantity<"SG">;
export type MilliSiemensPerCm = Quantity<"mS/cm">;
export type KgPerM3 = Quantity<"kg/m³">;
export type MgPerL = Quantity<"mg/L">;
export type MicromolPerKg = Quantity<"µmol/kg">;
export type MilliequivPerL = Quantity<"meq/L">;
export type GramsPerDay = Quantity<"g/d">;
export type GramsPerHour = Quantity<"g/h">;
export type KiloPascals = Quantity<"kPa">;
/** A share of one: 0.3 is thirty per cent. */
export type Fraction = Quantity<"fraction">;
export type PH = Quantity<"pH">;
/** An amount in the member's own currency. */
export type Money = Quantity<"money">;

/** Puts a unit on a plain number: `as<Litres>(3.2)`. The only cast of the core. */
export function as<Q extends Quantity<string>>(value: number): Q {
  return value as Q;
}
