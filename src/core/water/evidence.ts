import type { Constant } from "../result.ts";

/** Constants that several answers of this room rest on, as the working shows them. */
export const DENSITY_EQUATION: Constant = {
  name: "density of water and seawater",
  value: "EOS-80 at one atmosphere, 15 coefficients, kg/m³",
  source: "millero-poisson-1981",
};

export const SALT_PER_SALINITY: Constant = {
  name: "salt per unit of practical salinity",
  value: "35.16504/35 g per kg of solution",
  source: "millero-2008",
};
