import { defineFamily } from "../../src/kit/index.ts";
import budget from "./budget.ts";
import full from "./full.ts";
import reading from "./reading.ts";

export default defineFamily({
  name: "oxygen",
  summary: "Oxygen: what the water holds, what a reading means, how long it lasts",
  subcommands: [full, reading, budget],
});
