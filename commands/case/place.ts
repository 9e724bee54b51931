import { defineCommand, quoted, type Reply, UserError, words } from "../../src/kit/index.ts";

export default defineCommand({
  name: "place",
  summary: "For stewards: the channel or forum in which help threads are opened",
  options: {
    channel: words("The channel or forum, e.g. #help; “here” for wherever it is asked", "#help", 60),
  },
  examples: ["/case place channel:here"],
  run({ channel }, { request, records, audience }): Reply {
    if (request.club === undefined || !request.isSteward)
      throw new UserError("not-now", "Only those who look after the club's server can set this, and there.");
    const isHere = /^here$/i.test(channel);
    const id = /^(?:<#)?(\d{5,20})>?$/.exec(channel)?.[1];
    if (!isHere && id === undefined)
      throw new UserError(
        "bad-input",
        `${quoted(channel)} is no channel I can find. Mention it, e.g. #help, or say “here”.`,
      );
    records.help.setHome(request.club, id);
    return {
      kind: "reply",
      ok: true,
      title: "Set",
      body: [
        isHere
          ? "Help threads are opened wherever somebody asks."
          : "Help threads are opened in that channel from now on. Where that is not allowed to me, I answer where I was asked.",
      ],
      cautions: [],
      audience,
    };
  },
});
