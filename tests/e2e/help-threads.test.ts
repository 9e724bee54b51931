import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { ClubId, MemberId } from "../../src/records/ids.ts";
import { buttonOf, type DiscordClub, openDiscordClub, slashCall } from "../support/discord-club.ts";
import type { Message } from "../support/loopback/index.ts";
import { channelType, permission } from "../support/loopback/world.ts";

let here: DiscordClub;
beforeEach(async () => {
  here = await openDiscordClub();
});
afterEach(async () => {
  await here.close();
  expect(here.club.defects).toEqual([]);
});

const OPEN =
  "/case open worry:my fish hide tank:60 L fresh water, 5 weeks readings:nitrite 0.5, ammonia 0, pH 7.6";
const MENU = "Open a help thread";

/** The one help thread there is. */
function thread() {
  const [only, ...others] = here.platform.world.threadsOf(here.platform.guild);
  if (only === undefined || others.length > 0) throw new Error(`${others.length + 1} threads`);
  return only;
}

function messagesIn(channel: { readonly messages: ReadonlyMap<string, Message> }): readonly Message[] {
  return [...channel.messages.values()];
}

function card(): Message {
  const found = messagesIn(thread()).findLast(({ buttons }) => buttons.length > 1);
  if (found === undefined) throw new Error("no card in the thread");
  return found;
}

async function press(label: string, fields: Record<string, string>, user = "bruno") {
  const opened = await here.platform.press({ user, message: card(), customId: buttonOf(card(), label) });
  return here.platform.submitModal({ opened, fields });
}

describe("opening", () => {
  it("makes a public thread with the card in it, and tells the asker where", async () => {
    const { message } = await here.platform.slash(slashCall(OPEN, "ines"));
    expect(message.isEphemeral).toBe(true);
    expect(message.text).toContain(`<#${thread().id}>`);
    expect(thread().type).toBe(channelType.publicThread);
    expect(card().text).toContain("my fish hide");
    expect(card().text).toContain("Nitrite with no ammonia fits a new tank");
    expect(card().pings).toEqual({ everyone: false, users: [], roles: [] });
    // Of the newcomer's own words nothing stands in the thread's name.
    expect(thread().name).toBe("Help 1: a question");
  });

  it("with nothing typed opens a form of five places, each of which may stay empty", async () => {
    const opened = await here.platform.slash(slashCall("/case open", "ines"));
    expect(opened.response.type).toBe(9);
    await here.platform.submitModal({ opened, fields: { trouble: "two are gasping at the top" } });
    expect(card().text).toContain("Do this now");
    expect(card().text).toContain("1\\. Give air");
  });

  it("from the menu under one's own message begins the thread at that message", async () => {
    const said = here.platform.say({ user: "ines", content: "help my tank smells and fish look sad" });
    const opened = await here.platform.contextMenu({ user: "ines", command: MENU, target: said });
    expect(opened.response.type).toBe(9);
    await here.platform.submitModal({ opened, fields: { worry: "help my tank smells and fish look sad" } });
    expect(thread().id).toBe(said.id);
  });

  it("from the menu under somebody else's message is theirs, and shows nothing of their own record", async () => {
    const said = here.platform.say({ user: "ines", content: "3 fish dead this morning what now" });
    await here.platform.contextMenu({ user: "bruno", command: MENU, target: said });
    expect(card().text).toContain("Do this now");
    const ines = `discord:${here.platform.user("ines").id}`;
    expect(here.club.store.records.help.visible({ member: ines as MemberId, club: undefined })).toHaveLength(
      1,
    );
    const deleted = await here.platform.slash(slashCall("/case delete case:1", "bruno"));
    expect(deleted.message.text).toContain("Only the one who opened");
  });

  it("goes on without the message it began at when that was deleted meanwhile", async () => {
    const said = here.platform.say({ user: "ines", content: "cloudy water since yesterday" });
    const opened = await here.platform.contextMenu({ user: "ines", command: MENU, target: said });
    here.platform.channel.messages.delete(said.id);
    await here.platform.submitModal({ opened, fields: { worry: "cloudy water since yesterday" } });
    expect(thread().id).not.toBe(said.id);
    expect(card().text).toContain("cloudy water since yesterday");
  });

  it("uses the thread that stands at the message already", async () => {
    const said = here.platform.say({ user: "ines", content: "cloudy water" });
    here.platform.world.addThread(here.platform.channel, "talk", channelType.publicThread, 1440, said.id);
    const opened = await here.platform.contextMenu({ user: "ines", command: MENU, target: said });
    await here.platform.submitModal({ opened, fields: { worry: "cloudy water" } });
    expect(card().text).toContain("cloudy water");
  });

  it("answers in plain sight where it may make no thread, and keeps that card up to date", async () => {
    here.platform.channel.botDenied = permission.createPublicThreads;
    const exchange = await here.platform.slash(slashCall(OPEN, "ines"));
    expect(here.platform.world.threadsOf(here.platform.guild)).toEqual([]);
    expect(exchange.response.isEphemeral).toBe(false);
    const shown = exchange.message;
    const opened = await here.platform.press({
      user: "bruno",
      message: shown,
      customId: buttonOf(shown, "Answer"),
    });
    await here.platform.submitModal({ opened, fields: { readings: "temp 26 °C" } });
    expect(shown.text).toContain("26 °C");
  });

  it("posts in the club's forum when one is set, with a tag where the forum wants one", async () => {
    const forum = here.platform.world.addChannel(here.platform.guild, "help", channelType.forum);
    forum.requiresTag = true;
    forum.tags.push({ id: here.platform.world.snowflake(), name: "new" });
    here.club.store.records.help.setHome(`discord:${here.platform.guild.id}` as ClubId, forum.id);
    await here.platform.slash(slashCall(OPEN, "ines"));
    expect(thread().parent?.id).toBe(forum.id);
    expect(thread().thread?.appliedTags).toHaveLength(1);
    expect(card().text).toContain("my fish hide");
  });

  it("in a private talk keeps the card for the asker alone", async () => {
    const { message } = await here.platform.slash(slashCall(OPEN, "ines", { context: 1, guild: null }));
    expect(message.text).toContain("my fish hide");
    expect(here.platform.world.threadsOf(here.platform.guild)).toEqual([]);
  });

  it("puts a person who is hurt before the animals, and opens nothing", async () => {
    const opened = await here.platform.slash(slashCall("/case open", "ines"));
    const said = await here.platform.submitModal({
      opened,
      fields: { worry: "I got an electric shock from the water and my fish are gasping" },
    });
    expect(said.message.text).toContain("People first");
    expect(here.platform.world.threadsOf(here.platform.guild)).toEqual([]);
  });
});

