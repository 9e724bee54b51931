import { groupOf, nameOf } from "../../src/kit/breeding/group.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "list",
  summary: "The broodstock and its pairs",
  options: {},
  examples: ["/brood list"],
  run(_, context): Reply {
    const group = groupOf(context);
    const pairs = Object.values(group.state.pairs).filter(({ isParted }) => !isParted);
    const animals = Object.values(group.state.animals).filter(({ gone }) => gone === undefined);
    return told(
      context,
      `${group.state.name}: broodstock`,
      [
        animals.length === 0 ? "No breeder is noted yet: /brood add." : "",
        ...pairs.map(({ name, animals: two, tank }) => `${name}: ${two.join(" and ")} in ${tank}.`),
      ].filter((line) => line !== ""),
      {
        table: {
          columns: ["name", "species", "sex", "sire", "dam", "origin", "owner"],
          rows: animals.map(({ name, species, sex, sires, dam, origin, owner }) => [
            name,
            species,
            sex,
            sires.join(" or ") || "?",
            dam ?? "?",
            origin,
            nameOf(group, owner),
          ]),
        },
      },
    );
  },
});
