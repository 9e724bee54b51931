import { sayGravityScale } from "../../src/kit/gravity-scales.ts";
import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "list",
  summary: "Your test kits and meters",
  options: {},
  examples: ["/instrument list"],
  run(_, { records, member, audience }): Reply {
    const own = records.instruments.of(member.id);
    return {
      kind: "reply",
      ok: true,
      title: own.length === 0 ? "No instruments yet" : counted(own.length, "instrument"),
      body: own.length === 0 ? ["Tell the bot of one with /instrument add."] : [],
      ...(own.length === 0
        ? {}
        : {
            table: {
              columns: ["name", "measures", "steps", "plus or minus", "scale"],
              rows: own.map(({ name, parameter, steps, error, gravity }) => [
                name,
                parameter,
                steps.join(" "),
                error === undefined ? "" : String(error),
                gravity === undefined ? "" : sayGravityScale(gravity),
              ]),
            },
          }),
      cautions: [],
      audience,
    };
  },
});
