import { groupOf, mustBelong, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "leave",
  summary: "Leave the breeding group: your duties open to all, what you counted stays",
  options: { who: optional(personOption("Somebody else, for keepers")) },
  examples: ["/group leave"],
  run({ who }, context): Outcome {
    const group = groupOf(context);
    const me = mustBelong(group);
    const person = who ?? me.number;
    const answer = context.request.answers["leave"];
    const name = person === me.number ? "you" : nameOf(group, person);
    if (answer === undefined)
      return {
        kind: "question",
        isMistake: false,
        title: `${group.state.name}: leave?`,
        text: `Shall ${name} leave ${group.state.name}?`,
        body: [
          "Open duties become free for all, wishes and open transfers fall away; counts, deaths and costs stay in the ledger under a number.",
        ],
        cautions: [],
        choices: [
          { label: "Leave", settle: { answers: { leave: "yes" } }, tone: "stop" },
          { label: "Stay", settle: { answers: { leave: "no" } } },
        ],
        audience: "asker",
      };
    if (answer !== "yes") return told(context, "Nobody has left", ["All is as it was."]);
    const opened = writeFacts(context, ({ state }) => {
      const keepers = Object.values(state.people).filter((each) => each.isHere && each.role === "keeper");
      const others = Object.values(state.people).filter((each) => each.isHere && each.number !== person);
      if (keepers.length === 1 && keepers[0]?.number === person && others.length > 0)
        throw new UserError(
          "not-now",
          "You are the only keeper: make somebody else a keeper first, with /group role.",
        );
      const duties = Object.values(state.duties).filter(
        (duty) => duty.person === person && duty.doneBy === undefined,
      );
      return { facts: [{ kind: "person left", person }], result: duties.length };
    });
    return told(context, person === me.number ? "You have left" : `${name} has left`, [
      opened === 0 ? "No duty was open." : `Duties now open to all: ${opened}. /rota week shows them.`,
      "/erase takes your name and notes out of the ledger, too.",
    ]);
  },
});
