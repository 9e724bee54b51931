import { defineFamily } from "../../src/kit/index.ts";
import days from "./days.ts";

export default defineFamily({
  name: "purify",
  summary: "Purified water: how long it takes to make, and what goes to the drain",
  subcommands: [days],
});
