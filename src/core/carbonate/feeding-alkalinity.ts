import { unusableFigure } from "../dosing/usable-figures.ts";
import { alkalinityBeforeChange, alkalinityDrop, type DegreesKH } from "../nitrogen/nitrification.ts";
import type { GramsNPerDay } from "../nitrogen/nitrogen-units.ts";
import { between, type Estimate, exactly, mapEstimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type Fraction,
  type Grams,
  type GramsPerDay,
  type Litres,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { saltPerUnit } from "./mineral-salts.ts";

/** Share of the nitrogen fed that ends as nitrate; the rest is skimmed, siphoned, eaten again or grown. Source: assumption. */
const SHARE_TO_NITRATE = between(as<Fraction>(0.7), as<Fraction>(1), as<Fraction>(0.85));
/** Below this a system is short of reserve, dKH. Source: common-practice. */
const RESERVE_DKH = 7;

/** Water changes that bring alkalinity back. */
export interface AlkalinityChanges {
  readonly everyDays: Estimate<Days>;
  readonly changed: Estimate<Fraction>;
  readonly newWater: Estimate<DegreesKH>;
}

export interface FeedingAlkalinity {
  readonly lossPerDay: Estimate<DegreesKH>;
  readonly lossPerWeek: Estimate<DegreesKH>;
  /** Pure sodium bicarbonate a day that makes up for it. */
  readonly bicarbonatePerDay: Estimate<GramsPerDay>;
  /** Where alkalinity settles just before each change, if changes alone hold it up; can be below nothing. */
  readonly settlesBeforeChange?: Estimate<DegreesKH>;
}

/**
 * What turning nitrogen into nitrate costs in alkalinity. Food costs one equivalent per mole of nitrogen, for
 * becoming ammonia gives one back; ammonium salt costs the full two.
 */
export function alkalinityCostOfFeeding(question: {
  readonly nitrogenPerDay: Estimate<GramsNPerDay>;
  readonly from: "food" | "ammonium salt";
  readonly systemVolume: Estimate<Litres>;
  readonly shareToNitrate?: Estimate<Fraction>;
  readonly changes?: AlkalinityChanges;
}): Answer<FeedingAlkalinity> | NoAnswer {
  const { nitrogenPerDay, from, systemVolume, changes } = question;
  const share = question.shareToNitrate ?? (from === "food" ? SHARE_TO_NITRATE : exactly(as<Fraction>(1)));
  const unusable = unusableFigure([
    { name: "nitrogen a day", estimate: nitrogenPerDay, unit: "g" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "share turned into nitrate", estimate: share, unit: "of one", max: 1 },
    ...(changes === undefined
      ? []
      : [
          { name: "days between changes", estimate: changes.everyDays, unit: "d" },
          { name: "share changed", estimate: changes.changed, unit: "of one", max: 1 },
          { name: "alkalinity of new water", estimate: changes.newWater, unit: "dKH", zeroAllowed: true },
        ]),
  ]);
  if (unusable !== undefined) return unusable;
  const inputs = {
    "nitrogen a day": nitrogenPerDay,
    "net volume": systemVolume,
    "share turned into nitrate": share,
  };
  const lossPerDay = (nitrogen: number, toNitrate: number, volumeL: Litres) =>
    alkalinityDrop(as<Grams>(nitrogen * toNitrate), volumeL, from);
  const { estimates, drivers } = propagate(inputs, (v) => {
    const perDay = lossPerDay(v["nitrogen a day"], v["share turned into nitrate"], v["net volume"]);
    return {
      lossPerDay: perDay,
      bicarbonatePerDay: as<GramsPerDay>((perDay * saltPerUnit("NaHCO3") * v["net volume"]) / 1000),
    };
  });
  const settles =
    changes === undefined
      ? undefined
      : propagate(
          {
            ...inputs,
            "days between changes": changes.everyDays,
            "share changed": changes.changed,
            "alkalinity of new water": changes.newWater,
          },
          (v) => ({
            dkh: alkalinityBeforeChange(
              v["alkalinity of new water"],
              as<DegreesKH>(
                v["days between changes"] *
                  lossPerDay(v["nitrogen a day"], v["share turned into nitrate"], v["net volume"]),
              ),
              v["share changed"],
            ),
          }),
        ).estimates.dkh;
  const cautions: Caution[] = [];
  if (settles !== undefined && settles.best < RESERVE_DKH) {
    cautions.push(caution("water-changes-cannot-hold", { settlesDkh: settles.best }, "warning"));
  }
  return {
    kind: "answer",
    value: {
      ...estimates,
      lossPerWeek: mapEstimate(estimates.lossPerDay, (value) => as<DegreesKH>(value * 7)),
      ...(settles === undefined ? {} : { settlesBeforeChange: settles }),
    },
    method:
      from === "food"
        ? "One equivalent of acid per mole of food nitrogen that ends as nitrate"
        : "Two equivalents of acid per mole of ammonium salt that ends as nitrate",
    working: [
      `loss = nitrogen × share turned into nitrate / 14.0067 × ${from === "food" ? 1 : 2} / net volume`,
      "bicarbonate = loss × 29.96 mg per dKH and litre × net volume",
      ...(settles === undefined
        ? []
        : ["before a change = new water − loss between changes / share changed, once settled"]),
    ],
    constants: [
      {
        name: "equivalents per mole of nitrogen",
        value: from === "food" ? "1 (net)" : "2",
        source: "wolf-gladrow-2007",
      },
      { name: "share turned into nitrate", value: from === "food" ? "0.7–1" : "1", source: "assumption" },
    ],
    sources: ["wolf-gladrow-2007", "mass-balance", "standard-atomic-weights", "assumption"],
    assumptions: [
      "no nitrate leaves as gas: denitrification would give the alkalinity back",
      "nothing in the system builds chalk",
      ...(from === "food" ? ["a few per cent for sulphur and phosphorus left out"] : []),
    ],
    cautions,
    driver: drivers.lossPerDay,
  };
}
