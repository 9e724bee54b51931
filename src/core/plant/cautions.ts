import type { WallThicknessReason } from "./wall-thickness.ts";

/** Cautions of the plant room: code → the figures its sentence needs. */
export interface PlantCautions {
  "weir-below-tested-heads": { headMm: number; testedMm: number };
  "water-over-the-teeth": { headMm: number; toothHeightMm: number };
  "drain-too-small": { drain: string; capacityLPerH: number; flowLPerH: number };
  "siphon-loses-prime": { runningLPerH: number; unprimedLPerH: number; flowLPerH: number };
  "standby-too-small": { drain: string; capacityLPerH: number; flowLPerH: number };
  "keep-emergency-pipe-open": Record<string, never>;
  "strainer-takes-area": Record<string, never>;
  "pipe-too-fast": { pipe: string; velocityMPerS: number; limitMPerS: number };
  "pipe-too-slow": { pipe: string; velocityMPerS: number; limitMPerS: number };
  "device-loss-not-given": { devices: string };
  "friction-outside-turbulent": { reynolds: number };
  "pump-curve-from-two-figures": Record<string, never>;
  "pump-near-end-of-curve": { flowLPerH: number; lastLPerH: number };
  "do-pump-off-test": Record<string, never>;
  "check-valve-not-counted": Record<string, never>;
  "return-empties-display": { opening: string; depthMm: number; extraL: number };
  "siphon-break-needs-cleaning": { opening: string; extraL: number };
  "pump-off-floods": { container: string; overMm: number };
  "pump-off-may-flood": { container: string; overMm: number };
  "pump-off-tight": { container: string; leftMm: number; margin: number };
  "thin-walls-bulge": Record<string, never>;
  "cascade-holds-nothing-more": { containers: string };
  "blocked-drain-floods": { riseMm: number; freeboardMm: number };
  "blocked-drain-tight": { riseMm: number; freeboardMm: number };
  "restart-runs-dry": { missingL: number };
  "top-off-floods": { container: string; reservoirL: number; freeL: number };
  "top-off-shifts-salinity": { before: number; after: number };
  "mains-fill-never-stops": Record<string, never>;
  "two-shut-offs": Record<string, never>;
  "spill-on-the-floor": { container: string; litres: number };
  "display-alone-in-outage": Record<string, never>;
  "still-surface-buys-minutes": Record<string, never>;
  "generator-outdoors-only": Record<string, never>;
  "stagnant-filter-water": Record<string, never>;
  "oxygen-already-low": { nowMgPerL: number; alarmMgPerL: number };
  "battery-fades": Record<string, never>;
  "two-heaters": Record<string, never>;
  "room-takes-the-heat": { roomW: number };
  "chiller-by-heat-removed": Record<string, never>;
  "moisture-into-the-room": { kgPerDay: number; dewPointC: number };
  "ask-an-electrician": Record<string, never>;
  "american-rule": Record<string, never>;
  "circuit-overloaded": { circuit: string; amperes: number; limitA: number };
  "start-up-surge": { circuit: string; surgeA: number; ratingA: number };
  "life-support-on-one-circuit": { circuit: string };
  "no-ground-fault-protection": { circuit: string };
  "drip-loops": Record<string, never>;
  "ask-a-structural-engineer": Record<string, never>;
  "floor-figure-is-a-flag": { psf: number; times: number };
  "uneven-feet": { worstMPa: number };
  "ask-a-tank-maker": Record<string, never>;
  "second-hand-container": Record<string, never>;
  "leak-test-outside": Record<string, never>;
  "never-unattended-filling": Record<string, never>;
  "ask-rating-conditions": Record<string, never>;
  "uv-burns": Record<string, never>;
  "uv-is-no-cure": Record<string, never>;
  "uv-short-circuits": Record<string, never>;
  "drinking-water-dose-not-enough": Record<string, never>;
  "slow-corners-mix-later": { boundHours: number };
  "skimmate-overflows": { hours: number };
  "pump-runs-dry": { hours: number };
}

/** Refusals of the plant room. */
export interface PlantRefusals {
  "unusable-figure": { figure: string; value: number; rule: string };
  "pump-cannot-lift": { shutOffHeadM: number; staticHeadM: number };
  "pump-curve-unreadable": { problem: string };
  "beyond-pump-curve": { lastLPerH: number; headLeftM: number };
  "weir-drowned": { flowLPerH: number; mostLPerH: number };
  "named-twice": { name: string };
  "circuit-not-named": { device: string; circuit: string };
  "nothing-named": { what: string };
  "wall-thickness-is-for-makers": { reasons: readonly WallThicknessReason[] };
  "power-does-not-suffice": { powerW: number; againstW: number };
  "feed-pressure-too-low": { feedKPa: number; osmoticKPa: number };
}
