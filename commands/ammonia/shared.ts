import { type AmmoniaReading, readAmmonia } from "../../src/core/nitrogen/read-nitrogen.ts";
import { type Option, reading } from "../../src/kit/index.ts";

/** A kit's total ammonia; whether it means nitrogen, NH₃ or NH₄ is asked when not said. */
export const ammonia = (description: string): Option<AmmoniaReading, true> =>
  reading(description, "0.5 mg/L as NH4", (text, { habits }) => readAmmonia(text, habits));
