import { isKnownSubstance, mixingHazard } from "../../src/core/dosing/hazards.ts";
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
      headline: ({ a, b }) => {
        const unknown = [a, b].filter(({ name }) => !isKnownSubstance(name));
        return unknown.length === 0
          ? "No danger on my list, which is short"
          : `No verdict: I do not know ${listed(
              unknown.map(({ name }) => name),
              "or",
            )}`;
      },
      body: ({ a, b }) =>
        [a, b].map(({ name, classes }) =>
          classes.length === 0
            ? `${name}: not on my list. That does not make it safe: read its safety sheet.`
            : `${name}: ${listed(classes)}.`,
        ),
    });
  },
});
