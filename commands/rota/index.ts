import { defineFamily } from "../../src/kit/index.ts";
import away from "./away.ts";
import cannot from "./cannot.ts";
import done from "./done.ts";
import hatch from "./hatch.ts";
import plan from "./plan.ts";
import take from "./take.ts";
import tonight from "./tonight.ts";
import week from "./week.ts";

export default defineFamily({
  name: "rota",
  summary: "Duties: a fair rota, absences, swaps, and tonight's card",
  subcommands: [tonight, week, plan, hatch, away, cannot, take, done],
});
