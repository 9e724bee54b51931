import { as, type DegreesC, type Quantity } from "../quantity/units.ts";

/** Temperature on the International Practical Temperature Scale of 1968, which the seawater equations
 *  of the 1970s and 80s were fitted in. A thermometer of today shows ITS-90. */
export type DegreesT68 = Quantity<"°C IPTS-68">;

/** Source: fofonoff-millard-1983 is in t68; the factor is the one used by gsw-3-6-16. */
const T68_PER_T90 = 1.00024;

/** The 1968 temperature of an ITS-90 reading; 0.006 °C more at 25 °C. */
export function t68FromT90(t: DegreesC): DegreesT68 {
  return as<DegreesT68>(t * T68_PER_T90);
}
