import { defineFamily } from "../../src/kit/index.ts";
import card from "./card.ts";
import confirm from "./confirm.ts";
import give from "./give.ts";
import share from "./share.ts";
import want from "./want.ts";

export default defineFamily({
  name: "juveniles",
  summary: "Young for others: wishes, a fair list, and transfers both sides confirm",
  subcommands: [want, share, give, confirm, card],
});
