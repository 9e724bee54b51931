import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Fraction,
  type PracticalSalinity,
  type SquareMetres,
  type Watts,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { latentPower } from "./evaporation.ts";
import { refuseClimate, SEAWATER_SALINITY } from "./evaporation-per-day.ts";
import { EVAPORATION_FORMULA, evaporationAt } from "./evaporation-spread.ts";
import {
  CONDUCTIVITY,
  INSIDE_FILM,
  OUTSIDE_FILM,
  uValue,
  WATTS_PER_TON,
  type WallMaterial,
  wallLoss,
} from "./heat.ts";
import type { KilogramsPerDay, Millimetres, WattsPerKelvin } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

/** Warmth an open surface gives to the air, W/(m² K). Source: common-practice. */
export const SURFACE_FILM = between(8, 10, 9);
/** Films and wall against their tables. Source: assumption. */
const WALL_SPREAD = between(0.85, 1.15, 1);
/** Room to spare on the heater. Source: assumption. */
const HEATER_MARGIN = 1.25;
/** Heat given to the room per heat removed: the compressor's own power comes on top. Source: assumption. */
const ROOM_PER_REMOVED = 1.35;

export interface Wall {
  readonly areaM2: SquareMetres;
  readonly material: WallMaterial;
  readonly thicknessMm: Millimetres;
}

export interface HeatInputs {
  /** Wetted walls and floors, of every container. */
  readonly walls: readonly Wall[];
  readonly openAreaM2: Estimate<SquareMetres>;
  readonly waterC: Estimate<DegreesC>;
  /** The coldest room for a heater, the hottest for a chiller. */
  readonly roomC: Estimate<DegreesC>;
  readonly humidity: Estimate<Fraction>;
  readonly salinity?: Estimate<PracticalSalinity>;
  readonly isDisturbed: boolean;
  /** Pumps, lights reaching the water, UV: what they draw ends as heat. */
  readonly equipmentW: Estimate<Watts>;
}

export interface HeatBalance {
  readonly wallsW: Estimate<Watts>;
  readonly surfaceW: Estimate<Watts>;
  readonly evaporationKgPerDay: Estimate<KilogramsPerDay>;
  readonly evaporationW: Estimate<Watts>;
  /** All that leaves, equipment not set against it; negative when the room heats the tank. */
  readonly lossW: Estimate<Watts>;
  /** Heater for this room with its margin, were all equipment off; never less than nothing. */
  readonly heaterW: Estimate<Watts>;
  /** Heat a chiller has to remove in this room; nothing when the tank loses more than it gains. */
  readonly chillerW: Estimate<Watts>;
  readonly chillerTons: Estimate;
  /** Loss per degree of difference, evaporation set aside. */
  readonly uaWPerK: Estimate<WattsPerKelvin>;
}

