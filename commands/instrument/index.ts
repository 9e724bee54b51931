import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import drop from "./drop.ts";
import list from "./list.ts";

export default defineFamily({
  name: "instrument",
  summary: "Your test kits and meters, with their steps and scales",
  subcommands: [add, list, drop],
});
