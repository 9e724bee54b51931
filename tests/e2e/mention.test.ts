import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { CONSOLE_CLUB, Conversation } from "../../src/console/conversation.ts";
import { openClub, textOf } from "../support/club.ts";
import { buttonOf, type DiscordClub, openDiscordClub, slashCall } from "../support/discord-club.ts";
import type { Message } from "../support/loopback/index.ts";

let here: DiscordClub;
beforeEach(async () => {
  here = await openDiscordClub();
  for (const line of [
    "/tank add name:Lagoon kind:marine containers:box 2000 L measured",
    "/settings gallon:US gravity:25/25 °C",
    "/log line:no3 37",
  ])
    await here.platform.slash(slashCall(line, "ines"));
});
afterEach(async () => {
  await here.close();
  expect(here.club.defects).toEqual([]);
});

/** What the bot has written below a message; waits for it. */
async function answerTo(message: Message): Promise<Message> {
  const below = (): Message | undefined =>
    [...message.channel.messages.values()].find(({ replyTo }) => replyTo === message.id);
  await here.platform.until(() => below() !== undefined);
  const found = below();
  if (found === undefined) throw new Error("no answer");
  return found;
}

/** Lets everything under way arrive, and counts what the bot has written in the channel. */
async function writtenAfter(message: Message): Promise<number> {
  const probe = here.platform.say({ user: "bruno", content: `<@${here.platform.world.bot.id}> help` });
  await answerTo(probe);
  return [...message.channel.messages.values()].filter(({ replyTo }) => replyTo === message.id).length;
}

const named = (text: string): string => `<@${here.platform.world.bot.id}> ${text}`;

describe("a direct message", () => {
  it("is answered as it is, with the record, pinging nobody", async () => {
    const asked = here.platform.say({ user: "ines", guild: null, content: "whats my nitrate" });
    const answer = await answerTo(asked);
    expect(answer.text).toContain("nitrate 37 mg/L");
    expect(answer.pings).toEqual({ everyone: false, users: [], roles: [] });
  });

  it("can be asked back, and its buttons work for its author", async () => {
    const asked = here.platform.say({ user: "ines", guild: null, content: "nitrate is 44 today" });
    const question = await answerTo(asked);
    const logged = await here.platform.press({
      user: "ines",
      message: question,
      customId: buttonOf(question, "Log it"),
    });
    expect(logged.message.text).toContain("nitrate 44 mg/L");
  });
});

describe("a message naming the bot among others", () => {
  it("is answered for all when nothing private is in it", async () => {
    const answer = await answerTo(
      here.platform.say({ user: "ines", content: named("what is 1.026 in ppt") }),
    );
    expect(answer.text).toContain("34.5");
    expect(answer.text).toContain("/salt convert");
    expect(answer.pings).toEqual({ everyone: false, users: [], roles: [] });
  });

  it("shows nothing of a record, but opens it for the one who asked alone", async () => {
    const answer = await answerTo(here.platform.say({ user: "ines", content: named("whats my nitrate") }));
    expect(answer.text).not.toContain("37");
    const opened = await here.platform.press({
      user: "ines",
      message: answer,
      customId: buttonOf(answer, "Show me"),
    });
    expect(opened.response.isEphemeral).toBe(true);
    expect(opened.message.text).toContain("nitrate 37 mg/L");
    const other = await here.platform.press({
      user: "bruno",
      message: answer,
      customId: buttonOf(answer, "Show me"),
    });
    expect(other.response.isEphemeral).toBe(true);
    expect(other.message.text).not.toContain("37");
  });

  it("outlives a restart", async () => {
    const answer = await answerTo(here.platform.say({ user: "ines", content: named("whats my nitrate") }));
    await here.restart();
    const opened = await here.platform.press({
      user: "ines",
      message: answer,
      customId: buttonOf(answer, "Show me"),
    });
    expect(opened.message.text).toContain("nitrate 37 mg/L");
  });

  it("tells at once, for all to see, what to do when somebody is hurt, with nobody's numbers", async () => {
    await here.platform.slash(slashCall("/plant people contacts:Dr Alva 555 0142", "ines"));
    const answer = await answerTo(
      here.platform.say({ user: "ines", content: named("my lionfish stung me") }),
    );
    expect(answer.text).toContain("People first");
    expect(answer.text).not.toContain("555");
  });

  it("sends wiring to an electrician, for all to see", async () => {
    const answer = await answerTo(
      here.platform.say({ user: "ines", content: named("what fuse do i need for 3 pumps") }),
    );
    expect(answer.text).toContain("licensed electrician");
  });
});

describe("what is not asked of the bot", () => {
  it("stays unanswered: talk among members, everyone, and other bots", async () => {
    const { platform } = here;
    const bot = platform.user("some-other-bot");
    const talk = [
      platform.say({ user: "ines", content: "whats my nitrate" }),
      platform.say({ user: "ines", content: "@everyone whats my nitrate" }),
      platform.say({ user: { ...bot, isBot: true }, content: named("whats my nitrate") }),
    ];
    for (const message of talk) expect(await writtenAfter(message)).toBe(0);
  });

  it("is answered once, though the platform delivers it twice", async () => {
    here.platform.deliverTwice = true;
    const asked = here.platform.say({ user: "ines", content: named("what is 1.026 in ppt") });
    await answerTo(asked);
    expect(await writtenAfter(asked)).toBe(1);
  });
});

describe("in the terminal", () => {
  const textFor = async (talk: Conversation, line: string): Promise<string> => {
    const said = await talk.take(line);
    return said.kind === "outcome" ? textOf(said.outcome) : said.kind === "remark" ? said.text : said.kind;
  };

  it("a line without a slash is a question, unless it is a command or an answer", async () => {
    const club = openClub();
    const talk = new Conversation(club.app, "ines");
    expect(talk.member).toContain(CONSOLE_CLUB);
    await talk.take("tank add name:Lagoon kind:marine containers:box 2000 L measured");
    expect(await textFor(talk, "log no3 37")).toContain("Lagoon: logged");
    expect(await textFor(talk, "whats my nitrate")).toContain("nitrate 37 mg/L");
    expect(await textFor(talk, "change 30% of the water nitrate at 80")).toContain("56 mg/L");
    expect(await textFor(talk, "log that i fed 40 g prawn")).toContain("feeding");
    expect(await textFor(talk, "how much salt for 200 L")).toContain("To which salinity?");
    expect(await textFor(talk, "35 ppt")).toContain("kg");
    expect(await textFor(talk, "nitrate is 44 today")).toContain("Shall I log");
    expect(await textFor(talk, "my lionfish stung me")).toContain("People first");
    club.store.close();
  });
});
