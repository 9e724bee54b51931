import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { comparable, type Strength } from "./strength.ts";
import { gramsForChange } from "./target-dose.ts";
import { unusableFigure } from "./usable-figures.ts";

/** What the vet's note comes to, with every figure it was made from, to be read back and confirmed again. */
export interface VetDose {
  readonly medicine: string;
  readonly netVolume: Estimate<Litres>;
  readonly dose: Estimate<MgPerL>;
  readonly strength: Strength;
  /** Active substance in the water. */
  readonly active: Estimate<Grams>;
  /** Product to measure out. */
  readonly product: Estimate<Litres>;
  /** Nothing is to be poured before a second yes. */
  readonly readBack: "not yet confirmed";
}

/**
 * The arithmetic of a vet's written figures and nothing else: it knows no medicine and proposes none.
 * Refused unless the member says that a vet wrote the figures, and every one of them is there.
 */
export function vetDose(question: {
  readonly vetWrote: boolean;
  readonly medicine: string;
  readonly netVolume?: Estimate<Litres>;
  readonly dose?: Estimate<MgPerL>;
  readonly strength?: Strength;
}): Answer<VetDose> | NoAnswer {
  const askVet: Caution[] = [caution("medicine-needs-a-vet", {}, "danger")];
  const { medicine, netVolume, dose, strength } = question;
  if (!question.vetWrote) return noAnswer("medicine-not-dosed", { medicine }, askVet);
  if (medicine.trim() === "")
    return noAnswer("vet-figures-missing", { missing: "the medicine's name" }, askVet);
  if (netVolume === undefined) {
    return noAnswer("vet-figures-missing", { missing: "the net volume of water" }, askVet);
  }
  if (dose === undefined) return noAnswer("vet-figures-missing", { missing: "the dose in mg/L" }, askVet);
  if (strength === undefined) {
    return noAnswer("vet-figures-missing", { missing: "the strength of the product" }, askVet);
  }
  const unusable = unusableFigure([
    { name: "net volume", estimate: netVolume, unit: "L" },
    { name: "dose", estimate: dose, unit: "mg/L" },
  ]);
  if (unusable !== undefined) return { ...unusable, cautions: askVet };
  const product = comparable(strength, "product");
  if ("kind" in product) return { ...product, cautions: askVet };
  if (product.family !== "mass in volume") {
    return noAnswer("strengths-do-not-compare", { stock: strength.kind, target: "mg/L" }, askVet);
  }
  const { estimates, drivers } = propagate(
    { "net volume": netVolume, dose, "product strength": product.amount },
    (v) => {
      const active = gramsForChange(v.dose, v["net volume"]);
      return { active, product: as<Litres>(active / v["product strength"]) };
    },
  );
  return {
    kind: "answer",
    value: { medicine, netVolume, dose, strength, ...estimates, readBack: "not yet confirmed" },
    method: "The vet's own figures multiplied out; nothing was added to them",
    working: ["active substance = dose × net volume", "product = active substance / product strength"],
    constants: [],
    sources: ["mass-balance"],
    assumptions: [
      "every figure is as the vet wrote it",
      "the dose is of the active substance the strength counts",
    ],
    cautions: [caution("vet-figures-read-back", {}, "danger"), ...askVet],
    driver: drivers.product,
  };
}
