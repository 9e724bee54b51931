import { defineFamily } from "../../src/kit/index.ts";
import check from "./check.ts";

export default defineFamily({
  name: "flood",
  summary: "Where water could end on the floor: pump off, blocked drain, stuck top-off, one failure",
  subcommands: [check],
});
