import { type Caution, caution } from "../result.ts";
import type { BoxResult, FilterTrainResult } from "./filter-train.ts";
import type { FilterTrain, TrainBox } from "./filter-train-sum.ts";
import { rounded } from "./rounded.ts";

/** Lowest oxygen, mg/L, under which a box can at all be called low in oxygen. */
const LOW_BELOW = 2;
/** What a train says about itself: oxygen where it was not expected, and the order of its stages. */
export function trainCautions(train: FilterTrain, result: FilterTrainResult): Caution[] {
  const cautions: Caution[] = [];
  if (result.isOverloaded) {
    cautions.push(
      caution("filter-cannot-take-load", { takenGPerDay: rounded(result.nitrifiedGPerDay.best, 2) }),
    );
  }
  const rich = result.boxes.filter(
    (figures, index) => train.boxes[index]?.path.kind === "main" && figures.leastPossibleMgPerL > LOW_BELOW,
  );
  if (rich.length > 0) {
    const leastMgPerL = rounded(Math.min(...rich.map((figures) => figures.leastPossibleMgPerL)), 2);
    const boxes = rich.map((figures) => figures.label).join(", ");
    cautions.push(
      caution("main-flow-stays-oxic", { boxes, flowLPerH: rounded(train.flow.best), leastMgPerL }, "note"),
    );
  }
  train.boxes.forEach((box, index) => {
    const figures = result.boxes[index];
    if (figures === undefined) return;
    cautions.push(...oxygenCautions(box, figures));
    cautions.push(...orderCautions(train.boxes, box, index));
  });
  cautions.push(caution("filter-figures-rest-on-maturity", {}, "note"));
  return cautions;
}

function oxygenCautions(box: TrainBox, figures: BoxResult): Caution[] {
  const inMain = box.path.kind === "main";
  if (inMain && box.purpose === "low oxygen" && figures.leastPossibleMgPerL > LOW_BELOW) {
    const about = {
      box: box.label,
      flowLPerH: rounded(figures.flow.best),
      leastMgPerL: rounded(figures.leastPossibleMgPerL, 2),
    };
    const side = figures.anoxicBelowLPerH;
    return [
      side === undefined
        ? caution("never-low-oxygen-in-main-flow", about)
        : caution("low-oxygen-needs-side-stream", { ...about, sideLPerH: rounded(side, 2) }),
    ];
  }
  if (box.purpose !== "low oxygen" && figures.oxygenOut.best < LOW_BELOW) {
    return [caution("box-starves-of-oxygen", { box: box.label, mgPerL: rounded(figures.oxygenOut.best, 2) })];
  }
  if (box.purpose === "low oxygen" && figures.state === "anoxic") {
    return [caution("anoxic-box-may-make-sulphide", { box: box.label }, "danger")];
  }
  if (!inMain && box.purpose === "low oxygen" && figures.state !== "anoxic") {
    return [
      figures.anoxicBelowLPerH === undefined
        ? caution("side-stream-needs-food", { box: box.label })
        : caution("side-stream-too-fast", {
            box: box.label,
            flowLPerH: rounded(figures.flow.best),
            sideLPerH: rounded(figures.anoxicBelowLPerH, 2),
          }),
    ];
  }
  return [];
}

/** Order of stages, with its reason in the wording. Source: common-practice. */
function orderCautions(boxes: readonly TrainBox[], box: TrainBox, index: number): Caution[] {
  const cautions: Caution[] = [];
  const later = boxes.slice(index + 1).filter((each) => each.path.kind === "main");
  const solidsLater = later.find((each) => each.purpose === "solids");
  const before = boxes[index - 1];
  if (box.path.kind !== "main") return cautions;
  if (box.purpose === "nitrifying" && solidsLater !== undefined) {
    cautions.push(caution("solids-belong-first", { box: box.label, solids: solidsLater.label }, "note"));
  }
  if (box.purpose === "chemical" && solidsLater !== undefined) {
    cautions.push(caution("chemical-media-belong-after-solids", { box: box.label }, "note"));
  }
  if (box.purpose === "low oxygen" && before?.isAerated === true) {
    cautions.push(caution("aeration-before-slow-box", { box: box.label, aerated: before.label }, "note"));
  }
  if (box.purpose === "low oxygen" && !later.some((each) => each.isAerated || each.purpose === "skimmer")) {
    cautions.push(caution("aerate-after-slow-box", { box: box.label }, "note"));
  }
  if (box.purpose === "skimmer" && boxes.slice(0, index).some((each) => each.purpose === "nitrifying")) {
    cautions.push(caution("skimmer-belongs-before-media", { box: box.label }, "note"));
  }
  return cautions;
}
