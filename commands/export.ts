import { recordAsCsv, recordAsJson } from "../src/interchange/write-record.ts";
import { choice, counted, defineCommand, optional, type Reply, tankOption } from "../src/kit/index.ts";
import { ownTank } from "./tank/shared.ts";

export default defineCommand({
  name: "export",
  summary: "Take a tank's whole record with you, as CSV or JSON",
  options: {
    as: optional(choice("A table for a spreadsheet, or data", ["csv", "json"])),
    tank: optional(tankOption()),
  },
  examples: ["/export", "/export as:json tank:Lagoon"],
  isSlow: true,
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const record = { tank: tank.name, ...context.records.log.everything(context.member.id, tank.id) };
    const isJson = input.as === "json";
    const day = new Date(context.now).toISOString().slice(0, 10);
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name}: the whole record`,
      headline: `${counted(record.readings.length, "reading")}, ${counted(record.events.length, "event")}`,
      body: ["Times are UTC; beside each value stands what was typed."],
      files: [
        {
          name: `record-${day}.${isJson ? "json" : "csv"}`,
          mediaType: isJson ? "application/json" : "text/csv",
          content: isJson ? recordAsJson(record) : recordAsCsv(record),
          encoding: "utf8",
          altText: `Every reading and event of the tank, ${isJson ? "as data" : "as a table"}`,
        },
      ],
      cautions: [],
      audience: context.audience,
    };
  },
});
