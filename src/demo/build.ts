import { rmSync } from "node:fs";
import { type Assembled, assemble } from "../assemble.ts";
import { Conversation } from "../console/conversation.ts";
import { story } from "./story.ts";

const DAY_MS = 86_400_000;

/** Types the invented club's year into a fresh file, each line at its own hour, through the same commands. */
export async function buildDemo(file: string, end: number): Promise<void> {
  for (const ending of ["", "-wal", "-shm"]) rmSync(`${file}${ending}`, { force: true });
  let now = end;
  const { app, close } = assemble(file, () => now);
  await tell(app, end, (at) => {
    now = at;
  });
  await close();
}

async function tell(app: Assembled["app"], end: number, setClock: (at: number) => void): Promise<void> {
  const talks = new Map<string, Conversation>();
  for (const { member, daysBefore, line } of story()) {
    setClock(end - daysBefore * DAY_MS);
    const talk = talks.get(member) ?? new Conversation(app, member);
    talks.set(member, talk);
    await talk.take(line);
    // Asked whether a reading is right, they say that it is: the last choice.
    const choices = talk.openQuestion?.choices.length;
    if (choices !== undefined) await talk.take(String(choices));
  }
}
