import { defineFamily } from "../../src/kit/index.ts";
import displaced from "./displaced.ts";
import secondHand from "./second-hand.ts";
import volume from "./volume.ts";

export default defineFamily({
  name: "vessel",
  summary: "A single container: its water in any shape, and what to do with a used one",
  subcommands: [volume, displaced, secondHand],
});
