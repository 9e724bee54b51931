import { defineFamily } from "../../src/kit/index.ts";
import list from "./list.ts";
import pause from "./pause.ts";
import resume from "./resume.ts";
import shift from "./shift.ts";
import show from "./show.ts";
import start from "./start.ts";
import stop from "./stop.ts";

export default defineFamily({
  name: "regimen",
  summary: "Regimens that read the log: cycling, carbon, water changes, quarantine",
  subcommands: [start, show, list, pause, resume, shift, stop],
});
