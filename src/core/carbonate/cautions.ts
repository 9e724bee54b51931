/** Cautions of the carbonate room: code → the figures its sentence needs. */
export interface CarbonateCautions {
  "dissolve-apart": Record<string, never>;
  "raise-in-order": Record<string, never>;
  "carbonate-jumps-ph": Record<string, never>;
  "bicarbonate-dips-ph": Record<string, never>;
  "carbonate-irritates": Record<string, never>;
  "alkalinity-with-ammonia": Record<string, never>;
  "calcium-chloride-heats": Record<string, never>;
  "chloride-builds-up": Record<string, never>;
  "sulphate-builds-up": Record<string, never>;
  "target-unusual": { mineral: string; target: number; unit: string; low: number; high: number };
  "pH-electrode-doubt": { pH: number };
  "ventilate-do-not-buffer": Record<string, never>;
  "carbon-dioxide-of-the-room": { microatm: number };
  "alkalinity-low": { dkh: number; low: number; high: number };
  "alkalinity-high": { dkh: number; low: number; high: number };
  "water-changes-cannot-hold": { settlesDkh: number };
}

/** Refusals of the carbonate room. */
export interface CarbonateRefusals {
  "mineral-already-there": { mineral: string; now: number; target: number; unit: string };
  "carbonate-needs-sea-water": { salinity: number; min: number };
  "carbonate-reading-impossible": { quantity: string; value: number; unit: string; min: number; max: number };
}
