import type { GravityScale } from "../core/quantity/read.ts";
import { gravityText } from "../core/quantity/salinity-conditions.ts";

const SIXTY_F_C = (60 - 32) / 1.8;

/** Scales that hydrometers are sold with: the sample's temperature and that of the pure water it is compared with. */
export const GRAVITY_SCALES = {
  "25/25 °C": { sampleC: 25, referenceC: 25 },
  "20/20 °C": { sampleC: 20, referenceC: 20 },
  "60/60 °F": { sampleC: SIXTY_F_C, referenceC: SIXTY_F_C },
  "15.6/4 °C": { sampleC: 15.6, referenceC: 4 },
} as const satisfies Readonly<Record<string, GravityScale>>;

export const GRAVITY_SCALE_NAMES = Object.keys(GRAVITY_SCALES) as (keyof typeof GRAVITY_SCALES)[];

/** The scale as it stands on the instrument. */
export function sayGravityScale(scale: GravityScale): string {
  return gravityText(scale);
}
