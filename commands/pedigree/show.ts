import { familyOf } from "../../src/core/breeding/family.ts";
import { asNumber, showExact } from "../../src/core/breeding/fraction.ts";
import { groupOf } from "../../src/kit/breeding/group.ts";
import { animalOption } from "../../src/kit/breeding/options.ts";
import { pedigreeSpec } from "../../src/kit/breeding/pedigree-spec.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply, UserError } from "../../src/kit/index.ts";
import { sayRefusal } from "../../src/wording/index.ts";

export default defineCommand({
  name: "show",
  summary: "The family tree of one animal as a picture, with its own inbreeding",
  options: { animal: animalOption("Which animal") },
  examples: ["/pedigree show animal:Nemea"],
  run({ animal }, context): Reply {
    const found = familyOf(animal, Object.values(groupOf(context).state.animals));
    if (found.kind === "no-answer") throw new UserError("not-now", sayRefusal(found.reason));
    const { inbreeding, isAtLeast, meanKinship, generations } = found.value;
    return told(
      context,
      `${animal.name}: ${animal.species}, ${animal.sex}, ${animal.origin}`,
      [
        `Inbreeding ${isAtLeast ? "at least " : ""}${showExact(inbreeding)} (${percentText(asNumber(inbreeding), 1)}); mean kinship with the living stock ${percentText(asNumber(meanKinship), 1)}: the lower, the more it is worth for breeding.`,
        ...generations.slice(1, 3).map((names) => names.map((name) => name ?? "?").join(", ")),
      ],
      { picture: pedigreeSpec(animal, found.value), cautions: found.cautions },
    );
  },
});
