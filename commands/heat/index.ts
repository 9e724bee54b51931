import { defineFamily } from "../../src/kit/index.ts";
import change from "./change.ts";
import duty from "./duty.ts";
import topoff from "./topoff.ts";

export default defineFamily({
  name: "heat",
  summary: "Warmth and evaporation: heater, chiller, top-off a day, and what a failed top-off does",
  subcommands: [duty, topoff, change],
});
