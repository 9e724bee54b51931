import { defineFamily } from "../../src/kit/index.ts";
import curve from "./curve.ts";
import dose from "./dose.ts";
import ready from "./ready.ts";

export default defineFamily({
  name: "cycle",
  summary: "Growing in a new filter without animals, and knowing when it is ready",
  subcommands: [dose, curve, ready],
});
