import {
  type MineralLevel,
  readDegreesKH,
  readMineralLevel,
} from "../../src/core/carbonate/read-mineral-level.ts";
import type { DegreesKH } from "../../src/core/nitrogen/nitrification.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { type Option, reading } from "../../src/kit/index.ts";

export const alkalinity = (description: string): Option<Estimate<DegreesKH>, true> =>
  reading(description, "8 dKH", (text, { habits }) => readDegreesKH(text, habits));

export const mineralLevel = (description: string, example: string): Option<MineralLevel, true> =>
  reading(description, example, (text, { habits }) => readMineralLevel(text, habits));
