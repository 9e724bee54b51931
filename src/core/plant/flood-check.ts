import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { type BlockedDrain, blockedDrain } from "./blocked-drain.ts";
import { joined } from "./joined-answers.ts";
import { type FailingContainer, type LargestSpill, largestSpill } from "./largest-spill.ts";
import type { Millimetres } from "./plant-units.ts";
import { type PumpOffFlood, type PumpOffInputs, pumpOffFlood } from "./pump-off-flood.ts";
import { type Restart, restart } from "./restart.ts";
import { refuseUnlessPositive } from "./usable-figures.ts";

export interface FloodInputs {
  readonly pumpOff: PumpOffInputs;
  /** Water over the pump's inlet in its own chamber; what a blocked drain and a restart hang on. */
  readonly inletL?: Estimate<Litres>;
  readonly flow?: Estimate<LitresPerHour>;
  /** From the display's running level to its rim. */
  readonly displayRoomMm?: Estimate<Millimetres>;
  readonly reservoirL?: Estimate<Litres>;
  /** Those whose surface and depth are known; every one may fail at its floor. */
  readonly failing: readonly FailingContainer[];
}

export interface FloodCheck {
  readonly pumpOff: PumpOffFlood;
  readonly blocked: BlockedDrain | undefined;
  readonly restart: Restart | undefined;
  /** Over the lowest opening when the reservoir has emptied itself and the pump then stops; 0 when it fits. */
  readonly stuckTopOffOverL: Estimate<Litres> | undefined;
  readonly spill: LargestSpill | undefined;
}

/** All the ways water leaves a system by itself, as far as the figures reach: pump off, blocked drain, restart,
 *  a top-off that sticks, and one container that fails. */
export function floodCheck(inputs: FloodInputs): Answer<FloodCheck> | NoAnswer {
  const { inletL, flow, displayRoomMm, reservoirL, failing } = inputs;
  const main = pumpOffFlood(inputs.pumpOff);
  if (main.kind === "no-answer") return main;
  const refused = refuseUnlessPositive({
    "top-off reservoir": reservoirL,
    "water over the pump's inlet": inletL,
  });
  if (refused !== undefined) return refused;
  const { fallback, freeL, verdict } = main.value;
  const blocked =
    inletL === undefined || displayRoomMm === undefined
      ? undefined
      : blockedDrain({
          pumpableL: inletL,
          areaM2: inputs.pumpOff.display.areaM2,
          freeboardMm: displayRoomMm,
          ...(flow === undefined ? {} : { flow }),
        });
  const again =
    inletL === undefined || flow === undefined
      ? undefined
      : restart({ refillL: fallback.totalL, chamberL: inletL, flow });
  const spill =
    inletL === undefined || failing.length === 0
      ? undefined
      : largestSpill({ containers: failing, fallbackL: fallback.totalL, pumpableL: inletL });
  const failed = [blocked, again, spill].find((each) => each?.kind === "no-answer");
  if (failed?.kind === "no-answer") return failed;
  const stuck =
    reservoirL === undefined
      ? undefined
      : propagate(
          {
            reservoir: reservoirL,
            "water falling back": fallback.totalL,
            "room to the lowest opening": freeL,
          },
          (v) => ({
            over: as<Litres>(
              Math.max(0, v.reservoir + v["water falling back"] - v["room to the lowest opening"]),
            ),
          }),
        ).estimates.over;
  const others = [blocked, again, spill].flatMap((each) => (each?.kind === "answer" ? [each] : []));
  const answer = joined<FloodCheck>(
    {
      pumpOff: main.value,
      blocked: computed(blocked),
      restart: computed(again),
      stuckTopOffOverL: stuck,
      spill: computed(spill),
    },
    main,
    others,
  );
  if (stuck === undefined || reservoirL === undefined || !(stuck.high > 0)) return answer;
  return {
    ...answer,
    working: [...answer.working, "stuck top-off: reservoir + what falls back − room"],
    cautions: [
      ...answer.cautions,
      caution(
        "top-off-floods",
        {
          container: verdict.container,
          reservoirL: reservoirL.best,
          freeL: Math.max(0, freeL.best - fallback.totalL.best),
        },
        "danger",
      ),
      caution("two-shut-offs", {}, "note"),
    ],
  };
}

function computed<T>(answer: Answer<T> | NoAnswer | undefined): T | undefined {
  return answer?.kind === "answer" ? answer.value : undefined;
}
