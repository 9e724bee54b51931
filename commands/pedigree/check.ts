import { asNumber, showExact } from "../../src/core/breeding/fraction.ts";
import { type PairCheck, pairCheck } from "../../src/core/breeding/pair-check.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { animalOption } from "../../src/kit/breeding/options.ts";
import { percentText } from "../../src/kit/breeding/say.ts";
import { answerReply, capitalised, defineCommand, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "check",
  summary: "May I pair these two? The inbreeding of their young, and a less related choice",
  options: { first: animalOption("One of the two"), second: animalOption("The other one") },
  examples: ["/pedigree check first:Nemea second:Argos"],
  run({ first, second }, context): Reply {
    if (first.name === second.name) throw new UserError("bad-input", "Two different animals are needed.");
    if (first.species.toLowerCase() !== second.species.toLowerCase())
      throw new UserError(
        "bad-input",
        `${first.name} is ${first.species}, ${second.name} is ${second.species}: hybrids are not reckoned here.`,
      );
    const { animals } = groupOf(context).state;
    return answerReply<PairCheck>(pairCheck(first, second, Object.values(animals)), context, {
      title: `${first.name} and ${second.name}`,
      headline: ({ inbreeding, isAtLeast }) =>
        `Inbreeding of their young: ${isAtLeast ? "at least " : ""}${showExact(inbreeding)} (${percentText(asNumber(inbreeding), 1)})`,
      body: ({ better, closeness }) => [
        ...(closeness === undefined ? ["No close kinship is known."] : [`${capitalised(closeness)}.`]),
        better.length === 0
          ? `Nobody noted is less related to ${first.name}.`
          : `Less related to ${first.name}: ${better.map(({ name, inbreeding }) => `${name} (${showExact(inbreeding)})`).join(", ")}.`,
      ],
    });
  },
});
