import { defineFamily } from "../../src/kit/index.ts";
import count from "./count.ts";
import cysts from "./cysts.ts";
import end from "./end.ts";
import feed from "./feed.ts";
import harvest from "./harvest.ts";
import show from "./show.ts";
import start from "./start.ts";
import tin from "./tin.ts";

export default defineFamily({
  name: "culture",
  summary: "Live food: cultures, their growth, tonight's harvest and cysts",
  subcommands: [start, count, harvest, show, feed, cysts, tin, end],
});
