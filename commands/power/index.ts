import { defineFamily } from "../../src/kit/index.ts";
import circuits from "./circuits.ts";
import load from "./load.ts";

export default defineFamily({
  name: "power",
  summary: "Electricity: what it costs, and how devices load the circuits",
  subcommands: [load, circuits],
});
