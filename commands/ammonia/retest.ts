import { type AmmoniaTest, ammoniaAfterBinder } from "../../src/core/dosing/ammonia-binder.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { answerReply, choice, defineCommand, quantity } from "../../src/kit/index.ts";

const TESTS = ["salicylate", "Nessler", "gas membrane"] as const satisfies AmmoniaTest[];

const SAID = {
  "not interpretable": "That reading means nothing",
  doubtful: "That reading is doubtful",
  interpretable: "That reading can be believed",
} as const;

export default defineCommand({
  name: "retest",
  summary: "Whether an ammonia reading can be believed after a binder went in",
  options: {
    since: quantity.span("How long ago the binder went in", "20 h"),
    test: choice(
      "How the test works: green or blue (salicylate), yellow (Nessler), or a gas membrane",
      TESTS,
    ),
  },
  examples: ["/ammonia retest since:20 h test:salicylate"],
  audience: "channel",
  run({ since, test }, context) {
    return answerReply(ammoniaAfterBinder({ hoursSince: since.estimate.best, test }), context, {
      title: "An ammonia test after a binder",
      headline: ({ verdict }) => SAID[verdict],
      body: ({ waitHours }) =>
        waitHours === 0
          ? ["Test as usual."]
          : [
              `Wait ${showNumber(waitHours, 2)} h more, then test again. Until then watch the animals, not the number.`,
            ],
    });
  },
});
