import { defineFamily } from "../../src/kit/index.ts";
import load from "./load.ts";
import oneMore from "./one-more.ts";

export default defineFamily({
  name: "stocking",
  summary: "What animals and their food ask of a system",
  subcommands: [load, oneMore],
});