describe("the card", () => {
  beforeEach(async () => {
    await here.platform.slash(slashCall(OPEN, "ines"));
  });

  it("follows every fact, whoever adds it, on one and the same message", async () => {
    const before = card();
    const said = await press("Answer", { text: "all swim and eat", readings: "temp 25.5 °C" });
    expect(said.message.isEphemeral).toBe(true);
    expect(said.message.text).toContain("25.5 °C");
    expect(card()).toBe(before);
    expect(card().text).toContain("25.5 °C");
    await press("I did this", { text: "changed 20 % of the water" }, "ines");
    expect(card().text).toContain("Done just now: changed 20 % of the water");
  });

  it("takes a correction in place of what stood there", async () => {
    const opened = await here.platform.press({
      user: "ines",
      message: card(),
      customId: buttonOf(card(), "Correct"),
    });
    await here.platform.submitModal({
      opened,
      fields: { field: ["tank"], text: "120 L fresh water, 5 weeks" },
    });
    expect(card().text).toContain("120 L");
    expect(card().text).not.toContain("60 L");
  });

  it("raises the alarm in the thread when a new fact calls for it", async () => {
    await press("Answer", { text: "two are gasping at the top" });
    const open = messagesIn(thread()).filter(
      ({ isEphemeral, text }) => !isEphemeral && text.includes("Give air"),
    );
    expect(open).toHaveLength(2);
    // The same alarm is not raised twice.
    await press("Answer", { readings: "temp 25 °C" });
    expect(messagesIn(thread()).filter(({ isEphemeral }) => !isEphemeral)).toHaveLength(2);
  });

  it("shows its working to whoever asks, alone", async () => {
    const opened = await here.platform.press({
      user: "bruno",
      message: card(),
      customId: buttonOf(card(), "Show the working"),
    });
    expect(opened.message.isEphemeral).toBe(true);
    expect(opened.message.text).toContain("nitrite: “nitrite 0.5” read as 0.5 mg/L");
  });

  it("still works after a restart, and after 30 days", async () => {
    await here.restart();
    here.club.now += 40 * 86_400_000;
    here.club.store.clearBefore(new Date(here.club.now).toISOString());
    await press("Answer", { text: "all fine", readings: "nitrite 0.2" });
    expect(card().text).toContain("0.2 mg/L");
  });

  it("is posted anew when it was deleted, or may no longer be edited", async () => {
    const first = card();
    thread().messages.delete(first.id);
    await here.platform.slash(slashCall("/case add readings:temp 26 °C", "ines", { channel: thread() }));
    expect(card().id).not.toBe(first.id);
    expect(card().text).toContain("26 °C");
    const second = card();
    // 30046: too many edits of messages older than an hour.
    here.platform.faults.add({
      kind: "refuse",
      status: 400,
      code: 30046,
      method: "PATCH",
      route: new RegExp(`/messages/${second.id}$`),
    });
    await here.platform.slash(slashCall("/case add readings:nitrate 10", "ines", { channel: thread() }));
    expect(card().id).not.toBe(second.id);
    expect(card().text).toContain("nitrate 10");
  });

  it("opens an archived thread again to follow", async () => {
    const state = thread().thread;
    if (state === undefined) throw new Error("no thread");
    state.archived = true;
    await here.platform.slash(slashCall("/case add case:1 readings:temp 26 °C", "ines"));
    expect(state.archived).toBe(false);
    expect(card().text).toContain("26 °C");
  });

  it("says so when the thread is locked, and keeps the fact all the same", async () => {
    const state = thread().thread;
    if (state === undefined) throw new Error("no thread");
    state.archived = true;
    state.locked = true;
    const said = await here.platform.slash(slashCall("/case add case:1 readings:temp 26 °C", "ines"));
    expect(said.message.text).toContain("locked");
    const shown = await here.platform.slash(slashCall("/case show case:1", "bruno"));
    expect(shown.message.text).toMatch(/locked|26 °C/);
  });

  it("goes when its newcomer is erased", async () => {
    const erase = await here.platform.slash(slashCall("/erase", "ines"));
    const before = card();
    await here.platform.press({
      user: "ines",
      message: erase.message,
      customId: buttonOf(erase.message, "Erase everything"),
    });
    expect(before.text).not.toContain("my fish hide");
    expect(before.text).toContain("deleted at the wish");
    expect(before.buttons).toEqual([]);
  });

  it("belongs to its club: another server cannot see or change it", async () => {
    const other = here.platform.world.addGuild("Westmoor Aquarists");
    const channel = here.platform.world.addChannel(other, "talk");
    const said = await here.platform.slash(
      slashCall("/case show case:1", "bruno", { guild: other, channel }),
    );
    expect(said.message.text).not.toContain("my fish hide");
  });
});

