import { fallingRoot } from "../numeric/falling-root.ts";
import { as, type LitresPerHour, type Metres } from "../quantity/units.ts";
import { litresPerHour, type Millimetres, m3PerSecond, STANDARD_GRAVITY } from "./plant-units.ts";

/** m^½/s. Source: francis-1883 (3.33 in feet). */
export const FRANCIS = 1.84;
/** Length lost to each end contraction, per unit of head. Source: francis-1883. */
const PER_CONTRACTION = 0.1;
/** Source: kindsvater-carter-1957, narrow notch, used below the widths tested. */
export const NARROW_NOTCH = 0.587;

export type EndContractions = 0 | 1 | 2;

/**
 * Flow over a plain sharp crest with free fall.
 * Source: francis-1883. Range: head at most a third of the length; tested above 60 mm of head.
 * Throws: RangeError when the length is not positive, the head negative, or the contractions leave no crest.
 */
export function francisFlow(length: Metres, head: Millimetres, contractions: EndContractions): LitresPerHour {
  if (!(length > 0 && head >= 0)) throw new RangeError("a weir needs a length, and a head of 0 or more");
  const headM = head / 1000;
  const effective = length - PER_CONTRACTION * contractions * headM;
  if (!(effective > 0)) throw new RangeError("the head is too high for this crest");
  return as<LitresPerHour>(litresPerHour(FRANCIS * effective * headM ** 1.5));
}

/** The highest head for which Francis' formula still rises with the head, mm. */
export function francisLimit(length: Metres): Millimetres {
  return as<Millimetres>((length / 3) * 1000);
}

/**
 * Head a plain crest needs for a flow: the inverse of `francisFlow`, up to a third of the length.
 * Throws: RangeError for a flow beyond that.
 */
export function francisHead(length: Metres, flow: LitresPerHour, contractions: EndContractions): Millimetres {
  const limit = francisLimit(length);
  if (!(flow >= 0 && flow <= francisFlow(length, limit, contractions))) {
    throw new RangeError("the flow is more than this crest carries as a weir");
  }
  return as<Millimetres>(
    fallingRoot((h) => flow - francisFlow(length, as<Millimetres>(h), contractions), 0, limit),
  );
}

/** Head a toothed crest needs: every slot is a narrow notch of its own.
 *  Source: kindsvater-carter-1957. Throws: RangeError when a figure is not positive. */
export function toothedHead(slots: number, slotWidth: Millimetres, flow: LitresPerHour): Millimetres {
  if (!(slots > 0 && slotWidth > 0 && flow >= 0))
    throw new RangeError("a toothed crest needs slots and a width");
  const perHead = (NARROW_NOTCH * (2 / 3) * Math.sqrt(2 * STANDARD_GRAVITY) * slots * slotWidth) / 1000;
  return as<Millimetres>((m3PerSecond(flow) / perHead) ** (2 / 3) * 1000);
}

/** Flow a toothed crest carries at a head; the inverse of `toothedHead`. */
export function toothedFlow(slots: number, slotWidth: Millimetres, head: Millimetres): LitresPerHour {
  if (!(slots > 0 && slotWidth > 0 && head >= 0))
    throw new RangeError("a toothed crest needs slots and a width");
  const perHead = (NARROW_NOTCH * (2 / 3) * Math.sqrt(2 * STANDARD_GRAVITY) * slots * slotWidth) / 1000;
  return as<LitresPerHour>(litresPerHour(perHead * (head / 1000) ** 1.5));
}
