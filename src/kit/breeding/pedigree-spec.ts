import type { Family } from "../../core/breeding/family.ts";
import { asNumber } from "../../core/breeding/fraction.ts";
import type { Animal } from "../../core/breeding/ledger/state.ts";
import type { PedigreeSpec } from "../system-spec.ts";
import { percentText } from "./say.ts";

const WHO = ["", "father", "mother"];

export function pedigreeSpec(animal: Animal, family: Family): PedigreeSpec {
  const { generations, repeated, inbreeding } = family;
  return {
    kind: "pedigree",
    altText: `${animal.name}, of ${(generations[1] ?? []).map((name) => name ?? "unknown").join(" and ") || "unknown parents"}; inbreeding ${percentText(asNumber(inbreeding), 1)}.`,
    generations: generations.map((names, generation) =>
      names.map((name, index) =>
        name === undefined
          ? undefined
          : {
              name,
              note:
                generation === 0
                  ? `inbreeding ${percentText(asNumber(inbreeding), 1)}`
                  : `${WHO[1 + (index % 2)]}${repeated.has(name) ? ", more than once" : ""}`,
              isRepeated: repeated.has(name),
            },
      ),
    ),
  };
}
