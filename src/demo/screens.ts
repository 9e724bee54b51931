import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { commands } from "../../commands/index.ts";
import { assemble, ROOT } from "../assemble.ts";
import { Conversation } from "../console/conversation.ts";
import { PLAIN, renderOutcome } from "../console/render.ts";
import { isFamily } from "../kit/command.ts";
import { buildDemo } from "./build.ts";

/** The day on which the pictures in the README were asked for; the demo's year ends there. */
const DAY = Date.UTC(2026, 6, 1, 12);
const FOLDER = join(ROOT, "data/screens");

/** What is shown: the name of the screen, and the line that Ines types. */
const SCREENS = [
  ["salt", "/salt mix volume:200 L tank:Lagoon"],
  ["trend", "/trend of:nitrate tank:Lagoon"],
  ["system", "/sheet system tank:Lagoon"],
] as const;

/** One row per command or family, with all its subcommands. */
function commandTable(): string {
  const rows = commands.map((entry) => {
    const paths = isFamily(entry)
      ? entry.subcommands.map((sub) => `\`/${entry.name} ${sub.name}\``)
      : [`\`/${entry.name}\``];
    return `| ${entry.summary} | ${paths.join(" ")} |`;
  });
  return ["| for | type |", "| --- | --- |", ...rows].join("\n");
}

/** `npm run screens`: makes the README's screens from the demo, and puts the words into the README. */
const folder = mkdtempSync(join(tmpdir(), "standpipe-screens-"));
const file = join(folder, "demo.sqlite");
await buildDemo(file, DAY);
const { app, draw, close } = assemble(file, () => DAY);
const talk = new Conversation(app, "ines");
mkdirSync(FOLDER, { recursive: true });
let readme = readFileSync(join(ROOT, "README.md"), "utf8");
for (const [name, line] of SCREENS) {
  const said = await talk.take(line);
  if (said.kind !== "outcome" || said.outcome.kind !== "reply" || !said.outcome.ok)
    throw new Error(`${line} was not answered`);
  const { chart, picture } = said.outcome;
  const text = renderOutcome(said.outcome, PLAIN);
  readme = readme.replace(
    new RegExp(`(<!-- screen: ${name} -->\\n)[\\s\\S]*?(<!-- end -->)`),
    (_, open: string, end: string) => `${open}\`\`\`console\nines> ${line}\n${text}\n\`\`\`\n${end}`,
  );
  const drawn = chart ?? picture;
  const image = drawn === undefined ? undefined : await draw(drawn);
  if (image !== undefined) writeFileSync(join(FOLDER, `${name}.png`), image.png);
}
readme = readme.replace(
  /(<!-- commands -->\n)[\s\S]*?(<!-- end -->)/,
  (_, open: string, end: string) => `${open}${commandTable()}\n${end}`,
);
writeFileSync(join(ROOT, "README.md"), readme);
await close();
rmSync(folder, { recursive: true, force: true });
