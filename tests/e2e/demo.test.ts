import { expect, it } from "vitest";
import { Conversation } from "../../src/console/conversation.ts";
import { story } from "../../src/demo/story.ts";
import { openClub } from "../support/club.ts";

const DAY_MS = 86_400_000;

it("the invented club's year is told in lines the bot takes, by six members with five tanks", async () => {
  const club = openClub();
  const end = Date.UTC(2026, 6, 1, 12);
  const talks = new Map<string, Conversation>();
  const refused: string[] = [];
  for (const { member, daysBefore, line } of story()) {
    club.now = end - daysBefore * DAY_MS;
    const talk = talks.get(member) ?? new Conversation(club.app, member);
    talks.set(member, talk);
    const said = await talk.take(line);
    const choices = talk.openQuestion?.choices.length;
    if (choices !== undefined && choices > 0) await talk.take(String(choices));
    else if (said.kind !== "outcome" || said.outcome.kind !== "reply" || !said.outcome.ok)
      refused.push(`${member}: ${line}`);
  }
  expect(refused).toEqual([]);
  expect(club.defects).toEqual([]);
  expect(talks.size).toBe(6);
  const tanks = [...talks.values()].flatMap((talk) => club.store.records.tanks.own(talk.member));
  expect(tanks.map(({ kind }) => kind).sort()).toEqual(["brackish", "fresh", "marine", "marine", "marine"]);
  for (const { owner, id } of tanks) {
    const { readings } = club.store.records.log.everything(owner, id);
    expect(readings.length).toBeGreaterThan(30);
  }
  club.store.close();
}, 60_000);
