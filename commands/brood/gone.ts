import { writeFacts } from "../../src/kit/breeding/group.ts";
import { animalOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "gone",
  summary: "Note that a breeder died or left; it stays in the pedigree",
  options: { animal: animalOption("Which one"), why: choice("What became of it", ["died", "left"]) },
  examples: ["/brood gone animal:Argos why:died"],
  run({ animal, why }, context): Reply {
    writeFacts(context, ({ state }) => ({
      facts: [
        { kind: "animal gone", animal: animal.name, why },
        ...Object.values(state.pairs)
          .filter(({ animals, isParted }) => !isParted && animals.includes(animal.name))
          .map(({ name }) => ({ kind: "pair parted", pair: name }) as const),
      ],
      result: undefined,
    }));
    return told(context, `${animal.name} ${why}`, [
      "It stays in the pedigree of its young; its pair is parted.",
    ]);
  },
});
