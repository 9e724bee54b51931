/** Cautions of the tank room: code → the figures its sentence needs. */
export interface TankCautions {
  "volume-from-label": { containers: string };
  "running-level-not-said": { containers: string };
  "inside-or-outside-not-said": { containers: string };
  "wall-not-said": { containers: string };
  "rock-weighed-wet": { containers: string };
  "no-display-named": { containers: string };
}

/** Refusals of the tank room. */
export interface TankRefusals {
  "nothing-left-to-hold-water": { container: string; grossL: number; displacedL: number };
  "level-above-rim": { container: string; levelCm: number; rimCm: number };
  "impossible-container": { container: string; fault: string };
  "no-water-in-system": { containers: string };
}
