import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import gone from "./gone.ts";
import list from "./list.ts";
import pair from "./pair.ts";

export default defineFamily({
  name: "brood",
  summary: "Broodstock: animals, their parents, pairs and groups",
  subcommands: [add, pair, list, gone],
});
