import { secondHandContainer } from "../../src/core/plant/second-hand-container.ts";
import { answerReply, defineCommand } from "../../src/kit/index.ts";
import { CONTAINER_ADVICE_WORDS } from "../../src/kit/plant-words.ts";

export default defineCommand({
  name: "second-hand",
  summary: "What to look at and how to leak-test a used tank or container; it is never judged here",
  options: {},
  examples: ["/vessel second-hand"],
  audience: "channel",
  run(_, context) {
    return answerReply(secondHandContainer(), context, {
      title: "A used tank or container",
      headline: () => "Not judged from here: look, then leak-test",
      body: ({ advice }) => advice.map((step, index) => `${index + 1}. ${CONTAINER_ADVICE_WORDS[step]()}`),
    });
  },
});
