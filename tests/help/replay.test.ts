import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { commands } from "../../commands/index.ts";
import { createApp } from "../../src/app.ts";
import { Conversation } from "../../src/console/conversation.ts";
import { PLAIN, renderOutcome } from "../../src/console/render.ts";
import { openClub } from "../support/club.ts";
import { openDiscordClub } from "../support/discord-club.ts";

/** Forty invented threads; what each must lead to was written down by hand, before the bot saw any of them. */
const THREADS = z
  .array(
    z.strictObject({
      id: z.string(),
      kind: z.enum(["urgent", "ordinary", "misleading", "hostile"]),
      about: z.string(),
      form: z.record(z.string(), z.string()),
      level: z.array(z.enum(["calm", "soon", "now"])).optional(),
      alarms: z.array(z.string()).optional(),
      peopleFirst: z.boolean().optional(),
      says: z.array(z.string()),
      never: z.array(z.string()).optional(),
    }),
  )
  .parse(JSON.parse(readFileSync("tests/help/threads.json", "utf8")))
  .map((thread) => ({
    ...thread,
    form: Object.fromEntries(
      Object.entries(thread.form).map(([field, text]) => [
        field,
        text.startsWith("REPEAT:") ? text.slice(7).repeat(25).slice(0, 1490) : text,
      ]),
    ),
  }));

const HEADLINE = { now: "Do this now", soon: "Look closely today", calm: "No alarm" } as const;
const CODES: Readonly<Record<string, RegExp>> = {
  gasping: /gasp|gulp|breathing really fast/,
  ammonia: /harmful part of the ammonia/,
  "too hot": /Cool it slowly/,
  "no flow": /power cut/,
  "mass deaths": /dead|lost/,
  "overheating equipment": /burning|brown/,
  "electric tingle": /rcd trips/,
  "poisoned water": /fly spray/,
  lying: /rolling over/,
};

type Thread = (typeof THREADS)[number];

function judge(thread: Thread, text: string): void {
  if (thread.peopleFirst === true) expect(text).toContain("People first");
  else {
    const levels = thread.alarms === undefined ? (thread.level ?? []) : (["now"] as const);
    expect(levels.some((level) => text.includes(HEADLINE[level]))).toBe(true);
  }
  for (const alarm of thread.alarms ?? []) expect(text).toMatch(CODES[alarm] ?? /^$/);
  for (const said of thread.says) expect(text).toContain(said);
  for (const said of thread.never ?? []) expect(text).not.toContain(said);
  // No diagnosis, no medicine, nobody blamed.
  expect(text).not.toMatch(/your fault|you should have|white spot disease|diagnosed|\bdrops? per\b/i);
}

it("holds ten of each kind", () => {
  for (const kind of ["urgent", "ordinary", "misleading", "hostile"])
    expect(THREADS.filter((thread) => thread.kind === kind)).toHaveLength(10);
});

describe("in the terminal", () => {
  it.each(THREADS)("$kind $id: $about", async (thread) => {
    const club = openClub();
    const app = createApp({
      commands,
      records: club.store.records,
      exchanges: club.store.exchanges,
      clock: () => club.now,
      newId: (
        (n) => () =>
          `c${n++}`
      )(0),
      report: (_, error) => club.defects.push(error),
    });
    const typed = Object.entries(thread.form).map(([field, text]) => `${field}:${text}`);
    const said = await new Conversation(app, "newcomer").take(`/case open ${typed.join(" ")}`);
    expect(club.defects).toEqual([]);
    const text = said.kind === "outcome" ? renderOutcome(said.outcome, PLAIN) : "";
    judge(thread, text.replace(/\n\s*/g, " "));
    club.store.close();
  });
});

describe("on the chat platform", async () => {
  const here = await openDiscordClub();
  afterAll(() => here.close());

  it.each(THREADS)("$kind $id: $about", async (thread) => {
    const user = `newcomer-${thread.id}`;
    const opened = await here.platform.slash({ user, command: "case", subcommand: "open", options: {} });
    const { change, ...form } = thread.form;
    const fields =
      change === undefined
        ? form
        : { ...form, readings: `${form["readings"] ?? ""}; water change ${change}` };
    const said = await here.platform.submitModal({ opened, fields });
    expect(here.club.defects).toEqual([]);
    const thread_ = here.platform.world.threadsOf(here.platform.guild).at(-1);
    const card =
      thread.peopleFirst === true
        ? said.message
        : [...(thread_?.messages.values() ?? [])].findLast((m) => m.buttons.length > 0);
    expect(card?.pings).toEqual({ everyone: false, users: [], roles: [] });
    judge(thread, (card?.text ?? "").replace(/\\(?=\W)/g, "").replace(/\n+/g, " "));
  });
});
