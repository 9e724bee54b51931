import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { Conversation } from "../../src/console/conversation.ts";
import type { Outcome } from "../../src/kit/reply.ts";
import { type Club, openClub, textOf } from "../support/club.ts";

let club: Club;
let talk: Conversation;
beforeEach(async () => {
  club = openClub();
  talk = new Conversation(club.app, "ines");
  await say("/tank add name:Lagoon kind:marine containers:box 200 L measured");
});
afterEach(() => {
  expect(club.defects).toEqual([]);
});

async function say(line: string): Promise<Outcome> {
  const said = await talk.take(line);
  if (said.kind === "outcome") return said.outcome;
  throw new Error(said.kind === "remark" ? said.text : said.kind);
}

describe("/export", () => {
  it("defuses what a spreadsheet would run", async () => {
    await say("/log note =HYPERLINK(1)");
    const exported = await say("/export");
    const csv = exported.kind === "reply" ? (exported.files?.[0]?.content ?? "") : "";
    expect(csv).toContain("HYPERLINK");
    expect(csv).not.toMatch(/(^|,|")=HYPERLINK/m);
  });

  it("is refused for a tank that is not there", async () => {
    expect(textOf(await say("/export tank:Nowhere"))).toContain("no tank");
  });

  it("gives data as well", async () => {
    await say("/log no3 20");
    const exported = await say("/export as:json");
    const json = exported.kind === "reply" ? (exported.files?.[0]?.content ?? "") : "";
    expect(JSON.parse(json)).toMatchObject({
      tank: "Lagoon",
      readings: [{ parameter: "nitrate", best: 20 }],
    });
  });
});
