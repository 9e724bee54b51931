import { defineFamily } from "../../src/kit/index.ts";
import check from "./check.ts";
import show from "./show.ts";

export default defineFamily({
  name: "pedigree",
  summary: "Family trees: may I pair these two, and where does one come from",
  subcommands: [check, show],
});
