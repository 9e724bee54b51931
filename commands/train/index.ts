import { defineFamily } from "../../src/kit/index.ts";
import balance from "./balance.ts";
import check from "./check.ts";

export default defineFamily({
  name: "train",
  summary: "A filter container by container, and the system's nitrogen balance sheet",
  subcommands: [check, balance],
});
