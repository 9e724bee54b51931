import { HOURS_FOLLOWED } from "../core/plant/power-cut.ts";
import { wallThickness } from "../core/plant/wall-thickness.ts";
import type { Estimate } from "../core/quantity/estimate.ts";
import { showEstimate } from "../core/quantity/show.ts";
import { sayRefusal } from "../wording/index.ts";

export {
  containerAdviceWording as CONTAINER_ADVICE_WORDS,
  outageActionWording as OUTAGE_WORDS,
} from "../wording/plant.ts";

/** Hours until something, or that it does not come within the time followed. */
export function sayHours(hours: Estimate): string {
  if (hours.low >= HOURS_FOLLOWED) return `not within ${HOURS_FOLLOWED} h`;
  const text = showEstimate(hours, "h", { significant: 2 });
  return hours.best >= HOURS_FOLLOWED
    ? `${showEstimate({ ...hours, best: hours.low, high: hours.low }, "h", { significant: 2 })} at the worst, else not within ${HOURS_FOLLOWED} h`
    : text;
}

/** Why wall thickness is refused, as one paragraph. */
export const WALL_REFUSAL: string = sayRefusal(wallThickness().reason);
