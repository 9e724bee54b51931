import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type Litres,
  type LitresPerDay,
  type LitresPerHour,
  type Quantity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { figure } from "./figure.ts";
import { liftingCautions } from "./handling.ts";
import { cut, firstNotCredible, keptPossible, VOLUME } from "./usable.ts";

export type Minutes = Quantity<"min">;

export interface SupplyInput {
  readonly litres: Estimate<Litres>;
  /** What the pump moves at the height it has to lift, not the figure on its label. */
  readonly pumpFlow?: Estimate<LitresPerHour> | undefined;
  /** What the purifier makes in a day at the member's pressure and temperature. */
  readonly purifiedPerDay?: Estimate<LitresPerDay> | undefined;
  /** Litres sent to the drain for each litre made. */
  readonly rejectPerLitre?: Estimate<Quantity<"L/L">> | undefined;
}

export interface Supply {
  readonly litres: Estimate<Litres>;
  /** One way: emptying, or filling. */
  readonly pumpMinutes?: Estimate<Minutes>;
  readonly makingDays?: Estimate<Days>;
  /** Tap water drawn, product and reject together. */
  readonly tapWaterL?: Estimate<Litres>;
}

const FLOW = { unit: "L/h", min: 0.1, max: 1e7 };
const MAKING = { unit: "L per day", min: 0.1, max: 1e7 };
const REJECT = { unit: "L per L", min: 0, max: 20 };

/** How long pumping a water change takes, and how long its water takes to make. */
export function waterChangeSupply(input: SupplyInput): Answer<Supply> | NoAnswer {
  const pumpFlow = input.pumpFlow ?? exactly(as<LitresPerHour>(1));
  const purifiedPerDay = input.purifiedPerDay ?? exactly(as<LitresPerDay>(1));
  const reject = input.rejectPerLitre ?? exactly(as<Quantity<"L/L">>(0));
  const unusable = firstNotCredible([
    ["water wanted", input.litres, VOLUME],
    ["pump flow", pumpFlow, FLOW],
    ["purified water per day", purifiedPerDay, MAKING],
    ["reject", reject, REJECT],
  ]);
  if (unusable !== undefined) return unusable;

  const { estimates, drivers } = propagate(
    {
      "water wanted": cut(input.litres, VOLUME),
      "pump flow": cut(pumpFlow, FLOW),
      "purified water per day": cut(purifiedPerDay, MAKING),
      reject: cut(reject, REJECT),
    },
    (v) => ({
      litres: v["water wanted"],
      pumpMinutes: as<Minutes>((60 * v["water wanted"]) / v["pump flow"]),
      makingDays: as<Days>(v["water wanted"] / v["purified water per day"]),
      tapWaterL: as<Litres>(v["water wanted"] * (1 + v.reject)),
    }),
  );
  const { litres, pumpMinutes, makingDays, tapWaterL } = keptPossible(estimates);
  const wanted = figure(litres.best);
  const isPumped = input.pumpFlow !== undefined;
  const isMade = input.purifiedPerDay !== undefined;
  const isRejectKnown = input.rejectPerLitre !== undefined;

  return {
    kind: "answer",
    value: {
      litres,
      ...(isPumped ? { pumpMinutes } : {}),
      ...(isMade ? { makingDays } : {}),
      ...(isRejectKnown ? { tapWaterL } : {}),
    },
    method: "Litres over rate.",
    working: [
      ...(isPumped
        ? [
            `pumping one way = ${wanted} L ÷ ${figure(pumpFlow.best)} L/h × 60 = ${figure(pumpMinutes.best)} min`,
          ]
        : []),
      ...(isMade
        ? [
            `making the water = ${wanted} L ÷ ${figure(purifiedPerDay.best)} L per day = ${figure(makingDays.best)} days`,
          ]
        : []),
      ...(isRejectKnown
        ? [
            `tap water = ${wanted} L × (1 + ${figure(reject.best)} L to the drain per litre) = ${figure(tapWaterL.best)} L`,
          ]
        : []),
    ],
    constants: [],
    sources: ["mass-balance", "jcgm-100-2008"],
    assumptions: [
      ...(isPumped ? ["the flow is what the pump moves at this height and through this hose"] : []),
      ...(isMade
        ? ["the daily amount is yours, measured: cold or low pressure makes less than the label"]
        : []),
    ],
    cautions: [
      ...(isPumped ? [caution("unplug-before-draining", {}, "danger")] : []),
      ...(isPumped ? [caution("mains-near-water", {}, "danger")] : []),
      ...(isMade || isPumped ? [caution("unattended-filling", {})] : []),
      ...liftingCautions("the water", litres.best),
    ],
    driver: isMade ? drivers.makingDays : drivers.pumpMinutes,
  };
}
