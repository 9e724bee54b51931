import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { commands } from "../../commands/index.ts";
import { allCommands } from "../../src/kit/command.ts";
import { HOME_CLUB, memberId, openClub } from "../support/club.ts";

const FAMILIES = ["ammonia", "oxygen", "minerals", "train", "cycle", "carbon", "algae", "clash"];
const subjects = allCommands(commands).filter(({ path }) => FAMILIES.includes(path.split(" ")[0] ?? ""));

/** Texts that read as one kind of quantity or another, at and past their edges. */
const TEXTS = [
  "0",
  "1",
  "-1",
  "1e9",
  "0 mg/L",
  "0.0001 mg/L as TAN",
  "99 mg/L as NH4",
  "2 mg/L as TAN",
  "0 L",
  "1 mL",
  "2700 L",
  "1e7 L",
  "-2 °C",
  "0 °C",
  "26 °C",
  "50 °C",
  "0 ppt",
  "5 ppt",
  "35 ppt",
  "60 ppt",
  "0 %",
  "0.001 %",
  "100 %",
  "96 %",
  "0 h",
  "1 s",
  "24 h",
  "10 days",
  "9000 days",
  "0 L/h",
  "0.001 L/h",
  "6000 L/h",
  "5.5",
  "8.2",
  "10",
  "14",
  "0 dKH",
  "8 dKH",
  "99 dKH",
  "0 kg",
  "1 g",
  "800 g",
  "1000000 kg",
  "9000 m",
  "25 kPa",
  "none",
  "nothing",
  "yes",
  "no",
  "30 L moving bed from sea water",
  "500 t live rock",
  "120 g prawn daily",
  "1 picasso triggerfish 15 cm",
  "box 0.05 L",
  "drum 110 L low oxygen, side stream 0.01 L/h, dirt 100000 g/day",
  "<5 mg/L",
  ">100 mg/L",
  "2-400 mg/L",
];

describe("whatever is put into it", () => {
  it.each(subjects)("/$path answers, asks or refuses, in finite figures", async ({ path, command }) => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm");
    await club.ask("/tank note salinity:34 ppt temperature:26 °C food:120 g prawn daily flow:6000 L/h");
    const texts = Object.entries(command.options).map(([name, option]) => {
      const own = [option.example, ...(option.choices ?? [])];
      const text = fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...own) }, fc.constantFrom(...TEXTS));
      return [
        name,
        name === "tank" ? fc.constant(undefined) : fc.option(text, { nil: undefined, freq: 6 }),
      ] as const;
    });
    const isSlow = command.isSlow;
    await fc.assert(
      fc.asyncProperty(fc.record(Object.fromEntries(texts)), async (drawn) => {
        const options = Object.fromEntries(
          Object.entries(drawn).filter((entry): entry is [string, string] => entry[1] !== undefined),
        );
        const { outcome } = await club.app.answer({
          member: memberId("ines"),
          club: HOME_CLUB,
          isSteward: false,
          path,
          options,
          answers: {},
        });
        expect(club.defects).toEqual([]);
        if (outcome.kind === "question") return;
        const said = [
          outcome.headline ?? "",
          ...outcome.body,
          ...(outcome.table?.rows.flat() ?? []),
          ...outcome.cautions.map(({ text }) => text),
        ];
        expect(said.join("\n")).not.toMatch(/NaN|Infinity|undefined|\[object/);
      }),
      { numRuns: isSlow ? 12 : 120 },
    );
  });
});
