import { residence } from "../../src/core/plant/residence.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { netVolume } from "../../src/core/tank/net-volume.ts";
import { answerReply, defineCommand, UserError } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "Time in each container";

export default defineCommand({
  name: "residence",
  summary: "How long water stays in each container, and how often each is passed in an hour",
  options: { flow: flowOption, tank },
  examples: ["/flow residence flow:6000 L/h tank:Lagoon"],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    if (known.tank === undefined)
      throw new UserError("not-found", "This needs a tank's containers: describe yours once with /tank add.");
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    const net = netVolume(known.tank.containers);
    const rows = net.kind === "answer" ? net.value.containers.filter(({ inSystem }) => inSystem) : [];
    const answer =
      net.kind === "answer"
        ? residence(
            rows.map(({ name, netL }) => ({ name, volumeL: netL })),
            flow,
          )
        : net;
    return answerReply(answer, context, {
      title: `${known.tank.name}: ${TITLE.toLowerCase()} at ${showFlow(flow)}`,
      headline: ({ systemTurnoverPerHour }) =>
        `All the water passes ${showEstimate(systemTurnoverPerHour, "times an hour", { significant: 2 })}`,
      body: ({ totalMinutes }) => [
        `Once around takes ${showEstimate(totalMinutes, "minutes", { significant: 2 })} on average.`,
      ],
      table: ({ containers }) => ({
        columns: ["container", "minutes", "times an hour"],
        rows: containers.map((each) => [
          each.name,
          showEstimate(each.minutes, "", { significant: 2 }).trim(),
          showEstimate(each.turnoverPerHour, "", { significant: 2 }).trim(),
        ]),
      }),
      taken: known.taken,
      cautions: net.cautions,
    });
  },
});
