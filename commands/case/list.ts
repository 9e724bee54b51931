import { counted, defineCommand, type Reply } from "../../src/kit/index.ts";
import { sayWhen } from "../../src/kit/when-option.ts";
import { cardReply, viewerOf } from "./shared.ts";

export default defineCommand({
  name: "list",
  summary: "Help cases of yours and of this club, urgent ones marked",
  options: {},
  examples: ["/case list"],
  run(_, context): Reply {
    const cases = context.records.help.visible(viewerOf(context));
    const open = cases.filter(({ state }) => state === "open");
    return {
      kind: "reply",
      ok: true,
      title: open.length === 0 ? "No help case is open" : `${counted(open.length, "open help case")}`,
      body: cases.length === 0 ? ["/case open starts one."] : [],
      ...(cases.length === 0
        ? {}
        : {
            table: {
              columns: ["case", "opened", "state", "answered", "helper"],
              rows: cases.map((each) => [
                String(each.id),
                sayWhen(each.openedAt, context.member, context.now),
                each.state === "closed"
                  ? "closed"
                  : cardReply(each, context, { remark: "" }).helpCase?.isUrgent === true
                    ? "URGENT"
                    : "open",
                each.answeredAt === undefined ? "not yet" : "yes",
                each.helper?.name ?? (each.helper === undefined ? "" : "named"),
              ]),
            },
          }),
      cautions: [],
      leavesNoTrace: true,
      audience: context.audience,
    };
  },
});
