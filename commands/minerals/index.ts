import { defineFamily } from "../../src/kit/index.ts";
import co2 from "./co2.ts";
import feeding from "./feeding.ts";
import raise from "./raise.ts";

export default defineFamily({
  name: "minerals",
  summary: "Alkalinity, calcium and magnesium, and the carbon dioxide behind the pH",
  subcommands: [raise, co2, feeding],
});
