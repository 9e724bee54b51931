import { describe, expect, it } from "vitest";
import { commands } from "../../../commands/index.ts";
import { parseLine } from "../../../src/console/parse-line.ts";
import { PLAIN, renderOutcome } from "../../../src/console/render.ts";
import type { Outcome } from "../../../src/kit/reply.ts";
import { allPaths, type Club, HOME_CLUB, memberId, openClub, textOf } from "../../support/club.ts";

const HOSTILE: Readonly<Record<string, string>> = {
  empty: "",
  spaces: "   \t  ",
  "100 kB": "9".repeat(100_000),
  "2000 letters": "x".repeat(2_000),
  "2000 separators": ";,".repeat(1_000),
  "2000 digits and spaces": "1 ".repeat(1_000),
  negative: "-5",
  "negative litres": "-5 L",
  "not a number": "NaN",
  infinity: "Infinity",
  overflow: "1e309",
  underflow: "1e-400 L",
  "too large to mean anything": "9e300 L",
  zero: "0",
  "nothing per cent": "0 %",
  "upside-down range": "35-30 ppt",
  "all signs": "±±~~<<>>==",
  "division by nothing": "1/0",
  "full-width figures": "５０ Ｌ",
  "Arabic figures": "٣٥ ppt",
  "mixed scripts": "Laгооn рpt 35",
  "right to left": "\u202e35 ppt\u202c \u200f",
  invisible: "3\u200b5\u2060 ppt\ufeff",
  "combining marks": `z${"\u0301".repeat(400)}`,
  everyone: "@everyone @here <@123456789012345678> <@&1>",
  backticks: "```js\nprocess.exit()\n```",
  "marked-up link": "[x](https://example.org) **x** # x",
  "SQL fragment": "'; DROP TABLE tank; --",
  "SQL or": "x' OR '1'='1",
  expression: "2+2; import('fs')",
  "template fragment": `\${process.env.DISCORD_TOKEN}`,
  "prototype name": "__proto__",
  "constructor name": "constructor",
  "nested brackets": "(".repeat(500),
  "regular expression bait": `${"a".repeat(300)}! 1 L`,
  "figures bait": `${"1,".repeat(400)} L`,
  "sizes bait": `${"10x".repeat(300)} cm`,
  "list bait": "1 grouper 5 cm; ".repeat(100),
  emoji: "🐠🐡 35 🧂",
  "emoji family": "👨‍👩‍👧‍👦",
  "null bytes": "Lag\u0000oon\u0000",
  "lone surrogates": "\ud800 35 ppt \udfff",
  "line ends": "35\r\nppt\n\n\u2028",
  "terminal escape": "\u001b[2J\u001b[31m35 ppt\u0007",
  "date far ahead": "9999-12-31",
  "no such day": "31/02/2026",
  "long date bait": "last ".repeat(300),
};

/** These pass most readers, so every option of every command gets them; the others meet each reader at least once. */
const TO_ALL = ["zero", "nothing per cent", "too large to mean anything", "upside-down range", "emoji"];
const TEXTS = Object.entries(HOSTILE);
const SHARES = 8;

/** Texts for one option: all for the first option of its kind, in turns for those that are read alike. */
const met = new Map<string, number>();
function textsFor(example: string): readonly string[] {
  const before = met.get(example) ?? 0;
  met.set(example, before + 1);
  return TEXTS.filter(
    ([name], at) => before === 0 || TO_ALL.includes(name) || at % SHARES === before % SHARES,
  ).map(([, text]) => text);
}

/** Texts that read: the first example typed in full. */
function usual(path: string): Readonly<Record<string, string>> {
  const example = allPaths.find((each) => each.path === path)?.command.examples[0] ?? `/${path}`;
  return parseLine(example, commands).options;
}

