import { defineFamily } from "../../src/kit/index.ts";
import clear from "./clear.ts";
import correct from "./correct.ts";
import join from "./join.ts";
import leave from "./leave.ts";
import ledger from "./ledger.ts";
import month from "./month.ts";
import role from "./role.ts";
import show from "./show.ts";
import start from "./start.ts";
import tank from "./tank.ts";

export default defineFamily({
  name: "group",
  summary: "The club's breeding group: people, tanks, ledger and month page",
  subcommands: [start, join, role, tank, show, month, ledger, correct, clear, leave],
});
