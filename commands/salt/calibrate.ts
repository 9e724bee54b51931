import { showEstimate } from "../../src/core/quantity/show.ts";
import { yieldFromBatch } from "../../src/core/water/yield-from-batch.ts";
import { answerReply, choice, defineCommand, optional, quantity, words } from "../../src/kit/index.ts";
import { mixingTemperature, showSalt } from "./shared.ts";

export default defineCommand({
  name: "calibrate",
  summary: "Learn from your last batch how much salt your mix really gives",
  options: {
    used: quantity.mass("Salt mix you used, e.g. 4.1 kg", "4.1 kg"),
    volume: quantity.volume("In how much water, e.g. 110 L", "110 L"),
    read: quantity.salinity("What you then measured, e.g. 33.5 ppt", "33.5 ppt"),
    measured: optional(
      choice("What the volume is: the finished salt water, or the fresh water put in", [
        "fresh water",
        "finished water",
      ]),
    ),
    temperature: optional(quantity.temperature("Of the water when measured", "25 °C")),
    product: optional(words("Your own word for this salt mix, to keep several apart", "blue bag", 40)),
  },
  examples: ["/salt calibrate used:4.1 kg volume:110 L read:33.5 ppt product:blue bag"],
  run(input, context) {
    const temperature = mixingTemperature(input.temperature?.estimate, undefined, context);
    const name = input.product ?? "my salt mix";
    const kind = input.measured === "finished water" ? "final" : "water";
    const answer = yieldFromBatch({
      volume: { kind, litres: input.volume.estimate },
      salt: input.used.estimate,
      salinity: input.read.salinity,
      temperature: temperature.estimate,
    });
    if (answer.kind === "answer")
      context.records.saltProducts.put(context.member.id, {
        name,
        yieldFactor: answer.value.yieldFactor,
        at: new Date(context.now).toISOString(),
      });
    return answerReply(answer, context, {
      title: `What “${name}” gives`,
      headline: ({ yieldFactor }) =>
        `${showEstimate(yieldFactor, "g of salt per g of mix", { significant: 3 })}`,
      body: ({ deliveredKg }) => [
        `Of ${showSalt(input.used.estimate, input.volume.typedUnit)} put in, ${showSalt(deliveredKg, input.volume.typedUnit)} was salt; the rest is water bound in the crystals and damp.`,
        `Taken as ${kind === "water" ? "fresh water measured before the salt went in" : "the finished salt water"}. /salt mix uses this figure from now on.`,
      ],
      taken: temperature.taken,
    });
  },
});