async function openLagoon(): Promise<Club> {
  const club = openClub();
  await club.ask(
    "/tank add name:Lagoon kind:marine containers:display 1500 L measured; algae tank 100x60x50 cm inside, level 38 cm",
  );
  await club.ask("/tank note salinity:34 ppt temperature:26 °C");
  for (const value of [20, 21, 22]) await club.ask(`/log no3 ${value}, sg 1.0255 25/25, temp 25.5`);
  return club;
}

function request(
  path: string,
  options: Readonly<Record<string, string>>,
  answers: Readonly<Record<string, string>> = {},
) {
  return { member: memberId("ines"), club: HOME_CLUB, isSteward: false, path, options, answers };
}

/** Control characters other than the line end, and marks that turn the direction of text. */
const STEERS = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g;
const CONFIRMS = ["erase", "tank remove", "dose vet"];

/** What is wrong with what was said: it has to be words, without a defect, and harmless in a terminal. */
function wrongWith(outcome: Outcome, club: Club): readonly string[] {
  const text = textOf(outcome);
  const controls = renderOutcome(outcome, PLAIN).match(STEERS) ?? [];
  return [
    ...club.defects.splice(0).map((defect) => `failed: ${String(defect)}`),
    ...(outcome.title === "" ? ["has no title"] : []),
    ...(/\bundefined\b|\[object |(NaN|Infinity) (L|mL|g|kg|mg|ppt|°C|%|h|s|days)\b/.test(text)
      ? [`says: ${text}`]
      : []),
    ...(controls.length > 0 ? [`steers the terminal: ${JSON.stringify(controls)}`] : []),
  ];
}

describe.each(allPaths)("/$path", ({ path, command }) => {
  it("answers whatever is typed, or asks, and takes any of its own choices", async () => {
    const club = await openLagoon();
    const wrong: string[] = [];
    for (const [name, option] of Object.entries(command.options)) {
      for (const text of textsFor(option.example)) {
        const { id, outcome } = await club.app.answer(request(path, { ...usual(path), [name]: text }));
        const said = [...wrongWith(outcome, club)];
        // Confirmations are taken up below; here they would clear the ground for what follows.
        const choices = outcome.kind === "question" ? outcome.choices : [];
        for (const index of new Set([0, choices.length - 1]))
          if (choices[index]?.settle.options !== undefined)
            said.push(...wrongWith((await club.app.choose(id, memberId("ines"), index)).outcome, club));
        wrong.push(...said.map((each) => `${name}:${text.slice(0, 40)} ${each}`));
        club.app.suggest(request(path, {}), name, text);
        wrong.push(...club.defects.splice(0).map((defect) => `completing ${name}: ${String(defect)}`));
      }
    }
    expect(wrong).toEqual([]);
  });

  it("answers when every option is hostile at once, and whatever stands in for a confirmation", async () => {
    const club = await openLagoon();
    const wrong: string[] = [];
    const turn = allPaths.findIndex((each) => each.path === path);
    const texts = CONFIRMS.includes(path) ? TEXTS : TEXTS.filter((_, at) => at % 3 === turn % 3);
    for (const [, text] of texts) {
      const all = Object.fromEntries(Object.keys(command.options).map((name) => [name, text]));
      wrong.push(...wrongWith((await club.app.answer(request(path, all))).outcome, club));
      if (!CONFIRMS.includes(path)) continue;
      const confirmed = { erase: text, remove: text, wrote: text, figures: text };
      wrong.push(...wrongWith((await club.app.answer(request(path, usual(path), confirmed))).outcome, club));
    }
    expect(wrong).toEqual([]);
    expect((await club.ask("/tank list")).title).not.toBe("No tanks yet");
  });
});

describe("the command itself", () => {
  it.each(TEXTS)("may be %s", async (_name, text) => {
    const club = openClub();
    const unknown = (await club.app.answer(request(text, {}))).outcome;
    expect(wrongWith(unknown, club)).toEqual([]);
    expect(unknown.kind === "reply" && unknown.ok).toBe(false);
    const { outcome } = await club.app.answer(request("salt mix", { [text]: "35 ppt" }));
    expect(outcome.kind === "reply" && outcome.ok).toBe(false);
  });
});
