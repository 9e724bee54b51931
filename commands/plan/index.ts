import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import done from "./done.ts";
import due from "./due.ts";
import exportPlans from "./export.ts";
import later from "./later.ts";
import list from "./list.ts";
import off from "./off.ts";
import pause from "./pause.ts";
import remind from "./remind.ts";
import resume from "./resume.ts";
import shift from "./shift.ts";
import skip from "./skip.ts";
import stop from "./stop.ts";

export default defineFamily({
  name: "plan",
  summary: "Plans and reminders: what to do when, and what has to come back on",
  subcommands: [add, off, due, done, later, skip, list, pause, resume, shift, stop, remind, exportPlans],
});
