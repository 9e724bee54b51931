import { defineFamily } from "../../src/kit/index.ts";
import add from "./add.ts";
import balance from "./balance.ts";
import paid from "./paid.ts";

export default defineFamily({
  name: "cost",
  summary: "Shared costs: split to the cent, who owes whom; the bot moves no money",
  subcommands: [add, paid, balance],
});
