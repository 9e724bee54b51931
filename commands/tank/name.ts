import { defineCommand, optional, type Reply, tankOption, UserError } from "../../src/kit/index.ts";
import { ownTank, tankName } from "./shared.ts";

export default defineCommand({
  name: "name",
  summary: "Rename a tank, or give it a shorter word to be called by",
  options: {
    to: optional(tankName("Its new name")),
    alias: optional(tankName("One more word for it, e.g. DT")),
    "drop-alias": optional(tankName("A word it shall no longer be called by")),
    tank: optional(tankOption()),
  },
  examples: ["/tank name alias:DT", "/tank name to:Reef flat tank:Lagoon"],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const { tanks } = context.records;
    const owner = context.member.id;
    if (input.to === undefined && input.alias === undefined && input["drop-alias"] === undefined)
      throw new UserError(
        "bad-input",
        "Say to: for a new name, alias: for one more word, or drop-alias: to take one away.",
      );
    if (input["drop-alias"] !== undefined) tanks.removeAlias(owner, tank.id, input["drop-alias"]);
    if (input.to !== undefined) tanks.rename(owner, tank.id, input.to);
    if (input.alias !== undefined) tanks.addAlias(owner, tank.id, input.alias);
    const now = tanks.own(owner).find(({ id }) => id === tank.id) ?? tank;
    return {
      kind: "reply",
      ok: true,
      title: now.name,
      body: [now.aliases.length === 0 ? "It has no other names." : `Also called ${now.aliases.join(", ")}.`],
      cautions: [],
      audience: context.audience,
    };
  },
});
