import { type Fact, ORIGINS, SEXES } from "../../src/core/breeding/ledger/facts.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { animalsPedigree } from "../../src/core/breeding/pair-check.ts";
import { writeFacts } from "../../src/kit/breeding/group.ts";
import { nameOption, personOption, placeOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import {
  choice,
  defineCommand,
  listed,
  optional,
  type Reply,
  reading,
  UserError,
} from "../../src/kit/index.ts";

/** Names separated by commas: every male that may be the sire. */
const siresOption = reading("The father; of a group spawn, all that may be, with commas", "Argos", (text) => {
  const names = text
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  return names.length >= 1 && names.length <= 12 && names.every((name) => [...name].length <= 40)
    ? { kind: "read", value: names, readAs: listed(names, "or") }
    : {
        kind: "unreadable",
        message: "One to twelve names, with commas between. Try “Argos” or “Argos, Milo”.",
      };
});

export default defineCommand({
  name: "add",
  summary: "Note a broodfish or other breeder, with its parents if they are known",
  options: {
    name: nameOption("What the group calls it", "Nemea"),
    species: nameOption("Its species, in your words", "clownfish"),
    sex: optional(choice("Unknown if left out; noting it anew changes it", SEXES)),
    sire: optional(siresOption),
    dam: optional(nameOption("The mother", "Thalia")),
    origin: optional(choice("Where it comes from; unknown if left out", ORIGINS)),
    tank: optional(placeOption("Where it lives")),
    owner: optional(personOption("Whose it is; yours if left out")),
  },
  examples: ["/brood add name:Nemea species:clownfish sex:female origin:traded tank:tank 1"],
  run(input, context): Reply {
    const isNew = writeFacts(context, ({ state, me }) => {
      const known = state.animals[keyOf(input.name)];
      const parents = [...(input.sire ?? []), ...(input.dam === undefined ? [] : [input.dam])];
      const missing = parents.find((parent) => state.animals[keyOf(parent)] === undefined);
      if (missing !== undefined)
        throw new UserError(
          "not-found",
          `There is no animal “${missing}” here. Note the parents first; leave out one that is not known.`,
        );
      const dam = input.dam ?? known?.dam;
      const tank = input.tank?.name ?? known?.tank;
      const fact: Extract<Fact, { kind: "animal noted" }> = {
        kind: "animal noted",
        animal: input.name,
        species: input.species,
        sex: input.sex ?? known?.sex ?? "unknown",
        sires: [...(input.sire ?? known?.sires ?? [])],
        ...(dam === undefined ? {} : { dam }),
        origin: input.origin ?? known?.origin ?? (parents.length > 0 ? "bred" : "unknown"),
        ...(tank === undefined ? {} : { tank }),
        owner: input.owner ?? known?.owner ?? me.number,
      };
      const { animal: name, kind: _, ...rest } = fact;
      const animals = [
        ...Object.values(state.animals).filter((each) => keyOf(each.name) !== keyOf(name)),
        { name, ...rest },
      ];
      if (animalsPedigree(animals) === undefined)
        throw new UserError("bad-input", `${name} would be its own ancestor: check sire and dam.`);
      return { facts: [fact], result: known === undefined };
    });
    return told(context, `${input.name} ${isNew ? "noted" : "noted anew"}`, [
      `${input.species}${input.sex === undefined ? "" : `, ${input.sex}`}. /pedigree show draws its family, /brood pair makes a pair.`,
    ]);
  },
});
