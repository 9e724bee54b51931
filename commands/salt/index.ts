import { defineFamily } from "../../src/kit/index.ts";
import adjust from "./adjust.ts";
import calibrate from "./calibrate.ts";
import convert from "./convert.ts";
import mix from "./mix.ts";
import topOff from "./top-off.ts";

export default defineFamily({
  name: "salt",
  summary: "Salt water: mixing, raising, lowering, topping off, converting",
  subcommands: [mix, calibrate, adjust, topOff, convert],
});
