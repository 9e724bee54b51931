import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { cultureOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "end",
  summary: "Note that a culture crashed or was given up, and see who keeps its back-up",
  options: { culture: cultureOption(), why: choice("What happened", ["crashed", "ended"]) },
  examples: ["/culture end culture:rotifers A why:crashed"],
  run({ culture, why }, context): Reply {
    writeFacts(context, () => ({
      facts: [{ kind: "culture ended", culture: culture.name, why }],
      result: undefined,
    }));
    const group = groupOf(context);
    const left = Object.values(group.state.cultures).filter(
      (each) =>
        each.organism === culture.organism &&
        each.ended === undefined &&
        keyOf(each.name) !== keyOf(culture.name),
    );
    return told(context, `${culture.name} ${why}`, [
      left.length === 0
        ? `No other ${culture.organism} culture runs: ask the club for a start tonight.`
        : `Back-up: ${left.map((each) => `${each.name} at ${each.place}, kept by ${nameOf(group, each.keeper)}`).join("; ")}.`,
      "A new one begins in a clean vessel: /culture start.",
    ]);
  },
});
