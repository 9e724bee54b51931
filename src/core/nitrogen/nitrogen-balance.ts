import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Days, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { nitrateRise, steadyNitrate } from "./nitrate.ts";
import { fromNitrogen, type GramsNPerDay, type MgNPerL } from "./nitrogen-units.ts";
import { notBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";

/** What goes into a system as nitrogen, and every way out that is known. Grams of nitrogen a day. */
export interface NitrogenFlows {
  readonly volumeL: Estimate<Litres>;
  readonly feedN: Estimate<GramsNPerDay>;
  /** Share of the food's nitrogen that stays in growing animals; default 5 %. */
  readonly retainedShare?: Estimate<Fraction>;
  /** Share taken out as solids before it rots; default 10 %. */
  readonly solidsShare?: Estimate<Fraction>;
  readonly skimmate?: Estimate<GramsNPerDay>;
  readonly algaeHarvest?: Estimate<GramsNPerDay>;
  /** Nitrogen gas: stated, or from the litres of a box without oxygen. */
  readonly denitrification?:
    | { readonly kind: "stated"; readonly gPerDay: Estimate<GramsNPerDay> }
    | { readonly kind: "porous media" | "dosed box"; readonly litres: Estimate<Litres> };
  /** Nitrate nitrogen in the tank now, just before a change. */
  readonly nitrate: Estimate<MgNPerL>;
  readonly waterChange?: {
    readonly changed: Estimate<Fraction>;
    readonly everyDays: Days;
    readonly sourceNitrate: Estimate<MgNPerL>;
  };
}

export type FlowName =
  | "food"
  | "growth"
  | "solids"
  | "skimmate"
  | "algae harvest"
  | "nitrogen gas"
  | "water changes"
  | "left in the water";

export interface BalanceLine {
  readonly name: FlowName;
  /** Into the water above zero, out of it below. */
  readonly gNPerDay: Estimate;
}

export interface NitrogenBalance {
  /** Every line but the last is a way in or out; the last is what they leave. Best values add up. */
  readonly lines: readonly BalanceLine[];
  /** Rise of nitrate a week as things stand, mg/L NO₃; below zero when it falls. */
  readonly nitratePerWeekMgPerL: Estimate;
  /** Where nitrate settles just before and just after each change, mg/L NO₃; absent without changes. */
  readonly steadyBeforeMgPerL?: Estimate;
  readonly steadyAfterMgPerL?: Estimate;
}

/** Source: assumption; under 20 % retained even in growing fish (cai-2016). */
const RETAINED: Estimate<Fraction> = between(as<Fraction>(0), as<Fraction>(0.15), as<Fraction>(0.05));
const SOLIDS: Estimate<Fraction> = between(as<Fraction>(0.02), as<Fraction>(0.2), as<Fraction>(0.1));
/** g N per m³ of box and day. Source: assumption for both; he-2018 measured 2–23 in dosed sea-water boxes. */
const GAS_RATE: Record<"porous media" | "dosed box", Estimate> = {
  "porous media": between(1, 20, 5),
  "dosed box": between(5, 100, 20),
};
const NONE = exactly(0);

/** The balance sheet of nitrogen: what the food brings, where it goes, and what nitrate does about it. */
export function nitrogenBalance(given: NitrogenFlows): Answer<NitrogenBalance> | NoAnswer {
  const { waterChange: change, denitrification: gas } = given;
  const refusal = figureRefusal([
    ["volume", given.volumeL, "L", 1, 10_000_000],
    ["nitrogen in the food", given.feedN, "g/day", 0, 100_000],
    ["share kept in growth", given.retainedShare, "", 0, 1],
    ["share taken out as solids", given.solidsShare, "", 0, 1],
    ["nitrogen in skimmate", given.skimmate, "g/day", 0, 100_000],
    ["nitrogen in harvested algae", given.algaeHarvest, "g/day", 0, 100_000],
    gas?.kind === "stated"
      ? ["nitrogen gas", gas.gPerDay, "g/day", 0, 100_000]
      : ["box without oxygen", gas?.litres, "L", 0, 1_000_000],
    ["nitrate", given.nitrate, "mg/L N", 0, 1000],
    ["share of water changed", change?.changed, "", 0.001, 1],
    ["days between changes", change?.everyDays, "d", 0.04, 3650],
    ["nitrate in the new water", change?.sourceNitrate, "mg/L N", 0, 1000],
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const inputs = {
    "net volume": given.volumeL,
    "nitrogen in the food": given.feedN,
    "share kept in growth": given.retainedShare ?? RETAINED,
    "share taken out as solids": given.solidsShare ?? SOLIDS,
    skimmate: given.skimmate ?? NONE,
    "algae harvest": given.algaeHarvest ?? NONE,
    "nitrogen gas": gas?.kind === "stated" ? gas.gPerDay : gas === undefined ? NONE : GAS_RATE[gas.kind],
    "box without oxygen": gas === undefined || gas.kind === "stated" ? NONE : gas.litres,
    "nitrate now": given.nitrate,
    "share of water changed": change?.changed ?? NONE,
    "nitrate in the new water": change?.sourceNitrate ?? NONE,
  };
  const { estimates: e, drivers } = propagate(inputs, (v) => {
    const volume = v["net volume"];
    const food = v["nitrogen in the food"];
    const growth = food * v["share kept in growth"];
    const solids = food * v["share taken out as solids"];
    const asGas =
      gas === undefined || gas.kind === "stated"
        ? v["nitrogen gas"]
        : (v["nitrogen gas"] * v["box without oxygen"]) / 1000;
    const toNitrate = as<GramsNPerDay>(food - growth - solids - v.skimmate - v["algae harvest"] - asGas);
    const changed = as<Fraction>(v["share of water changed"]);
    const source = as<MgNPerL>(v["nitrate in the new water"]);
    const withWater =
      change === undefined ? 0 : (((v["nitrate now"] - source) / 1000) * changed * volume) / change.everyDays;
    const left = as<GramsNPerDay>(toNitrate - withWater);
    const steady =
      change === undefined
        ? { before: 0, after: 0 }
        : steadyNitrate(nitrateRise(toNitrate, change.everyDays, as<Litres>(volume)), changed, source);
    return {
      food: food as number,
      growth: -growth,
      solids: -solids,
      skimmate: -v.skimmate,
      algae: -v["algae harvest"],
      gas: -asGas,
      water: -withWater,
      left: left as number,
      perWeek: fromNitrogen(nitrateRise(left, as<Days>(7), as<Litres>(volume)), "NO3"),
      // Ways out larger than the food cannot take nitrate under zero.
      before: Math.max(0, fromNitrogen(as<MgNPerL>(steady.before), "NO3")),
      after: Math.max(0, fromNitrogen(as<MgNPerL>(steady.after), "NO3")),
      ways: growth + solids + v.skimmate + v["algae harvest"] + asGas,
    };
  });
  const value: NitrogenBalance = {
    lines: [
      { name: "food", gNPerDay: e.food },
      { name: "growth", gNPerDay: e.growth },
      { name: "solids", gNPerDay: e.solids },
      { name: "skimmate", gNPerDay: e.skimmate },
      { name: "algae harvest", gNPerDay: e.algae },
      { name: "nitrogen gas", gNPerDay: e.gas },
      { name: "water changes", gNPerDay: e.water },
      { name: "left in the water", gNPerDay: e.left },
    ],
    nitratePerWeekMgPerL: e.perWeek,
    ...(change === undefined
      ? {}
      : { steadyBeforeMgPerL: notBelowZero(e.before), steadyAfterMgPerL: notBelowZero(e.after) }),
  };
  return {
    kind: "answer",
    value,
    method: "conservation of nitrogen: what the food brings leaves somewhere or stays as nitrate",
    working: [
      `food ${rounded(e.food.best)} g N a day`,
      `− growth ${rounded(-e.growth.best)} − solids ${rounded(-e.solids.best)} − skimmate ${rounded(-e.skimmate.best)} − algae ${rounded(-e.algae.best)} − nitrogen gas ${rounded(-e.gas.best)} − water changes ${rounded(-e.water.best)}`,
      `= ${rounded(e.left.best)} g N a day left in the water = ${rounded(e.perWeek.best)} mg/L nitrate a week`,
      ...(change === undefined
        ? []
        : [
            `settled before a change = new water + gain between changes ÷ share changed = ${rounded(e.before.best)} mg/L`,
          ]),
    ],
    constants: [
      { name: "nitrate per nitrogen", value: "4.4268", source: "standard-atomic-weights" },
      ...(given.retainedShare === undefined
        ? [{ name: "kept in growth", value: "0–15 % of the food's nitrogen", source: "assumption" } as const]
        : []),
      ...(given.solidsShare === undefined
        ? [
            {
              name: "taken out as solids",
              value: "2–20 % of the food's nitrogen",
              source: "assumption",
            } as const,
          ]
        : []),
      ...(gas === undefined || gas.kind === "stated"
        ? []
        : [
            {
              name: "nitrogen gas from a box",
              value: `${GAS_RATE[gas.kind].low}–${GAS_RATE[gas.kind].high} g N per m³ and day`,
              source: "assumption",
            } as const,
          ]),
    ],
    sources: ["mass-balance", "cai-2016", "he-2018", "assumption"],
    assumptions: [
      "ammonia and nitrite stay low: everything that stays ends as nitrate",
      ...(change === undefined ? [] : ["the nitrate named is the level just before a change"]),
    ],
    cautions: cautionsOf(given, e.ways.best, value),
    driver: drivers.left,
  };
}

function cautionsOf(given: NitrogenFlows, waysOut: number, value: NitrogenBalance): Caution[] {
  const cautions: Caution[] = [caution("sink-figures-are-guesses", {}, "note")];
  if (waysOut > given.feedN.best) {
    cautions.push(
      caution("nitrogen-sinks-exceed-food", {
        sinksGPerDay: rounded(waysOut),
        feedGPerDay: rounded(given.feedN.best),
      }),
    );
  } else if (given.waterChange === undefined && value.nitratePerWeekMgPerL.best > 0) {
    cautions.push(
      caution("nitrate-never-settles", { mgPerLPerWeek: rounded(value.nitratePerWeekMgPerL.best, 2) }),
    );
  }
  return cautions;
}
