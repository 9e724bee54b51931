import { defineFamily } from "../../src/kit/index.ts";
import eggs from "./eggs.ts";
import hatched from "./hatched.ts";
import list from "./list.ts";

export default defineFamily({
  name: "spawn",
  summary: "Spawns: eggs seen, the window in which they hatch, and what hatched",
  subcommands: [eggs, hatched, list],
});
