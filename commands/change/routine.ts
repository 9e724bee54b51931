import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Days } from "../../src/core/quantity/units.ts";
import type { LevelPerDay } from "../../src/core/water/water-change-steady-state.ts";
import { waterChangeSteadyState } from "../../src/core/water/water-change-steady-state.ts";
import { waterChangeToHold } from "../../src/core/water/water-change-to-hold.ts";
import {
  answerReply,
  askFor,
  type Context,
  capitalised,
  defineCommand,
  type Outcome,
  optional,
  quantity,
} from "../../src/kit/index.ts";
import {
  changeSize,
  commonUnit,
  type LevelEntry,
  level,
  NONE,
  type System,
  showSize,
  supplyOf,
  supplyOptions,
  systemOf,
  systemOptions,
  WHICH_VOLUME,
} from "./shared.ts";

const TITLE = "A routine of water changes";

export default defineCommand({
  name: "routine",
  summary: "Where regular changes settle, or how large they must be to hold a ceiling",
  options: {
    rise: level("What the tank adds in a day, e.g. 1.2 mg/L", "1.2 mg/L"),
    every: quantity.span("How often you change", "10 days"),
    size: optional(changeSize("How much each time: tells where it settles")),
    ceiling: optional(level("The value it must stay under: tells how much to change", "40 mg/L")),
    source: optional(level("The same in the new water; none if left out", "5 mg/L")),
    now: optional(level("The value now, for the way there", "80 mg/L")),
    ...systemOptions,
    ...supplyOptions,
  },
  examples: [
    "/change routine rise:4.8 mg/L every:10 days size:30 % volume:2700 L",
    "/change routine rise:1.2 mg/L every:7 days ceiling:40 mg/L tank:Lagoon",
  ],
  run(input, context): Outcome {
    const system = systemOf(input, context);
    if (system === undefined)
      return askFor(context, WHICH_VOLUME.option, { title: TITLE, text: WHICH_VOLUME.text });
    const { size, ceiling } = input;
    const unit = commonUnit(input.rise, ceiling, input.source, input.now);
    const shared = {
      volume: system.volume,
      everyDays: mapEstimate(input.every.estimate, (hours) => as<Days>(hours / 24)),
      source: (input.source ?? NONE).estimate,
      risePerDay: mapEstimate(input.rise.estimate, (value) => as<LevelPerDay>(value)),
      unit,
    };
    if (ceiling !== undefined) return hold(ceiling, shared, system, input, context);
    if (size === undefined)
      return askFor(
        context,
        { name: "size", example: "30 %" },
        { title: TITLE, text: "How much is changed each time? (Or give a ceiling: to be told.)" },
      );
    const answer = waterChangeSteadyState({ ...shared, each: size, now: input.now?.estimate });
    return answerReply(answer, context, {
      title: `${nameOf(system)}${showSize(size)} every ${showEstimate(shared.everyDays, "days")}`,
      headline: (it) =>
        `Settles at ${showEstimate(it.before, unit, { significant: 3 })} before, ${showEstimate(it.after, unit, { significant: 3 })} after each change`,
      body: (it) => [
        `Between changes it climbs by ${showEstimate(it.risePerInterval, unit, { significant: 3 })}. Reading the two figures in turn is this routine at rest, not a tank getting worse.`,
        `It is half-way there after ${showEstimate(it.changesToHalfway, "changes", { significant: 2 })}. The same water run through slowly would hold ${showEstimate(it.ifContinuous, unit, { significant: 3 })}.`,
      ],
      table: (it) => ({
        columns: ["change", "day", "before", "after"],
        rows: it.course
          .slice(0, 8)
          .map((turn) => [
            String(turn.change),
            showNumber(turn.day, 3),
            showNumber(turn.before, 3),
            showNumber(turn.after, 3),
          ]),
      }),
      taken: system.taken,
      cautions: system.cautions,
    });
  },
});

function hold(
  ceiling: LevelEntry,
  shared: Omit<Parameters<typeof waterChangeToHold>[0], "ceiling">,
  system: System,
  input: Parameters<typeof supplyOf>[1],
  context: Context,
): Outcome {
  const answer = waterChangeToHold({ ...shared, ceiling: ceiling.estimate });
  const supply =
    answer.kind === "answer" ? supplyOf(answer.value.litres, input) : { lines: [], cautions: [] };
  return answerReply(answer, context, {
    title: capitalised(`${nameOf(system)}never above ${showEstimate(ceiling.estimate, shared.unit)}`),
    headline: (it) => `Change ${showVolume(it.litres, system.typedUnit)} each time`,
    body: (it) => [
      `That is ${showEstimate(
        mapEstimate(it.fraction, (share) => share * 100),
        "%",
        { significant: 3 },
      )} every ${showEstimate(shared.everyDays, "days")}; after each change it stands at ${showEstimate(it.after, shared.unit, { significant: 3 })}.`,
      ...supply.lines,
    ],
    taken: system.taken,
    cautions: [...system.cautions, ...supply.cautions],
  });
}

function nameOf(system: System): string {
  return system.tank === undefined ? "" : `${system.tank.name}: `;
}
