import { defineFamily } from "../../src/kit/index.ts";
import emergency from "./emergency.ts";
import system from "./system.ts";

export default defineFamily({
  name: "sheet",
  summary: "One page of a whole system, and one to hang up for emergencies",
  subcommands: [system, emergency],
});
