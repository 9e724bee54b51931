import { DateTime } from "luxon";
import { outageActions } from "../../src/core/plant/outage-actions.ts";
import { systemSheet } from "../../src/core/plant/system-sheet.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { caution } from "../../src/core/result.ts";
import { answerReply, defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { OUTAGE_WORDS, sayHours } from "../../src/kit/plant-words.ts";
import { type PrintablePage, printableHtml, printableText } from "../../src/kit/printable-page.ts";
import { ownTank } from "../tank/shared.ts";
import { FIRST_ACTIONS } from "./first-actions.ts";
import { gather, takenWhole } from "./gather.ts";

const MOST_ACTIONS = 10;

export default defineCommand({
  name: "emergency",
  summary: "A page to print for whoever stands there: volumes, valves, contacts, first ten actions",
  options: { tank: optional(tankOption()) },
  examples: ["/sheet emergency", "/sheet emergency tank:Lagoon"],
  run(input, context) {
    // Contacts are the member's own: nobody else's tank, even a shared one, gives them away.
    const tank = ownTank(input.tank, context);
    const known = plantFigures(tank, undefined, context);
    const { floor: _, devices: __, ...inputs } = gather(tank, known, context).inputs;
    const answer = systemSheet(inputs);
    const { habits, zone } = context.member;
    const made = DateTime.fromMillis(context.now, { zone }).toFormat("d MMMM yyyy", { locale: "en" });
    const asTyped = (text: string | undefined, how: string): readonly string[] =>
      text === undefined
        ? [`Not noted yet: ${how}`]
        : text
            .split(/[;\n]/)
            .map((line) => line.trim())
            .filter((line) => line !== "");
    const page: PrintablePage | undefined =
      answer.kind === "no-answer"
        ? undefined
        : {
            title: `${tank.name}: in an emergency`,
            note: `Made on ${made}. Print it again when anything changes.`,
            sections: [
              {
                heading: "Call",
                isOrdered: false,
                lines: asTyped(tank.plant.contacts, "/plant people contacts:"),
              },
              {
                heading: "Valves and switches",
                isOrdered: false,
                lines: asTyped(tank.plant.valves, "/plant people valves:"),
              },
              {
                heading: "Water",
                isOrdered: false,
                lines: [
                  `${showVolume(answer.value.net.totalL, habits)} in all, ${tank.kind} water`,
                  ...answer.value.containers.map(
                    ({ name, netL, inSystem }) =>
                      `${name}: ${showEstimate(netL, "L", { significant: 3 })}${inSystem ? "" : ", apart"}`,
                  ),
                  ...(answer.value.flood?.spill === undefined
                    ? []
                    : [
                        `Worst on the floor from one failure: ${showEstimate(answer.value.flood.spill.litres, "L", { significant: 3 })}, at ${answer.value.flood.spill.container}`,
                      ]),
                ],
              },
              {
                heading: `Power cut${answer.value.outage === undefined ? "" : `: oxygen alarm ${sayHours(answer.value.outage.still.toAlarmH)}`}`,
                isOrdered: true,
                lines: (answer.value.outage?.actions ?? UNKNOWN_OUTAGE)
                  .slice(0, MOST_ACTIONS)
                  .map((action) => OUTAGE_WORDS[action]()),
              },
              { heading: "Water on the floor", isOrdered: true, lines: FIRST_ACTIONS.leak },
              { heading: "Fish gasping", isOrdered: true, lines: FIRST_ACTIONS.gasping },
              { heading: "A breaker has tripped", isOrdered: true, lines: FIRST_ACTIONS.breaker },
            ],
          };
    const reply = answerReply(answer, context, {
      title: `${tank.name}: emergency sheet`,
      headline: () => "A page to print and hang up beside the tank",
      body: ({ net, outage }) => [
        `${showVolume(net.totalL, habits)} in ${tank.containers.length} containers${outage === undefined ? "" : `; oxygen alarm in a power cut: ${sayHours(outage.still.toAlarmH)}`}.`,
        ...(tank.plant.contacts === undefined
          ? ["No contacts are noted: /plant people contacts: puts them on it."]
          : []),
        ...(tank.plant.valves === undefined
          ? ["No valves are noted: /plant people valves: puts them on it."]
          : []),
        "It holds the first ten actions for a power cut, water on the floor, gasping fish and a tripped breaker.",
      ],
      taken: takenWhole(tank, known),
      cautions: [...known.cautions, caution("ask-an-electrician", {}, "danger")],
    });
    if (page === undefined) return reply;
    const cautioned: PrintablePage = {
      ...page,
      sections: [
        ...page.sections,
        {
          heading: "Mind",
          isOrdered: false,
          lines: reply.cautions.filter(({ level }) => level === "danger").map(({ text }) => text),
        },
      ].filter(({ lines }) => lines.length > 0),
    };
    const altText = `Emergency page for ${tank.name}: contacts, valves, volumes and first actions.`;
    return {
      ...reply,
      files: [
        {
          name: "emergency.html",
          mediaType: "text/html",
          content: printableHtml(cautioned),
          encoding: "utf8",
          altText,
        },
        {
          name: "emergency.txt",
          mediaType: "text/plain",
          content: printableText(cautioned),
          encoding: "utf8",
          altText,
        },
      ],
    };
  },
});

/** The order that holds for anyone, when nothing of the tank is known. */
const UNKNOWN_OUTAGE = outageActions({
  hasBatteryAir: false,
  hasGenerator: false,
  drift: "steady",
  isOxygenAtAlarm: false,
});
