import type { Estimate } from "../quantity/estimate.ts";
import type { Centimetres, Kilograms, Litres } from "../quantity/units.ts";

/** The form of a container's inside. Heights are to the rim; how high the water stands is kept apart. */
export type Shape =
  | {
      readonly kind: "box";
      readonly lengthCm: Centimetres;
      readonly widthCm: Centimetres;
      readonly heightCm: Centimetres;
    }
  | { readonly kind: "upright cylinder"; readonly diameterCm: Centimetres; readonly heightCm: Centimetres };

export type Role = "display" | "filter" | "algae tank" | "pump container" | "reservoir" | "other";

/** What a container's volume rests on, from firmest to weakest. */
export type VolumeBasis =
  | { readonly kind: "measured fill"; readonly litres: Estimate<Litres> }
  | {
      readonly kind: "dimensions";
      readonly shape: Shape;
      readonly measured: "inside" | "outside" | "not said";
      readonly wallCm?: Centimetres;
      /** Water depth in running; absent when not said. */
      readonly runningLevelCm?: Estimate<Centimetres>;
    }
  /** Printed on it, or filled to the rim: never the water it holds in running. */
  | { readonly kind: "label"; readonly litres: Estimate<Litres> };

/** One container of a system. */
export interface Container {
  readonly name: string;
  readonly role: Role;
  readonly volume: VolumeBasis;
  /** Dry mass of rock. Displaces by its solid volume. A measured fill already has it in. */
  readonly rockKg?: Estimate<Kilograms>;
  /** Dry mass of sand. */
  readonly sandKg?: Estimate<Kilograms>;
  /** Whether its water is part of the running system (a mixing drum is not). */
  readonly inSystem: boolean;
}
