import { defineFamily } from "../../src/kit/index.ts";
import effect from "./effect.ts";
import match from "./match.ts";
import plan from "./plan.ts";
import routine from "./routine.ts";

export default defineFamily({
  name: "change",
  summary: "Water changes: what they do, how many it takes, where a routine settles",
  subcommands: [effect, plan, routine, match],
});
