import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import advise from "./advise.ts";
import close from "./close.ts";
import correct from "./correct.ts";
import remove from "./delete.ts";
import did from "./did.ts";
import duty from "./duty.ts";
import hand from "./hand.ts";
import list from "./list.ts";
import open from "./open.ts";
import place from "./place.ts";
import show from "./show.ts";

export default defineFamily({
  name: "case",
  summary: "A help case for a newcomer: urgent things first, then one question at a time",
  subcommands: [open, add, correct, did, advise, hand, show, list, close, duty, place, remove],
});
