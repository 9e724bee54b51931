import { asNumber, showExact } from "../../src/core/breeding/fraction.ts";
import { pairCheck } from "../../src/core/breeding/pair-check.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { animalOption, nameOption, placeOption } from "../../src/kit/breeding/options.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "pair",
  summary: "Note a pair and the tank it lives in",
  options: {
    name: nameOption("What the group calls the pair", "pair 1"),
    first: animalOption("One of the two"),
    second: animalOption("The other one"),
    tank: placeOption("Where they live"),
  },
  examples: ["/brood pair name:pair 1 first:Nemea second:Argos tank:tank 1"],
  run({ name, first, second, tank }, context): Reply {
    const check = pairCheck(first, second, Object.values(groupOf(context).state.animals));
    writeFacts(context, () => ({
      facts: [{ kind: "pair formed", pair: name, animals: [first.name, second.name], tank: tank.name }],
      result: undefined,
    }));
    return told(
      context,
      `${name}: ${first.name} and ${second.name}`,
      check.kind === "answer"
        ? [
            `Inbreeding of their young: ${check.value.isAtLeast ? "at least " : ""}${showExact(check.value.inbreeding)} (${percentText(asNumber(check.value.inbreeding), 1)}).`,
          ]
        : [],
      { cautions: check.cautions },
    );
  },
});
