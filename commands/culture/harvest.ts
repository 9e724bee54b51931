import { showNumber } from "../../src/core/quantity/show.ts";
import { writeFacts } from "../../src/kit/breeding/group.ts";
import { cultureOption, litresOption } from "../../src/kit/breeding/options.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

export default defineCommand({
  name: "harvest",
  summary: "Note what was taken from a culture, so that its growth is not taken for less than it is",
  options: {
    culture: cultureOption(),
    litres: litresOption("How much of its water was taken", "2.2 L"),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/culture harvest culture:rotifers A litres:2.2 L"],
  run({ culture, litres, when }, context): Reply {
    writeFacts(
      context,
      () => ({
        facts: [{ kind: "culture harvested", culture: culture.name, litres }],
        result: undefined,
      }),
      { at: when },
    );
    return told(context, `${culture.name}: ${showNumber(litres, 3)} L harvested`, [
      `That is ${percentText(litres / culture.litres)} of it. Feed it on today's count, not on yesterday's.`,
    ]);
  },
});
