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
  | { readonly kind: "upright cylinder"; readonly diameterCm: Centimetres; readonly heightCm: Centimetres }
  /** A box of the end width, with a front that bulges out by the bow depth at its middle. */
  | {
      readonly kind: "bow front";
      readonly lengthCm: Centimetres;
      readonly endWidthCm: Centimetres;
      readonly bowDepthCm: Centimetres;
      readonly heightCm: Centimetres;
    }
  /** Two straight sides meeting in a corner, joined by a quarter of a circle. */
  | { readonly kind: "quarter round"; readonly radiusCm: Centimetres; readonly heightCm: Centimetres }
  /** Regular, measured between two opposite sides. */
  | { readonly kind: "hexagon"; readonly acrossFlatsCm: Centimetres; readonly heightCm: Centimetres }
  /** A box with a box cut out of one corner. */
  | {
      readonly kind: "L-shape";
      readonly lengthCm: Centimetres;
      readonly widthCm: Centimetres;
      readonly cutLengthCm: Centimetres;
      readonly cutWidthCm: Centimetres;
      readonly heightCm: Centimetres;
    }
  /** A drum on its side; its height is its diameter. */
  | { readonly kind: "horizontal drum"; readonly diameterCm: Centimetres; readonly lengthCm: Centimetres }
  /** Straight walls leaning outward (or inward) from a rectangular floor to a rectangular rim. */
  | {
      readonly kind: "tapered tub";
      readonly bottomLengthCm: Centimetres;
      readonly bottomWidthCm: Centimetres;
      readonly topLengthCm: Centimetres;
      readonly topWidthCm: Centimetres;
      readonly heightCm: Centimetres;
    };

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
  /** Mass of rock. Displaces by its solid volume. A measured fill already has it in. */
  readonly rockKg?: Estimate<Kilograms>;
  /** How the rock was weighed; dry when absent. Wet rock weighs more than it displaces. */
  readonly rockWeighed?: "dry" | "wet";
  /** Dry mass of sand. */
  readonly sandKg?: Estimate<Kilograms>;
  /** Whether its water is part of the running system (a mixing drum is not). */
  readonly inSystem: boolean;
}
