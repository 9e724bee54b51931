import { FISH } from "../nitrogen/fish.ts";
import { fishMass, MASS_SPREAD_FACTOR } from "../nitrogen/fish-body.ts";
import { type AnimalGroup, withDistinctLabels } from "../nitrogen/stocking-input.ts";
import { as, type Grams } from "../quantity/units.ts";
import type { OutageFish } from "./power-cut.ts";

/** Animals as the power-cut sum takes them: by mass, worked out from length where only that is known.
 *  Source: the length–weight figures of the fish table. */
export function outageFish(groups: readonly AnimalGroup[]): readonly OutageFish[] {
  return withDistinctLabels(groups).map(({ label, count, body }) => {
    if (body.kind === "mass") return { name: label, count, massG: body.massG };
    const fish = FISH[body.fish];
    const { best, low, high } = body.lengthCm;
    return {
      name: label,
      count,
      massG: {
        best: fishMass(fish, best),
        low: as<Grams>(fishMass(fish, low) / MASS_SPREAD_FACTOR),
        high: as<Grams>(fishMass(fish, high) * MASS_SPREAD_FACTOR),
      },
    };
  });
}
