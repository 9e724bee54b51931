import type { Hours } from "../quantity/units.ts";
import { type Answer, caution } from "../result.ts";
import { type Clash, clashes, type DatedAction } from "./clashes.ts";
import { substanceHazard } from "./hazards.ts";
import type { Action } from "./read-action.ts";

export interface PlanCheck {
  /** What gets in the way, each with the logged actions it clashes with, as places in what was given. */
  readonly found: readonly (Clash & { readonly with: readonly number[] })[];
  readonly lookedAt: number;
  /** A medicine is named: its timing is for a vet, and nothing here judges it. */
  readonly isMedicine: boolean;
}

/** Whether something planned gets in the way of what was done to the tank lately, or the other way round. */
export function checkPlan(
  plan: Action,
  inHours: Hours,
  logged: readonly DatedAction[],
  /** The plan in the member's words, to see whether a medicine is named. */
  words = "",
): Answer<PlanCheck> {
  const isMedicine = substanceHazard(words).classes.includes("medicine");
  const planned: DatedAction = { ...plan, at: inHours };
  const place = logged.length;
  const found = clashes([...logged, planned])
    .filter(({ actions }) => actions.includes(place))
    .map((clash) => ({ ...clash, with: clash.actions.filter((each) => each !== place) }));
  return {
    kind: "answer",
    value: { found, lookedAt: logged.length, isMedicine },
    method: "Pairs of actions that get in each other's way",
    working: [
      "carbon within 24 h of equipment going off, or while it is off",
      "a total-ammonia test within 48 h of a binder",
      "a rise of pH within 48 h of ammonia in the water",
      "calcium and carbonate within 2 h of each other",
      "two changes within a week of each other",
    ],
    constants: [
      { name: "a binder blinds the test for", value: "48 h", source: "common-practice" },
      { name: "bacteria burn a carbon dose for", value: "24 h", source: "assumption" },
      { name: "calcium and carbonate apart", value: "2 h", source: "common-practice" },
    ],
    sources: ["common-practice", "assumption"],
    assumptions: ["what was done is in the log", "equipment switched off stays off until it is logged as on"],
    cautions: [
      ...(isMedicine ? [caution("medicine-needs-a-vet", {}, "danger")] : []),
      ...found.map((each) => each.caution),
    ],
  };
}
