/** Cautions of the tank room: code → the figures its sentence needs. */
export interface TankCautions {
  "volume-from-label": { containers: string };
}

/** Refusals of the tank room. */
export interface TankRefusals {
  "nothing-left-to-hold-water": { container: string; grossL: number; displacedL: number };
}
