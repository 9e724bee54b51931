import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Fraction,
  type GramsPerDay,
  type Litres,
  type LitresPerHour,
  type MgPerL,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { ETHANOL_COD_G_PER_G, ETHANOL_G_PER_ML } from "./alcohol.ts";
import { type CarbonConditions, carbonCautions, carbonForbidden } from "./carbon-safety.ts";
import { type CubicMetresPerDay, codForSideStream } from "./ethanol-denitrification.ts";
import { unusableFigure } from "./usable-figures.ts";

/** Share of the carbon kept as cells without oxygen. From 3.85 g COD/g N (christensson-1994) and 0.613 mol/mol (mccarty-1969). */
const ANOXIC_YIELD = between(as<Fraction>(0.26), as<Fraction>(0.32));

/** Carbon burnt by oxygen above this share makes the box a poor bargain. Source: assumption. */
const WASTE_WORTH_SAYING = 0.3;

export interface SideStreamCarbon {
  readonly codPerDay: Estimate<GramsPerDay>;
  readonly ethanolPerDay: Estimate<GramsPerDay>;
  readonly reservoirPerDay: Estimate<Litres>;
  /** Share of the carbon that only burns the oxygen coming in with the water. */
  readonly wastedOnOxygen: Estimate<Fraction>;
}

/** How much ethanol a slow denitrifying box takes, counting the oxygen its feed water brings. */
export function sideStreamCarbon(question: {
  readonly flow: Estimate<LitresPerHour>;
  /** Fall of nitrate across the box, as nitrogen. */
  readonly nitrateNRemoved: Estimate<MgPerL>;
  readonly oxygenIn: Estimate<MgPerL>;
  readonly reservoirPercent: Estimate;
  readonly conditions: CarbonConditions;
}): Answer<SideStreamCarbon> | NoAnswer {
  const { flow, nitrateNRemoved, oxygenIn, reservoirPercent } = question;
  const forbidden = carbonForbidden("anoxic denitrification", question.conditions);
  if (forbidden !== undefined) return forbidden;
  const unusable = unusableFigure([
    { name: "flow through the box", estimate: flow, unit: "L/h" },
    { name: "nitrate removed, as nitrogen", estimate: nitrateNRemoved, unit: "mg/L" },
    { name: "oxygen coming in", estimate: oxygenIn, unit: "mg/L", zeroAllowed: true },
    { name: "reservoir strength by volume", estimate: reservoirPercent, unit: "%", max: 100 },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    {
      "flow through the box": flow,
      "nitrate removed": nitrateNRemoved,
      "oxygen coming in": oxygenIn,
      "reservoir strength": reservoirPercent,
      "yield of the bacteria": ANOXIC_YIELD,
    },
    (v) => {
      const cubicMetres = as<CubicMetresPerDay>((v["flow through the box"] * 24) / 1000);
      const need = (nitrateN: MgPerL, oxygen: MgPerL) =>
        codForSideStream(cubicMetres, { nitrateN }, oxygen, v["yield of the bacteria"]);
      const cod = need(v["nitrate removed"], v["oxygen coming in"]);
      const ethanol = cod / ETHANOL_COD_G_PER_G;
      return {
        codPerDay: cod,
        ethanolPerDay: as<GramsPerDay>(ethanol),
        reservoirPerDay: as<Litres>(ethanol / ETHANOL_G_PER_ML / 1000 / (v["reservoir strength"] / 100)),
        wastedOnOxygen: as<Fraction>(need(as<MgPerL>(0), v["oxygen coming in"]) / cod),
      };
    },
  );
  const percent = estimates.wastedOnOxygen.best * 100;
  return {
    kind: "answer",
    value: estimates,
    method: "Electrons that nitrate and oxygen take up, over the share of carbon not kept as cells",
    working: [
      "oxygen demand = flow × (2.856 × nitrate-N removed + oxygen coming in) / (1 − yield)",
      "ethanol = oxygen demand / 2.084",
      "reservoir = ethanol / density of ethanol / reservoir strength",
    ],
    constants: [
      { name: "oxygen that nitrate-N stands in for", value: "2.856 g/g", source: "standard-atomic-weights" },
      { name: "share kept as cells", value: "0.26–0.32 g COD per g COD", source: "christensson-1994" },
    ],
    sources: ["mass-balance", "christensson-1994", "mccarty-1969", "handbook-ethanol"],
    assumptions: ["all the oxygen coming in is used up in the box", "no carbon leaves the box unused"],
    cautions: [
      ...(percent > WASTE_WORTH_SAYING * 100 ? [caution("carbon-wasted-on-oxygen", { percent })] : []),
      ...carbonCautions("anoxic denitrification", reservoirPercent.high),
    ],
    driver: drivers.reservoirPerDay,
  };
}
