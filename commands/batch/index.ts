import { defineFamily } from "../../src/kit/index.ts";
import count from "./count.ts";
import deaths from "./deaths.ts";
import list from "./list.ts";
import loss from "./loss.ts";
import merge from "./merge.ts";
import move from "./move.ts";
import show from "./show.ts";
import split from "./split.ts";
import stage from "./stage.ts";
import weigh from "./weigh.ts";

export default defineFamily({
  name: "batch",
  summary: "Batches of young: counts, deaths, moves, growth and survival",
  subcommands: [count, deaths, loss, stage, move, split, merge, weigh, show, list],
});
