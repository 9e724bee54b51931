import { defineFamily } from "../../src/kit/index.ts";
import harvest from "./harvest.ts";
import need from "./need.ts";

export default defineFamily({
  name: "algae",
  summary: "Nitrogen that leaves with harvested algae",
  subcommands: [harvest, need],
});
