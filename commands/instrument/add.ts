import { PARAMETERS, parameterNamed } from "../../src/core/log/parameters.ts";
import { readPlainNumber } from "../../src/core/quantity/plain-number.ts";
import type { Read } from "../../src/core/quantity/read.ts";
import { GRAVITY_SCALE_NAMES, GRAVITY_SCALES } from "../../src/kit/gravity-scales.ts";
import {
  choice,
  defineCommand,
  listed,
  optional,
  quantity,
  quoted,
  type Reply,
  reading,
  words,
} from "../../src/kit/index.ts";

/** A colour chart has two steps at least, and no more than a card holds. */
const MOST_STEPS = 40;

const steps = reading(
  "The steps of its colour chart, e.g. 0 5 10 20 40 80",
  "0 5 10 20 40 80",
  (text, { habits }): Read<readonly number[]> => {
    const pieces = text.split(/[\s;/]+|,(?=\s)/).filter(Boolean);
    const values: number[] = [];
    for (const piece of pieces.slice(0, MOST_STEPS + 1)) {
      const read = readPlainNumber(piece, habits);
      if (read.kind !== "read")
        return {
          kind: "unreadable",
          message: `${quoted(piece)} is not a step of a chart. Try “0 5 10 20 40 80”.`,
        };
      values.push(read.value.estimate.best);
    }
    const isRising = values.every((value, at) => at === 0 || value > (values[at - 1] ?? value));
    if (values.length < 2 || values.length > MOST_STEPS || !isRising)
      return {
        kind: "unreadable",
        message: `${quoted(text)} is not a rising row of at least two steps. Try “0 5 10 20 40 80”.`,
      };
    return { kind: "read", value: values, readAs: values.join(", ") };
  },
);

const parameter = reading("What it measures, e.g. nitrate", "nitrate", (text) => {
  const found = parameterNamed(text);
  return found === undefined
    ? {
        kind: "unreadable",
        message: `${quoted(text)} is nothing I keep readings of. Try ${listed(
          PARAMETERS.map(({ name }) => name),
          "or",
        )}.`,
      }
    : { kind: "read", value: found, readAs: found.name };
});

export default defineCommand({
  name: "add",
  summary: "Tell the bot of a test kit or meter of yours, with its steps or scale",
  options: {
    name: words("What you call it (the kind, not the brand)", "nitrate chart", 40),
    for: parameter,
    steps: optional(steps),
    error: optional(quantity.plainNumber("Plus or minus, in the unit it shows", "0.2")),
    scale: optional(choice("For specific gravity: its two temperatures", GRAVITY_SCALE_NAMES)),
  },
  examples: [
    "/instrument add name:nitrate chart for:nitrate steps:0 5 10 20 40 80",
    "/instrument add name:glass hydrometer for:salinity scale:25/25 °C",
  ],
  run(input, context): Reply {
    const { name, scale } = input;
    context.records.instruments.put(context.member.id, {
      name,
      parameter: input.for.id,
      steps: input.steps ?? [],
      ...(input.error === undefined || input.error.best <= 0 ? {} : { error: input.error.best }),
      ...(scale === undefined ? {} : { gravity: GRAVITY_SCALES[scale] }),
    });
    return {
      kind: "reply",
      ok: true,
      title: `${name}: kept`,
      body: [
        `It measures ${input.for.name}${input.steps === undefined ? "" : ` in steps of ${input.steps.join(", ")}`}${scale === undefined ? "" : ` on the ${scale} scale`}.`,
        `Readings of ${input.for.name} are taken to come from it while it is your only one for that; otherwise say with:${name} when you log.`,
      ],
      cautions: [],
      audience: context.audience,
    };
  },
});
