import { defineFamily } from "../../src/kit/index.ts";
import people from "./people.ts";
import room from "./room.ts";
import show from "./show.ts";
import water from "./water.ts";

export default defineFamily({
  name: "plant",
  summary: "Pipes, pumps, room and power of a tank: note them once, and every sum can use them",
  subcommands: [water, room, people, show],
});
