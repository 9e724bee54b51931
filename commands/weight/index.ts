import { defineFamily } from "../../src/kit/index.ts";
import check from "./check.ts";
import wall from "./wall.ts";

export default defineFamily({
  name: "weight",
  summary: "What a filled tank weighs, and how hard its water pushes: facts for an engineer",
  subcommands: [check, wall],
});
