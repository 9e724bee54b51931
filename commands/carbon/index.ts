import { defineFamily } from "../../src/kit/index.ts";
import box from "./box.ts";
import doseCheck from "./dose-check.ts";
import need from "./need.ts";
import ramp from "./ramp.ts";

export default defineFamily({
  name: "carbon",
  summary: "Dilute alcohol against nitrate: the start, the need, and the oxygen it costs",
  subcommands: [ramp, doseCheck, need, box],
});
