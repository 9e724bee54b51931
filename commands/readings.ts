import { PARAMETERS, parameterNamed } from "../src/core/log/parameters.ts";
import {
  defineCommand,
  listed,
  optional,
  quantity,
  quoted,
  type Reply,
  reading,
  tankInMind,
  tankOption,
  UserError,
} from "../src/kit/index.ts";
import { sayWhen } from "../src/kit/when-option.ts";
import type { LogLine } from "../src/records/log.ts";

/** The most that one reply shows. */
const MOST = 50;
const USUAL = 15;

const parameterOption = reading(
  "Only this, e.g. nitrate or no3",
  "nitrate",
  (text) => {
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
  },
  (typed) => PARAMETERS.map(({ name }) => name).filter((name) => name.startsWith(typed.toLowerCase())),
);

export default defineCommand({
  name: "readings",
  summary: "The latest readings and events of a tank",
  options: {
    of: optional(parameterOption),
    count: optional(quantity.count("How many, up to 50", "15")),
    tank: optional(tankOption()),
  },
  examples: ["/readings", "/readings of:nitrate count:20 tank:Lagoon"],
  run(input, context): Reply {
    const tank = tankInMind(input.tank, undefined, context);
    if (tank === undefined)
      throw new UserError("not-found", "You keep no tank here yet. Describe one with /tank add.");
    const count = Math.min(MOST, Math.max(1, input.count?.best ?? USUAL));
    const lines = context.records.log.recent(tank.owner, tank.id, count, input.of?.id);
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name}: ${input.of?.name ?? "record"}`,
      body: lines.length === 0 ? ["Nothing is logged yet. Try /log no3 20, temp 25.5"] : [],
      ...(lines.length === 0
        ? {}
        : {
            table: {
              columns: ["no.", "when", "what", "with"],
              rows: lines.map((line) => rowOf(line, context.member, context.now)),
            },
          }),
      cautions: [],
      audience: context.audience,
    };
  },
});

function rowOf(line: LogLine, member: Parameters<typeof sayWhen>[1], now: number): readonly string[] {
  if (line.kind === "event") return ["", sayWhen(line.event.at, member, now), line.event.readAs, ""];
  const { id, at, readAs, instrument } = line.reading;
  return [String(id), sayWhen(at, member, now), readAs, instrument ?? ""];
}
