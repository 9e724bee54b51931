import { type Caution, caution } from "../result.ts";

/** Above this a load wants two people or smaller portions. kg. Source: common-practice. */
const HEAVY_TO_LIFT_KG = 25;
/** Above this a full vessel wants a thought about the floor. kg. Source: assumption. */
const HEAVY_TO_STAND_KG = 200;

/** What to mind when a load has to be carried. */
export function liftingCautions(what: string, kg: number): readonly Caution[] {
  return kg > HEAVY_TO_LIFT_KG ? [caution("heavy-lift", { what, kg })] : [];
}

/** What to mind when a full vessel has to stand somewhere. */
export function standingCautions(kg: number): readonly Caution[] {
  return kg > HEAVY_TO_STAND_KG ? [caution("heavy-vessel", { kg }, "danger")] : [];
}
