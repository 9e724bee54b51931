import type { Estimate } from "../quantity/estimate.ts";
import { writeNumber } from "../quantity/number-text.ts";
import { writeEstimate } from "../quantity/reader.ts";
import type { Container, Shape, VolumeBasis } from "./container.ts";
import { isUsuallyInSystem } from "./container-role.ts";

/** More figures than anyone measures, and none of the dust that a conversion leaves. */
const FIGURES = 6;

/** One line that `readContainers` reads back as the same container, to six figures:
 *  "display (display): 240 x 100 x 70 cm inside, level 62 cm, rock 180 kg". */
export function showContainer(container: Container): string {
  const { name, role, volume, rockKg, rockWeighed, sandKg, inSystem } = container;
  const facts = [showBasis(volume)];
  if (rockKg !== undefined)
    facts.push(`rock ${write(rockKg, "kg")}${rockWeighed === undefined ? "" : ` ${rockWeighed}`}`);
  if (sandKg !== undefined) facts.push(`sand ${write(sandKg, "kg")}`);
  if (!inSystem) facts.push("not in system");
  else if (!isUsuallyInSystem(role)) facts.push("in system");
  return `${name} (${role}): ${facts.join(", ")}`;
}

function showBasis(volume: VolumeBasis): string {
  switch (volume.kind) {
    case "measured fill":
      return `${write(volume.litres, "L")} measured`;
    case "label":
      return `${write(volume.litres, "L")} label`;
    case "dimensions": {
      const { shape, measured, wallCm, runningLevelCm } = volume;
      return [
        showShape(shape) + (measured === "not said" ? "" : ` ${measured}`),
        ...(wallCm === undefined ? [] : [`wall ${sides(wallCm)}`]),
        ...(runningLevelCm === undefined ? [] : [`level ${write(runningLevelCm, "cm")}`]),
      ].join(", ");
    }
  }
}

/** "240 x 100 x 70 cm", "cylinder 46 x 60 cm": the word, then the sides in the order they are read in. */
export function showShape(shape: Shape): string {
  switch (shape.kind) {
    case "box":
      return sides(shape.lengthCm, shape.widthCm, shape.heightCm);
    case "upright cylinder":
      return `cylinder ${sides(shape.diameterCm, shape.heightCm)}`;
    case "bow front":
      return `bow front ${sides(shape.lengthCm, shape.endWidthCm, shape.heightCm)} bow ${sides(shape.bowDepthCm)}`;
    case "quarter round":
      return `quarter round ${sides(shape.radiusCm, shape.heightCm)}`;
    case "hexagon":
      return `hexagon ${sides(shape.acrossFlatsCm, shape.heightCm)}`;
    case "L-shape":
      return `L-shape ${sides(shape.lengthCm, shape.widthCm, shape.heightCm)} cut ${sides(shape.cutLengthCm, shape.cutWidthCm)}`;
    case "horizontal drum":
      return `drum on its side ${sides(shape.diameterCm, shape.lengthCm)}`;
    case "tapered tub":
      return `tapered tub ${sides(shape.bottomLengthCm, shape.bottomWidthCm, shape.topLengthCm, shape.topWidthCm, shape.heightCm)}`;
  }
}

function sides(...lengthsCm: readonly number[]): string {
  return `${lengthsCm.map((cm) => writeNumber(rounded(cm))).join(" x ")} cm`;
}

function write({ best, low, high }: Estimate, unit: string): string {
  return writeEstimate({ best: rounded(best), low: rounded(low), high: rounded(high) }, unit);
}

function rounded(value: number): number {
  return Number(value.toPrecision(FIGURES));
}
