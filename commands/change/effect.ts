import { showEstimate, showNumber, showVolume } from "../../src/core/quantity/show.ts";
import { waterChange } from "../../src/core/water/water-change.ts";
import {
  answerReply,
  askFor,
  capitalised,
  choice,
  defineCommand,
  optional,
  quantity,
} from "../../src/kit/index.ts";
import {
  changeSize,
  commonUnit,
  level,
  NONE,
  showSize,
  supplyOf,
  supplyOptions,
  systemOf,
  systemOptions,
  WHICH_VOLUME,
} from "./shared.ts";

const TITLE = "What a water change does";

export default defineCommand({
  name: "effect",
  summary: "What one or several water changes do to anything dissolved",
  options: {
    now: level("The value now, e.g. 80 mg/L or 8.2 dKH", "80 mg/L"),
    size: changeSize("How much is changed each time, e.g. 30 % or 200 L"),
    source: optional(level("The same in the new water; none if left out", "5 mg/L")),
    times: optional(quantity.count("How many changes, one after the other", "3")),
    way: optional(choice("All at once, or slowly in and out at the same time", ["in steps", "continuous"])),
    ...systemOptions,
    ...supplyOptions,
  },
  examples: [
    "/change effect now:80 mg/L size:30 % volume:2700 L",
    "/change effect now:80 mg/L source:5 mg/L size:15 % times:4 tank:Lagoon",
  ],
  run(input, context) {
    const system = systemOf(input, context);
    if (system === undefined)
      return askFor(context, WHICH_VOLUME.option, { title: TITLE, text: WHICH_VOLUME.text });
    const source = input.source ?? NONE;
    const unit = commonUnit(input.now, input.source);
    const times = input.times?.best ?? 1;
    if (input.way === "continuous" && input.size.kind === "fraction")
      return askFor(
        context,
        { name: "size", example: "200 L" },
        { title: TITLE, text: "For a slow exchange, say how many litres run through in all." },
      );
    const answer = waterChange({
      volume: system.volume,
      now: input.now.estimate,
      source: source.estimate,
      unit,
      pattern:
        input.way === "continuous" && input.size.kind === "litres"
          ? { kind: "continuous", litres: input.size.litres }
          : { kind: "in steps", each: input.size, times },
    });
    const supply =
      answer.kind === "answer" ? supplyOf(answer.value.eachL, input) : { lines: [], cautions: [] };
    return answerReply(answer, context, {
      title: capitalised(
        `${system.tank === undefined ? "" : `${system.tank.name}: `}${times > 1 ? `${times} changes of` : "a change of"} ${showSize(input.size)}`,
      ),
      headline: (it) =>
        `${showEstimate(input.now.estimate, unit)} becomes ${showEstimate(it.after, unit, { significant: 3 })}`,
      body: (it) => [
        `Each time ${showVolume(it.eachL, system.typedUnit)}${times > 1 ? `, ${showVolume(it.totalL, system.typedUnit)} in all` : ""}; ${showNumber(it.oldWaterLeft.best * 100, 3)} % of the old water is left.`,
        ...(it.course.length > 1
          ? [
              `On the way: ${it.course
                .slice(0, 12)
                .map((each) => showNumber(each, 3))
                .join(" → ")}.`,
            ]
          : []),
        ...(input.source === undefined
          ? ["The new water is taken to hold none of it: say source: if yours does."]
          : []),
        ...supply.lines,
      ],
      taken: system.taken,
      cautions: [...system.cautions, ...supply.cautions],
    });
  },
});
