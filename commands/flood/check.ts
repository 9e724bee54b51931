import { floodCheck } from "../../src/core/plant/flood-check.ts";
import type { Millimetres } from "../../src/core/plant/plant-units.ts";
import type { PumpOffFlood } from "../../src/core/plant/pump-off-flood.ts";
import { displayRoom, failingContainers } from "../../src/core/plant/tank-row.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, listed, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { pumpOffFigures } from "./shared.ts";

const TITLE = "Pump-off flood check";

export default defineCommand({
  name: "check",
  summary: "Whether the row holds what falls back when the pump stops, and what else could flood",
  options: {
    row: optional(plantOption("row", "Containers in the water's order; your tank's if left out")),
    level: optional(plantOption("level", "Running level over the overflow's crest")),
    returns: optional(plantOption("returns", "Return outlets under water, with siphon breaks; or none")),
    "overflow-box": optional(plantOption("overflow-box", "Water in the overflow box above its standpipe")),
    pipe: optional(plantOption("pipe", "Pipes that empty back: bore and length")),
    surface: optional(plantOption("surface", "The display's water surface")),
    inlet: optional(plantOption("inlet", "Water over the pump's inlet: for blocked drains and restart")),
    reservoir: optional(plantOption("reservoir", "Top-off reservoir: for a top-off that sticks on")),
    room: optional(quantity.length("From the display's running level to its rim", "80 mm")),
    flow: optional(quantity.flow("What the pump really delivers", "6000 L/h")),
    tank: optional(tankOption()),
  },
  examples: [
    "/flood check level:25 mm returns:none overflow-box:10 L surface:2.6 m2 row:settling box shares level, surface 0.32 m2, room 115 mm; pump box holds the pump, surface 0.6 m2, room 115 mm inlet:90 L room:80 mm",
    "/flood check tank:Lagoon",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.surface, context);
    const containers = known.tank?.containers ?? [];
    const ready = pumpOffFigures(known, input, context, TITLE);
    if (ready.kind === "question") return ready;
    const { pumpOff, facts, flow } = ready;
    const inlet = known.plant("inlet", input.inlet);
    const reservoir = known.plant("reservoir", input.reservoir);
    const room =
      input.room === undefined
        ? displayRoom(containers)
        : mapEstimate(input.room.estimate, (cm) => as<Millimetres>(cm * 10));
    const answer = floodCheck({
      pumpOff,
      failing: failingContainers(containers, facts),
      ...(inlet === undefined ? {} : { inletL: inlet.estimate }),
      ...(flow === undefined ? {} : { flow }),
      ...(room === undefined ? {} : { displayRoomMm: room }),
      ...(reservoir === undefined ? {} : { reservoirL: reservoir.estimate }),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ pumpOff }) => sayVerdict(pumpOff.verdict),
      body: ({ pumpOff, blocked, restart, stuckTopOffOverL, spill }) => [
        `${showEstimate(pumpOff.fallback.totalL, "L", { significant: 3 })} fall back; there is room for ${showEstimate(pumpOff.freeL, "L", { significant: 3 })} in ${listed(pumpOff.receivers)}.`,
        `The display falls ${showEstimate(pumpOff.dropMm, "mm", { significant: 2 })}, down to ${pumpOff.lowestOpening}; with the reserve kept it may fall ${showEstimate(pumpOff.allowedDropMm, "mm", { significant: 2 })}.`,
        blocked === undefined
          ? `Blocked drain: not worked out; say ${[...(inlet === undefined ? ["inlet:"] : []), ...(room === undefined ? ["room:"] : [])].join(" and ")}.`
          : `Blocked drain: the display rises ${showEstimate(blocked.riseMm, "mm", { significant: 2 })}, ${blocked.outcome === "fits" ? "and holds it" : blocked.outcome === "floods" ? "and runs over" : "and may run over"}.`,
        stuckTopOffOverL === undefined
          ? "Stuck top-off: not worked out; say reservoir:."
          : stuckTopOffOverL.high > 0
            ? `Stuck top-off: ${showEstimate(stuckTopOffOverL, "L", { significant: 2 })} run over once the pump stops.`
            : "Stuck top-off: the whole reservoir fits, even with the pump off.",
        ...(restart === undefined
          ? []
          : [
              `Restart: ${showEstimate(restart.leftL, "L", { significant: 2 })} left over the pump's inlet when the drains run again.`,
            ]),
        ...(spill === undefined
          ? []
          : [
              `Largest spill from one failed container: ${showEstimate(spill.litres, "L", { significant: 3 })}, at ${spill.container}.`,
            ]),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

function sayVerdict({ outcome, container, leftMm }: PumpOffFlood["verdict"]): string {
  const over = showEstimate(
    mapEstimate(leftMm, (mm) => -mm),
    "mm",
    { significant: 2 },
  );
  const left = showEstimate(leftMm, "mm", { significant: 2 });
  switch (outcome) {
    case "floods":
      return `Floods: ${container} runs over by ${over}`;
    case "may flood":
      return `May flood: ${container}, ${left} left by the best figures`;
    case "tight":
      return `Tight: ${left} left in ${container}`;
    case "fits":
      return `Fits: ${left} left in ${container}`;
  }
}
