import { dosingPumpRun } from "../../src/core/dosing/dosing-pump-run.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, quantity } from "../../src/kit/index.ts";
import { showPour } from "./shared.ts";

export default defineCommand({
  name: "pump",
  summary: "How many seconds a dosing pump runs for each dose",
  options: {
    daily: quantity.volume("What it shall give in a day", "48 mL"),
    doses: quantity.count("In how many doses", "24"),
    flow: quantity.doserFlow("What the pump gives, measured into a cylinder", "1.5 mL/min"),
  },
  examples: ["/dose pump daily:48 mL doses:24 flow:1.5 mL/min"],
  audience: "channel",
  run({ daily, doses, flow }, context) {
    const answer = dosingPumpRun({
      daily: daily.estimate,
      dosesPerDay: doses.best,
      flow,
    });
    return answerReply(answer, context, {
      title: `${showPour(daily.estimate)} a day in ${doses.best} doses`,
      headline: ({ secondsPerDose }) => `${showEstimate(secondsPerDose, "s", { significant: 3 })} per dose`,
      body: ({ perDose }) => [
        `Each dose is ${showPour(perDose)}. Measure the pump's flow again every month: tubes tire.`,
      ],
    });
  },
});
