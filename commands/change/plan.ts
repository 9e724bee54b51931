import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";
import { waterChangeForTarget } from "../../src/core/water/water-change-for-target.ts";
import { answerReply, askFor, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import {
  commonUnit,
  level,
  NONE,
  supplyOf,
  supplyOptions,
  systemOf,
  systemOptions,
  WHICH_VOLUME,
} from "./shared.ts";

const TITLE = "Water changes to reach a target";
const USUAL_SHARE = exactly(as<Fraction>(0.3));

export default defineCommand({
  name: "plan",
  summary: "How large a change, or how many, bring a value to its target",
  options: {
    now: level("The value now", "80 mg/L"),
    target: level("The value you want", "20 mg/L"),
    source: optional(level("The same in the new water; none if left out", "5 mg/L")),
    each: optional(quantity.fraction("Share changed each time, for several; 30 % if left out", "30 %")),
    ...systemOptions,
    ...supplyOptions,
  },
  examples: [
    "/change plan now:80 mg/L target:20 mg/L volume:2700 L",
    "/change plan now:80 mg/L target:20 mg/L source:5 mg/L each:25 % tank:Lagoon",
  ],
  run(input, context) {
    const system = systemOf(input, context);
    if (system === undefined)
      return askFor(context, WHICH_VOLUME.option, { title: TITLE, text: WHICH_VOLUME.text });
    const unit = commonUnit(input.now, input.target, input.source);
    const each = input.each ?? USUAL_SHARE;
    const answer = waterChangeForTarget({
      volume: system.volume,
      now: input.now.estimate,
      source: (input.source ?? NONE).estimate,
      target: input.target.estimate,
      unit,
      fractionEach: each,
    });
    const supply =
      answer.kind === "answer" ? supplyOf(answer.value.eachL, input) : { lines: [], cautions: [] };
    return answerReply(answer, context, {
      title: `${system.tank === undefined ? "" : `${system.tank.name}: `}${showEstimate(input.now.estimate, unit)} ${input.target.estimate.best > input.now.estimate.best ? "up" : "down"} to ${showEstimate(input.target.estimate, unit)}`,
      headline: (it) =>
        `${showEstimate(it.times, "changes", { significant: 2 })} of ${showVolume(it.eachL, system.typedUnit)}`,
      body: (it) => [
        `That is ${showNumber(each.best * 100, 3)} % each time, ${showVolume(it.stepsTotalL, system.typedUnit)} in all.`,
        `In one go it would be ${showVolume(it.singleL, system.typedUnit)} (${showNumber(it.singleFraction.best * 100, 3)} %); slowly, in and out at once, ${showVolume(it.continuousL, system.typedUnit)}.`,
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
