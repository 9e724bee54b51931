import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type Fraction, type Grams, type Litres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { type Dilution, dilute } from "./dilution.ts";
import { unusableFigure } from "./usable-figures.ts";

/** Density of pure ethanol at 20 °C, g/mL. Source: handbook-ethanol, from memory. */
export const ETHANOL_G_PER_ML = 0.7893;
/** Molar masses, g/mol. Source: standard-atomic-weights. */
export const ETHANOL_G_PER_MOL = 46.06844;
export const OXYGEN_G_PER_MOL = 31.9988;
/** C₂H₅OH + 3 O₂ → 2 CO₂ + 3 H₂O: oxygen that one gram of ethanol takes when burnt to the end. */
export const ETHANOL_COD_G_PER_G = (3 * OXYGEN_G_PER_MOL) / ETHANOL_G_PER_MOL;

/**
 * Flash points of ethanol in water, closed cup: % by volume → °C. Vapour over the liquid can be lit from
 * there up. Source: handbook-ethanol, from memory.
 */
const FLASH_POINTS: readonly (readonly [percent: number, celsius: number])[] = [
  [10, 49],
  [20, 36],
  [30, 29],
  [40, 26],
  [50, 24],
  [60, 22],
  [70, 21],
  [80, 20],
  [96, 17],
];

/** Mass of ethanol in a volume of a mix whose strength is by volume. Source: handbook-ethanol. */
export function ethanolMass(volumeL: Litres, strengthByVolume: Fraction): Grams {
  return as<Grams>(volumeL * 1000 * strengthByVolume * ETHANOL_G_PER_ML);
}

/** Oxygen that a mass of ethanol takes when burnt to the end (chemical oxygen demand), g. */
export function ethanolCod(ethanol: Grams): Grams {
  return as<Grams>(ethanol * ETHANOL_COD_G_PER_G);
}

/**
 * Flash point to plan for: that of the next stronger mix in the table, so never above the true one.
 * Source: handbook-ethanol, from memory.
 */
export function alcoholFlashPointC(percentByVolume: number): DegreesC {
  const listed = FLASH_POINTS.find(([percent]) => percent >= percentByVolume);
  return as<DegreesC>(listed?.[1] ?? 17);
}

/** A reservoir of alcohol let down for dosing. */
export interface AlcoholReservoir extends Dilution {
  readonly ethanol: Estimate<Grams>;
  /** Oxygen demand of one litre of the finished mix, g. Per millilitre it is a thousandth. */
  readonly codPerLitre: Estimate<Grams>;
  readonly flashPointC: DegreesC;
}

/** How to let alcohol down for a dosing reservoir. Strengths are per cent by volume. */
export function alcoholReservoir(question: {
  readonly stockPercent: Estimate;
  readonly targetPercent: Estimate;
  readonly finalVolume: Estimate<Litres>;
  /** Made unfit to drink with additives; such alcohol is refused. */
  readonly isDenatured: boolean;
}): Answer<AlcoholReservoir> | NoAnswer {
  const { stockPercent, targetPercent, finalVolume } = question;
  if (question.isDenatured) return noAnswer("alcohol-is-denatured", {});
  const mix = dilute({
    stock: { value: stockPercent, kind: "% v/v" },
    target: { value: targetPercent, kind: "% v/v" },
    finalVolume,
    isStockKnown: true,
  });
  if (mix.kind === "no-answer") return mix;
  const { estimates } = propagate({ "target strength": targetPercent, "final volume": finalVolume }, (v) => {
    const share = as<Fraction>(v["target strength"] / 100);
    return {
      ethanol: ethanolMass(v["final volume"], share),
      codPerLitre: ethanolCod(ethanolMass(as<Litres>(1), share)),
    };
  });
  const flashPointC = alcoholFlashPointC(targetPercent.high);
  return {
    ...mix,
    value: { ...mix.value, ...estimates, flashPointC },
    method: "Alcohol let down by volume, made up to the mark",
    working: [
      ...mix.working,
      "mass of ethanol = final volume × strength by volume × density of ethanol",
      "oxygen demand = mass of ethanol × 3 mol of oxygen per mol of ethanol",
    ],
    constants: [
      { name: "density of ethanol at 20 °C", value: "0.7893 g/mL", source: "handbook-ethanol" },
      { name: "oxygen demand of ethanol", value: "2.084 g/g", source: "standard-atomic-weights" },
    ],
    sources: ["mass-balance", "handbook-ethanol", "standard-atomic-weights"],
    assumptions: [...mix.assumptions, "strengths are by volume at about 20 °C"],
    cautions: [
      ...mix.cautions,
      caution("alcohol-shrinks-on-mixing", {}, "note"),
      ...alcoholCautions(stockPercent.high),
      caution("no-denatured-alcohol", {}, "warning"),
    ],
  };
}

/** The fire warning for the strongest alcohol handled. */
export function alcoholCautions(percentByVolume: number) {
  return [
    caution(
      "alcohol-flammable",
      { percent: percentByVolume, flashPointC: alcoholFlashPointC(percentByVolume) },
      "danger",
    ),
  ];
}

/** Mass of ethanol, and the oxygen it would take, in a measured volume. */
export function alcoholContent(question: {
  readonly volume: Estimate<Litres>;
  readonly percent: Estimate;
}): Answer<{ readonly ethanol: Estimate<Grams>; readonly cod: Estimate<Grams> }> | NoAnswer {
  const { volume, percent } = question;
  const unusable = unusableFigure([
    { name: "volume", estimate: volume, unit: "L" },
    { name: "strength by volume", estimate: percent, unit: "%", max: 100 },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate({ volume, "strength by volume": percent }, (v) => {
    const ethanol = ethanolMass(v.volume, as<Fraction>(v["strength by volume"] / 100));
    return { ethanol, cod: ethanolCod(ethanol) };
  });
  return {
    kind: "answer",
    value: estimates,
    method: "Per cent alcohol is a volume, turned into mass by the density of ethanol",
    working: ["mass = volume × strength by volume × density", "oxygen demand = mass × 2.084"],
    constants: [
      { name: "density of ethanol at 20 °C", value: "0.7893 g/mL", source: "handbook-ethanol" },
      { name: "oxygen demand of ethanol", value: "2.084 g/g", source: "standard-atomic-weights" },
    ],
    sources: ["handbook-ethanol", "standard-atomic-weights"],
    assumptions: ["about 20 °C", "the label's per cent is by volume"],
    cautions: alcoholCautions(percent.high),
    driver: drivers.ethanol,
  };
}