/** What a tank loses to its room, and the heater or chiller that calls for. */
export function heatBalance(inputs: HeatInputs): Answer<HeatBalance> | NoAnswer {
  const refused =
    refuseUnlessPositive({ "open surface": inputs.openAreaM2 }) ??
    refuseIfNegative({ "equipment power": inputs.equipmentW }) ??
    refuseClimate(inputs) ??
    inputs.walls
      .map(({ areaM2, thicknessMm }) =>
        refuseIfNegative({
          "wall area": between(areaM2, areaM2),
          "wall thickness": between(thicknessMm, thicknessMm),
        }),
      )
      .find((one) => one !== undefined);
  if (refused !== undefined) return refused;

  const { estimates, drivers } = propagate(
    {
      "open surface": inputs.openAreaM2,
      "water temperature": inputs.waterC,
      "room temperature": inputs.roomC,
      "relative humidity": inputs.humidity,
      salinity: inputs.salinity ?? SEAWATER_SALINITY,
      "equipment power": inputs.equipmentW,
      "heat through walls": WALL_SPREAD,
      "heat from the surface": SURFACE_FILM,
      "choice of evaporation formula": EVAPORATION_FORMULA,
    },
    (v) => {
      const water = v["water temperature"];
      const room = v["room temperature"];
      const wallsW =
        inputs.walls.reduce((sum, wall) => {
          const u = uValue(INSIDE_FILM, wall.thicknessMm, CONDUCTIVITY[wall.material], OUTSIDE_FILM);
          return sum + wallLoss(u, wall.areaM2, water, room);
        }, 0) * v["heat through walls"];
      const wallUa =
        inputs.walls.reduce(
          (sum, wall) =>
            sum +
            wall.areaM2 * uValue(INSIDE_FILM, wall.thicknessMm, CONDUCTIVITY[wall.material], OUTSIDE_FILM),
          0,
        ) * v["heat through walls"];
      const surfaceW = v["heat from the surface"] * v["open surface"] * (water - room);
      const evaporationKgPerDay = evaporationAt(v["choice of evaporation formula"], {
        areaM2: v["open surface"],
        waterC: water,
        roomC: room,
        humidity: v["relative humidity"],
        salinity: v.salinity,
        isDisturbed: inputs.isDisturbed,
      });
      const evaporationW = latentPower(evaporationKgPerDay, water);
      const loss = wallsW + surfaceW + evaporationW;
      const chiller = Math.max(0, v["equipment power"] - loss);
      return {
        wallsW: as<Watts>(wallsW),
        surfaceW: as<Watts>(surfaceW),
        evaporationKgPerDay,
        evaporationW,
        lossW: as<Watts>(loss),
        heaterW: as<Watts>(Math.max(0, loss * HEATER_MARGIN)),
        chillerW: as<Watts>(chiller),
        chillerTons: chiller / WATTS_PER_TON,
        uaWPerK: as<WattsPerKelvin>(wallUa + v["heat from the surface"] * v["open surface"]),
      };
    },
  );
  const needsHeat = estimates.heaterW.high > 0;
  const needsCooling = estimates.chillerW.high > 0;
  return {
    kind: "answer",
    value: estimates,
    method: "Heat through walls, from the surface and with evaporation, against the heat of the equipment",
    working: [
      "walls: area ÷ (1 ÷ water film + thickness ÷ conductivity + 1 ÷ air film) × difference to the room",
      "surface: surface × 8–10 W/(m² K) × difference to the room",
      "evaporation: kilograms a day × latent heat",
      "heater: the sum × 1.25, equipment counted as off",
      "chiller: equipment power − the sum",
    ],
    constants: [
      { name: "water film", value: "200 W/(m² K)", source: "assumption" },
      { name: "air film", value: "7.7 W/(m² K)", source: "iso-6946" },
      {
        name: "conductivity of acrylic, glass, plastic",
        value: "0.19, 1.0, 0.45 W/(m K)",
        source: "material-handbooks",
      },
      { name: "open surface", value: "8–10 W/(m² K)", source: "common-practice" },
      { name: "heater margin", value: "× 1.25", source: "assumption" },
      { name: "one ton of refrigeration", value: "3.517 kW removed", source: "ashrae-ton" },
    ],
    sources: [
      "first-principles",
      "iso-6946",
      "material-handbooks",
      "shah-2014",
      "ashrae-hvac-applications",
      "smith-lof-jones-1998",
      "iapws-if97",
      "buck-1981",
      "green-carritt-1967",
      "ashrae-ton",
      "common-practice",
      "assumption",
    ],
    assumptions: [
      "all the power of the equipment ends as heat in the water",
      "a floor on a stand loses heat as a wall does",
    ],
    cautions: [
      ...(needsHeat ? [caution("two-heaters", {}, "note")] : []),
      ...(needsCooling
        ? [
            caution("chiller-by-heat-removed", {}, "note"),
            caution("room-takes-the-heat", { roomW: estimates.chillerW.high * ROOM_PER_REMOVED }, "note"),
          ]
        : []),
      caution("ask-an-electrician", {}, "danger"),
    ],
    driver: needsCooling && estimates.chillerW.best > 0 ? drivers.chillerW : drivers.lossW,
  };
}
