import { defineFamily } from "../../src/kit/index.ts";
import dose from "./dose.ts";

export default defineFamily({
  name: "uv",
  summary: "Ultraviolet units: the dose they give, and what it is good for",
  subcommands: [dose],
});
