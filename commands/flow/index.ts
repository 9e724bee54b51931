import { defineFamily } from "../../src/kit/index.ts";
import branches from "./branches.ts";
import drain from "./drain.ts";
import mixing from "./mixing.ts";
import overflow from "./overflow.ts";
import pipe from "./pipe.ts";
import pump from "./pump.ts";
import residence from "./residence.ts";
import siphon from "./siphon.ts";

export default defineFamily({
  name: "flow",
  summary: "Overflow, drains, pipes and pumps: what they carry, and how fast the water turns over",
  subcommands: [overflow, drain, siphon, pipe, pump, branches, residence, mixing],
});
