import { runningCost } from "../../src/core/plant/running-cost.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";

const TITLE = "Running cost";

export default defineCommand({
  name: "load",
  summary: "What pumps, lights and heaters draw and cost, by device",
  options: {
    devices: optional(plantOption("devices", "Watts, hours a day (24 unless said); parted by “;”")),
    price: optional(plantOption("price", "Price of a kilowatt-hour")),
    tank: optional(tankOption()),
  },
  examples: ["/power load devices:return pump 180 W; light 150 W, 9 h; heater 300 W, 10 h price:0.17"],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const devices = known.plant("devices", input.devices);
    if (devices === undefined) return known.askPlant("devices", TITLE);
    const price = known.plant("price", input.price);
    if (price === undefined) return known.askPlant("price", TITLE);
    const currency = price.currency ?? "";
    return answerReply(runningCost(devices, price.estimate), context, {
      title: known.titled(TITLE),
      headline: ({ costPerMonth }) =>
        `${showEstimate(costPerMonth, currency, { significant: 3 }).trim()} a month${currency === "" ? ", in the money of your price" : ""}`,
      body: ({ meanW, kWhPerDay, costPerYear }) => [
        `${showEstimate(meanW, "W", { significant: 3 })} on average, ${showEstimate(kWhPerDay, "kWh", { significant: 3 })} a day, ${showEstimate(costPerYear, currency, { significant: 3 }).trim()} a year.`,
        "Heaters and chillers cycle: measure them over a week for a truer figure.",
      ],
      table: ({ devices: each }) => ({
        columns: ["device", `${currency} a month`.trim()],
        rows: each.map(({ name, costPerMonth }) => [
          name,
          showEstimate(costPerMonth, "", { significant: 3 }).trim(),
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
