import { defineFamily } from "../../src/kit/index.ts";
import check from "./check.ts";

export default defineFamily({
  name: "skimmate",
  summary: "The skimmer's container: when it runs over, and what it takes along",
  subcommands: [check],
});
