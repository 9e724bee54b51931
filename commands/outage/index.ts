import { defineFamily } from "../../src/kit/index.ts";
import battery from "./battery.ts";
import plan from "./plan.ts";

export default defineFamily({
  name: "outage",
  summary: "Power cuts: how long oxygen and warmth last, what to do first, how long a battery runs",
  subcommands: [plan, battery],
});
