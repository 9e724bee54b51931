import { defineFamily } from "../../src/kit/index.ts";
import alcohol from "./alcohol.ts";
import dilute from "./dilute.ts";
import pump from "./pump.ts";
import raise from "./raise.ts";
import together from "./together.ts";
import vet from "./vet.ts";

export default defineFamily({
  name: "dose",
  summary: "Dilutions, doses for a whole system, dosing pumps, and what must never meet",
  subcommands: [dilute, raise, pump, alcohol, together, vet],
});
