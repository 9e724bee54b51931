import { systemSheet } from "../../src/core/plant/system-sheet.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { containerSurfaces } from "../../src/core/tank/container-surfaces.ts";
import { answerReply, defineCommand, optional, tankOption, UserError } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { sheetFacts } from "./facts.ts";
import { gather, takenWhole } from "./gather.ts";

/** Letters the picture's font has. */
const WRITABLE = /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]+$/u;

export default defineCommand({
  name: "system",
  summary: "The whole system on one page, as words and picture: volumes, flow, flood, outage, weight",
  options: { tank: optional(tankOption()) },
  examples: ["/sheet system", "/sheet system tank:Lagoon"],
  isSlow: true,
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const { tank } = known;
    if (tank === undefined)
      throw new UserError(
        "not-found",
        "You keep no tank here yet. Describe one with /tank add, and its page is one command away.",
      );
    const { inputs, missing } = gather(tank, known, context);
    const answer = systemSheet(inputs);
    return answerReply(answer, context, {
      title: `${tank.name}: system sheet`,
      headline: ({ net }) =>
        `${showVolume(net.totalL, context.member.habits)} in ${tank.containers.length} containers`,
      body: (sheet) => [
        ...sheetFacts(sheet)
          .slice(1)
          .map(({ name, value }) => `${name}: ${value}`),
        ...(missing.length === 0 ? [] : [`Not known yet: ${missing.join("; ")}.`]),
      ],
      table: ({ containers, residence }) => ({
        columns: ["container", "role", "L", "minutes", "times an hour"],
        rows: containers.map((each) => {
          const stay = residence?.containers.find(({ name }) => name === each.name);
          return [
            each.name,
            each.inSystem ? each.role : `${each.role}, apart`,
            showEstimate(each.netL, "", { significant: 3 }).trim(),
            stay === undefined ? "" : showEstimate(stay.minutes, "", { significant: 2 }).trim(),
            stay === undefined ? "" : showEstimate(stay.turnoverPerHour, "", { significant: 2 }).trim(),
          ];
        }),
      }),
      picture: (sheet) => ({
        kind: "system",
        altText: `The containers in the water's order: ${sheet.containers.map(({ name, netL }) => `${name} ${showEstimate(netL, "L", { significant: 3 })}`).join(", ")}. ${sheetFacts(
          sheet,
        )
          .map(({ name, value }) => `${name}: ${value}`)
          .join("; ")}.`,
        containers: sheet.containers.map(({ name, role, netL, inSystem }) => {
          const stay = sheet.residence?.containers.find((each) => each.name === name);
          const described = tank.containers.find((each) => each.name === name);
          const filled = described === undefined ? undefined : containerSurfaces(described)?.filled.best;
          return {
            label: WRITABLE.test(name) ? name : role,
            role,
            isApart: !inSystem,
            litres: netL.best,
            volumeText: showEstimate(netL, "L", { significant: 3 }),
            ...(stay === undefined
              ? {}
              : { stayText: showEstimate(stay.minutes, "min", { significant: 2 }).replace(/ \(.*/, "") }),
            ...(filled === undefined ? {} : { filled }),
          };
        }),
        facts: sheetFacts(sheet),
      }),
      taken: takenWhole(tank, known),
      cautions: known.cautions,
    });
  },
});
