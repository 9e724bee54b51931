import { defineFamily } from "../../src/kit/index.ts";
import binder from "./binder.ts";
import check from "./check.ts";
import retest from "./retest.ts";

export default defineFamily({
  name: "ammonia",
  summary: "How harmful an ammonia reading is, and what brings it down",
  subcommands: [check, binder, retest],
});
