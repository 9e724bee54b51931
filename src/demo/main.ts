import { existsSync, rmSync } from "node:fs";
import { join } from "node:path";
import { assemble, ROOT } from "../assemble.ts";
import { chat } from "../chat.ts";
import { Conversation } from "../console/conversation.ts";
import { story } from "./story.ts";

const FILE = join(ROOT, "data/local/demo.sqlite");
const DAY_MS = 86_400_000;

/** Types the invented club's year into a fresh file, each line at its own hour, through the same commands. */
async function build(end: number): Promise<void> {
  for (const ending of ["", "-wal", "-shm"]) rmSync(`${FILE}${ending}`, { force: true });
  let now = end;
  const { app, close } = assemble(FILE, () => now);
  const talks = new Map<string, Conversation>();
  for (const { member, daysBefore, line } of story()) {
    now = end - daysBefore * DAY_MS;
    const talk = talks.get(member) ?? new Conversation(app, member);
    talks.set(member, talk);
    await talk.take(line);
    // Asked whether a reading is right, they say that it is: the last choice.
    const choices = talk.openQuestion?.choices.length;
    if (choices !== undefined) await talk.take(String(choices));
  }
  await close();
}

const args = process.argv.slice(2);
if (!existsSync(FILE) || args.includes("--fresh")) {
  process.stderr.write("Writing the demo club's year …\n");
  await build(Date.now());
}
process.env["DATABASE_FILE"] = FILE;
const rest = args.filter((arg) => arg !== "--fresh");
process.exitCode = await chat(rest.includes("--as") ? rest : ["--as", "ines", ...rest]);