describe("a thread without an answer", () => {
  const HOUR = 3_600_000;

  beforeEach(async () => {
    await here.platform.slash(slashCall("/case duty set:on", "bruno"));
    await here.platform.slash(slashCall(OPEN, "ines"));
  });

  function told(user = "bruno"): readonly Message[] {
    return messagesIn(here.platform.world.dmWithBot(here.platform.user(user)));
  }

  it("is told to the helper on duty after 12 hours, outside quiet hours, once", async () => {
    here.club.now += 11 * HOUR;
    await here.raise();
    expect(told()).toHaveLength(0);
    // Noon and 12 hours is midnight: quiet.
    here.club.now += 1.5 * HOUR;
    await here.raise();
    expect(told()).toHaveLength(0);
    here.club.now += 8 * HOUR;
    await here.raise();
    await here.raise();
    expect(told()).toHaveLength(1);
    expect(told()[0]?.text).toContain(`<#${thread().id}>`);
    expect(told()[0]?.text).not.toContain("my fish hide");
  });

  it("is not told once a person has written in it, and the newcomer's own words are no answer", async () => {
    here.platform.say({ user: "ines", content: "hello?", channel: thread() });
    here.platform.say({ user: "clara", content: "I am here", channel: thread() });
    const { help } = here.club.store.records;
    const viewer = { member: `discord:${here.platform.user("ines").id}` as MemberId, club: undefined };
    await here.platform.until(() => help.visible(viewer)[0]?.answeredAt !== undefined);
    here.club.now += 21 * HOUR;
    await here.raise();
    expect(told()).toHaveLength(0);
  });

  it("is asked about in the thread, without a ping, where the helper takes no direct messages", async () => {
    here.platform.user("bruno").refusesDms = true;
    here.club.now += 21 * HOUR;
    await here.raise();
    const last = messagesIn(thread()).at(-1);
    expect(last?.text).toContain("Could a helper look in?");
    expect(last?.pings).toEqual({ everyone: false, users: [], roles: [] });
  });

  it("is reminded of a step on its day, once", async () => {
    await here.platform.slash(
      slashCall("/case advise case:1 step:feed half again:in 2 days", "bruno", { channel: thread() }),
    );
    const reminders = () =>
      messagesIn(thread()).filter(({ text }) => text.includes("Time to look at step 1"));
    await here.raise();
    expect(reminders()).toHaveLength(0);
    here.club.now += 49 * HOUR;
    await here.raise();
    await here.raise();
    expect(reminders()).toHaveLength(1);
  });
});
