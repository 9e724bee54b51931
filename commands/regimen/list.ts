import { REGIMENS } from "../../src/core/plans/regimens.ts";
import { SOURCES } from "../../src/core/sources.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";
import { plainReply } from "../plan/shared.ts";
import { standing } from "./shared.ts";

/** Over ones shown beside those running. */
const MOST_OVER = 5;

export default defineCommand({
  name: "list",
  summary: "The regimens there are, and those you run",
  options: {},
  examples: ["/regimen list"],
  run(_, context): Reply {
    const { records, member } = context;
    const tanks = records.tanks.own(member.id);
    const all = records.plans.regimens(member.id);
    const own = [
      ...all.filter(({ state }) => state !== "over"),
      ...all.filter(({ state }) => state === "over").slice(0, MOST_OVER),
    ].flatMap((regimen) => {
      const tank = tanks.find(({ id }) => id === regimen.tankId);
      return tank === undefined
        ? []
        : [[String(regimen.id), regimen.pattern, tank.name, standing(regimen, tank, context)]];
    });
    return plainReply(
      "Regimens",
      [
        ...REGIMENS.map(({ id, about, source }) => `${id}: ${about} (${SOURCES[source].standing}).`),
        "Begin one with /regimen start pattern:water changes",
      ],
      context,
      own.length === 0 ? {} : { table: { columns: ["no.", "yours", "tank", "how it stands"], rows: own } },
    );
  },
});
