import { PARAMETERS, type Parameter, parameterNamed } from "../core/log/parameters.ts";
import { type Option, reading } from "./option.ts";
import { listed, quoted } from "./text.ts";

/** Something that is tested in water, by any of its names. */
export function parameterOption(
  description = "What it is about, e.g. nitrate or no3",
): Option<Parameter, true> {
  const names = PARAMETERS.map(({ name }) => name);
  return reading(
    description,
    "nitrate",
    (text) => {
      const found = parameterNamed(text);
      return found === undefined
        ? {
            kind: "unreadable",
            message: `${quoted(text)} is nothing I keep readings of. Try ${listed(names, "or")}.`,
          }
        : { kind: "read", value: found, readAs: found.name };
    },
    (typed) => names.filter((name) => name.toLowerCase().startsWith(typed.toLowerCase())),
  );
}
