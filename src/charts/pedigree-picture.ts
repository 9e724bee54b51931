import type { PedigreeSpec } from "../kit/system-spec.ts";
import { FONT_FAMILY, LOOK } from "./look.ts";
import { cutTo, escapedText } from "./svg-words.ts";

const WIDTH = 800;
const HEIGHT = 470;
const MARGIN = 16;
const BOX = { least: 34, most: 56 } as const;

/** One animal at the left, its parents, theirs and so on to the right; father above mother. */
export function pedigreePicture(spec: PedigreeSpec): string {
  const columns = Math.max(1, spec.generations.length);
  const columnPx = (WIDTH - 2 * MARGIN) / columns;
  const middleOf = (generation: number, index: number): number =>
    MARGIN + ((HEIGHT - 2 * MARGIN) * (index + 0.5)) / 2 ** generation;
  const parts: string[] = [];
  spec.generations.forEach((animals, generation) => {
    const left = MARGIN + generation * columnPx;
    const width = columnPx - 26;
    const height = Math.min(BOX.most, Math.max(BOX.least, ((HEIGHT - 2 * MARGIN) / 2 ** generation) * 0.8));
    animals.forEach((animal, index) => {
      if (animal === undefined) return;
      const middle = middleOf(generation, index);
      if (generation > 0) {
        const child = middleOf(generation - 1, Math.floor(index / 2));
        parts.push(
          `<path d="M ${left - 26} ${child.toFixed(1)} H ${left - 13} V ${middle.toFixed(1)} H ${left}" fill="none" stroke="${LOOK.faint}" stroke-width="1.5"/>`,
        );
      }
      const edge = animal.isRepeated ? LOOK.limit : LOOK.faint;
      parts.push(
        `<rect data-animal="${escapedText(animal.name)}" x="${left}" y="${(middle - height / 2).toFixed(1)}" width="${width}" height="${height.toFixed(1)}" rx="5" fill="${animal.isRepeated ? "#f7e3da" : "#ffffff"}" stroke="${edge}" stroke-width="${animal.isRepeated ? 2 : 1}"/>`,
        `<text x="${left + 8}" y="${(middle - 2).toFixed(1)}" font-size="15" fill="${LOOK.ink}">${escapedText(cutTo(animal.name, width - 14, 15))}</text>`,
        `<text x="${left + 8}" y="${(middle + 14).toFixed(1)}" font-size="11" fill="${LOOK.faint}">${escapedText(cutTo(animal.note, width - 14, 11))}</text>`,
      );
    });
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" font-family="${FONT_FAMILY}, sans-serif">`,
    `<title>${escapedText(spec.altText)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="${LOOK.paper}"/>`,
    ...parts,
    "</svg>",
  ].join("\n");
}
