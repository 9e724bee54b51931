import { isRead } from "../../src/core/quantity/read.ts";
import { defineCommand, optional, type Reply, tankOption } from "../../src/kit/index.ts";
import { PLANT_READERS, readPlant } from "../../src/kit/plant-notes.ts";
import { PLANT_NOTES } from "../../src/records/tank.ts";
import { ownTank } from "../tank/shared.ts";

export default defineCommand({
  name: "show",
  summary: "All that is noted of a tank's plant, and what is still missing",
  options: { tank: optional(tankOption()) },
  examples: ["/plant show", "/plant show tank:Lagoon"],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const noted = PLANT_NOTES.flatMap((key) => {
      const text = tank.plant[key];
      if (text === undefined) return [];
      const read = readPlant(key, text, context.member.habits);
      return [[PLANT_READERS[key].name, isRead(read) ? read.readAs : text]];
    });
    const missing = PLANT_NOTES.filter((key) => tank.plant[key] === undefined).map(
      (key) => PLANT_READERS[key].name,
    );
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name}: its plant`,
      body:
        missing.length === 0
          ? ["All of it is noted."]
          : [`Not noted: ${missing.join(", ")}.`, "/plant water, /plant room and /plant people take them."],
      ...(noted.length === 0 ? {} : { table: { columns: ["what", "as noted"], rows: noted } }),
      cautions: [],
      audience: context.audience,
    };
  },
});
