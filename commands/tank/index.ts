import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import makeDefault from "./default.ts";
import describe from "./describe.ts";
import list from "./list.ts";
import name from "./name.ts";
import note from "./note.ts";
import remove from "./remove.ts";
import share from "./share.ts";
import show from "./show.ts";

export default defineFamily({
  name: "tank",
  summary: "Your tanks: describe them once, and every sum can use them",
  subcommands: [add, show, list, describe, note, name, makeDefault, share, remove],
});
