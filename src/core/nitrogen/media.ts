import { between, type Estimate } from "../quantity/estimate.ts";
import {
  as,
  type Fraction,
  type Litres,
  type Metres,
  type Quantity,
  type SquareMetres,
} from "../quantity/units.ts";
import type { SourceId } from "../sources.ts";
import { requirePositive } from "../water/domain.ts";

/** Square metres of surface per cubic metre of bed. */
export type SquareMetresPerM3 = Quantity<"m²/m³">;

/** One kind of filter material and the outer surface a bed of it offers. */
export interface Medium {
  readonly name: string;
  readonly surface: Estimate<SquareMetresPerM3>;
  readonly source: SourceId;
}

const surface = (low: number, high: number, best?: number) =>
  between(
    as<SquareMetresPerM3>(low),
    as<SquareMetresPerM3>(high),
    as<SquareMetresPerM3>(best ?? (low + high) / 2),
  );

/**
 * Surface that water, oxygen and ammonium reach. Advertised inner surface of porous pieces is not
 * counted: oxygen enters a film by about a millimetre. Sintered media get 1–3 times the outer
 * surface of plain rings instead (assumption).
 */
export const MEDIA = {
  "moving bed": {
    name: "plastic moving-bed pieces, protected surface",
    surface: surface(500, 800),
    source: "filter-media-handbooks",
  },
  "trickle plastic": {
    name: "structured or trickling plastic",
    surface: surface(100, 240),
    source: "filter-media-handbooks",
  },
  "coarse foam": { name: "open foam, 10 ppi", surface: surface(400, 600), source: "filter-media-handbooks" },
  "medium foam": {
    name: "open foam, 20 ppi",
    surface: surface(900, 1500, 1200),
    source: "filter-media-handbooks",
  },
  "fine foam": { name: "open foam, 30 ppi", surface: surface(1500, 2500), source: "filter-media-handbooks" },
  "ceramic rings": {
    name: "ceramic rings, 15–20 mm, outer surface",
    surface: surface(250, 400),
    source: "filter-media-handbooks",
  },
  "sintered media": {
    name: "sintered or porous pieces, outer skin only",
    surface: surface(250, 1200, 600),
    source: "assumption",
  },
  "fluidised sand": {
    name: "fluidised sand, 0.5 mm",
    surface: surface(4000, 7000),
    source: "filter-media-handbooks",
  },
  "live rock": { name: "live rock, outer surface", surface: surface(10, 60), source: "common-practice" },
} as const satisfies Record<string, Medium>;

export type MediumKind = keyof typeof MEDIA;

/** Share of a bed that really works, after channelling and fouling. Source: assumption. */
export const USABLE_FRACTION: Estimate<Fraction> = between(
  as<Fraction>(0.5),
  as<Fraction>(0.7),
  as<Fraction>(0.6),
);

/** Outer surface of a bed of spheres. Source: geometry, 6(1 − void)/diameter.
 *  Throws: RangeError when the diameter is not above zero. */
export function sphereBedSurface(diameterM: Metres, voidShare: Fraction): SquareMetresPerM3 {
  requirePositive("diameter", diameterM);
  return as<SquareMetresPerM3>((6 * (1 - voidShare)) / diameterM);
}

/** Working surface of a bed. Source: geometry. */
export function workingSurface(
  bedL: Litres,
  surfacePerM3: SquareMetresPerM3,
  usable: Fraction,
): SquareMetres {
  return as<SquareMetres>((bedL / 1000) * surfacePerM3 * usable);
}

/** Volume of medium that carries a wanted working surface. Source: geometry.
 *  Throws: RangeError when the surface or the usable share is not above zero. */
export function mediaVolume(areaM2: SquareMetres, surfacePerM3: SquareMetresPerM3, usable: Fraction): Litres {
  requirePositive("surface", surfacePerM3);
  requirePositive("usable share", usable);
  return as<Litres>((areaM2 / (surfacePerM3 * usable)) * 1000);
}
