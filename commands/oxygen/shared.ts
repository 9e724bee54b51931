import { type AirEntry, readAir } from "../../src/core/water/read-air.ts";
import { type Option, reading } from "../../src/kit/index.ts";

/** Height above the sea or true air pressure. */
export const air = (
  description = "Height above the sea, or the true air pressure; sea level if left out",
): Option<AirEntry, true> => reading(description, "650 m", (text, { habits }) => readAir(text, habits));
