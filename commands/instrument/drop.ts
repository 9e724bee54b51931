import { defineCommand, type Reply, UserError, words } from "../../src/kit/index.ts";

export default defineCommand({
  name: "drop",
  summary: "Forget a test kit or meter; its readings stay",
  options: { name: words("What you call it", "nitrate chart", 40) },
  examples: ["/instrument drop name:nitrate chart"],
  run({ name }, { records, member, audience }): Reply {
    if (!records.instruments.drop(member.id, name))
      throw new UserError(
        "not-found",
        `You have no instrument called “${name}”. /instrument list shows yours.`,
      );
    return {
      kind: "reply",
      ok: true,
      title: `${name}: forgotten`,
      body: ["Readings made with it stay."],
      cautions: [],
      audience,
    };
  },
});
