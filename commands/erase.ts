import { counted, defineCommand, type Outcome } from "../src/kit/index.ts";

export default defineCommand({
  name: "erase",
  summary: "Delete everything kept of you: tanks, readings, settings, answers",
  options: {},
  examples: ["/erase"],
  run(_, { records, member, request, audience, now }): Outcome {
    const answer = request.answers["erase"];
    if (answer === undefined)
      return {
        kind: "question",
        isMistake: false,
        title: "Erase all that is yours?",
        text: "Your tanks with all readings and events, your help cases, your instruments, salt mixes, settings and earlier answers will be gone for good.",
        body: [],
        cautions: [],
        choices: [
          { label: "Erase everything", settle: { answers: { erase: "yes" } }, tone: "stop" },
          { label: "Keep it", settle: { answers: { erase: "no" } } },
        ],
        audience: "asker",
      };
    if (answer !== "yes")
      return {
        kind: "reply",
        ok: true,
        title: "Nothing was erased",
        body: ["All is as it was."],
        cautions: [],
        audience,
      };
    // What they counted for a breeding group stays under a number; name, notes and duties go.
    const groups = records.breeding.forget(member.id, new Date(now).toISOString());
    const goneCards = records.help.cardsOf(member.id);
    const gone = records.members.erase(member.id);
    return {
      kind: "reply",
      ok: true,
      title: "Erased",
      body: [
        `${counted(gone.tanks, "tank")} and ${counted(gone.readings, "reading")} are gone, with all settings.`,
        ...(groups === 0
          ? []
          : [
              "In the breeding group your name and notes are gone and your duties are open to all; what you counted stays under a number, so that its totals hold.",
            ]),
      ],
      cautions: [],
      ...(goneCards.length === 0 ? {} : { goneCards }),
      leavesNoTrace: true,
      audience,
    };
  },
});
