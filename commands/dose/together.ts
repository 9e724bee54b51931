import { mixingHazard } from "../../src/core/dosing/hazards.ts";
import { answerReply, defineCommand, listed, words } from "../../src/kit/index.ts";

export default defineCommand({
  name: "together",
  summary: "Whether two substances may ever meet",
  options: {
    first: words("One substance", "bleach", 80),
    second: words("The other", "vinegar", 80),
  },
  examples: ["/dose together first:bleach second:vinegar"],
  audience: "channel",
  run({ first, second }, context) {
    return answerReply(mixingHazard(first, second), context, {
      title: `${first} and ${second}`,
      headline: () => "No danger on my list, which is short",
      body: ({ a, b }) =>
        [a, b].map(({ name, classes }) =>
          classes.length === 0
            ? `${name}: not recognised. That does not make it safe: read its safety sheet.`
            : `${name}: ${listed(classes)}.`,
        ),
    });
  },
});
