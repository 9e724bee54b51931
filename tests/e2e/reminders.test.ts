import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buttonOf, slashCall } from "../support/discord-club.ts";
import { channelType } from "../support/loopback/index.ts";
import { directMessages, openReminderClub, type ReminderClub } from "../support/reminder-club.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

let here: ReminderClub;
beforeEach(async () => {
  here = await openReminderClub();
  await say("/settings zone:Europe/Lisbon");
  await say("/tank add name:Lagoon kind:marine containers:display 1000 L measured");
  await say("/tank note salinity:35 ppt");
  await say("/plan remind quiet:never");
});
afterEach(async () => {
  await here.close();
  expect(here.club.defects).toEqual([]);
});

async function say(line: string, user = "ines"): Promise<string> {
  return (await (await here.platform.slash(slashCall(line, user))).final()).text;
}

const sent = (user = "ines") => directMessages(here.platform, user);

async function press(label: string, user = "ines"): Promise<string> {
  const message = sent(user).at(-1);
  if (message === undefined) throw new Error("no reminder was sent");
  const pressed = await here.platform.press({
    user,
    message,
    customId: buttonOf(message, label),
  });
  return pressed.message.text;
}

describe("a plan that falls due", () => {
  it("comes as a direct message with its amount, once, and done logs it", async () => {
    expect(await say("/plan add task:water change 30 % when:every 7 days 19:00")).toContain(
      "Water change: 30 %",
    );
    await here.pass(DAY);
    expect(sent()).toHaveLength(1);
    // 300 L × 1.023 kg/L × 35.165 g/kg = 10.8 kg of dry salt (Millero & Poisson 1981 density, from memory);
    // a mix gives 0.85 to 0.95 of its weight as salt (common practice), so 11.4 to 12.7 kg of it.
    expect(sent()[0]?.text).toMatch(/Lagoon: water change: 30 %/);
    expect(sent()[0]?.text).toMatch(/300 L .*of new water at 35 ppt: (11\.[4-9]|12\.[0-7]) kg/);
    expect(sent()[0]?.pings).toEqual({ everyone: false, users: [], roles: [] });
    await here.clockwork.tick();
    await here.pass(HOUR);
    expect(sent()).toHaveLength(1);
    expect(await press("Done")).toContain("Water change: 30 %");
    expect(await say("/readings")).toContain("water change: 30 %");
    expect(await press("Done")).toContain("done already");
    expect((await say("/readings")).match(/water change: 30 %/g)).toHaveLength(1);
  });

  it("is told again after Later, and not after Skip", async () => {
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    await here.pass(2 * DAY);
    expect(await press("Later")).toContain("I ask again");
    await here.pass(HOUR);
    expect(sent()).toHaveLength(1);
    await here.pass(HOUR);
    expect(sent()).toHaveLength(2);
    expect(await press("Skip")).toContain("Skipped");
    await here.pass(DAY);
    expect(sent()).toHaveLength(2);
    expect(await say("/readings")).not.toContain("clean the glass");
  });

  it("is gathered with all else that is due, and missed ones are named, not spammed", async () => {
    await say("/plan add task:feed when:every day 12:00");
    await say("/plan add task:clean the glass when:every day 12:00");
    // As after a power cut of three days.
    await here.pass(4 * DAY);
    expect(sent()).toHaveLength(1);
    expect(sent()[0]?.text).toContain("2 reminders");
    expect(sent()[0]?.text).toMatch(/Missed before it: .* and /);
  });

  it("cannot be answered by somebody else", async () => {
    await say("/plan remind where:here");
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    await here.pass(2 * DAY);
    const message = [...here.platform.channel.messages.values()].find(({ text }) =>
      text.includes("clean the glass"),
    );
    if (message === undefined) throw new Error("nothing was sent to the channel");
    const pressed = await here.platform.press({
      user: "mallory",
      message,
      customId: buttonOf(message, "Done"),
    });
    expect(pressed.message.text).toContain("There is no task");
    expect(pressed.response.isEphemeral).toBe(true);
    expect(await say("/plan due")).toContain("clean the glass");
  });
});

describe("many at once", () => {
  it("come in one message that the platform takes, with buttons for the first and a way to the rest", async () => {
    for (const what of ["a", "b", "c", "d", "e", "f"])
      await say(`/plan add task:look after ${what}: ${"very long words ".repeat(6)} when:every day 12:00`);
    await here.pass(DAY);
    expect(sent()).toHaveLength(1);
    expect(sent()[0]?.text).toContain("6 reminders");
    expect(sent()[0]?.text).toContain("2 more can be answered with /plan due");
    expect(sent()[0]?.buttons.filter(({ label }) => label.startsWith("Done"))).toHaveLength(4);
    expect(await press("What is due")).toContain("6 tasks due");
  });
});

describe("quiet hours", () => {
  it("hold back what can wait until the morning, and gather it; a pump that must come back cannot wait", async () => {
    // The story begins at ten in the morning, Lisbon being on UTC in March.
    await say("/plan remind quiet:22:00-7:00");
    await say("/plan add task:clean the glass when:every day 23:00");
    await say("/plan add task:feed when:every day 5:00");
    await here.pass(13.5 * HOUR);
    expect(sent()).toHaveLength(0);
    await say("/plan off device:return pump for:20 min because:feeding");
    await here.pass(0.5 * HOUR);
    expect(sent().at(-1)?.text).toContain("return pump back on");
    expect(sent()).toHaveLength(1);
    await press("Done");
    await here.pass(7 * HOUR);
    expect(sent()).toHaveLength(2);
    expect(sent().at(-1)?.text).toContain("2 reminders");
    expect(sent().at(-1)?.text).toContain("Due Wed 23:00; this is 8 hours late");
  });
});

describe("a channel or thread of one's choice", () => {
  it("gets the reminders when it was asked for there, and pings nobody", async () => {
    const thread = here.platform.world.addThread(
      here.platform.channel,
      "Lagoon's diary",
      channelType.publicThread,
      1440,
    );
    await here.platform.slash(slashCall("/plan remind where:here", "ines", { channel: thread }));
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    await here.pass(2 * DAY);
    const told = [...thread.messages.values()].filter(({ text }) => text.includes("Due Thu 12:00"));
    expect(told).toHaveLength(1);
    expect(told[0]?.pings).toEqual({ everyone: false, users: [], roles: [] });
    expect(sent()).toHaveLength(0);
  });
});

describe("something switched off", () => {
  it("is asked for until it is back on, and stands in the tank's state meanwhile", async () => {
    expect(await say("/plan off device:skimmer for:48 h because:bacteria added")).toContain("Back on");
    expect(await say("/plan list")).toMatch(/skimmer off since .*due on/i);
    expect(await say("/tank show")).toMatch(/skimmer off since .*due on/i);
    await here.pass(47 * HOUR);
    expect(sent()).toHaveLength(0);
    await here.pass(1.1 * HOUR);
    expect(sent()).toHaveLength(1);
    expect(sent()[0]?.text).toContain("skimmer back on");
    expect(sent()[0]?.buttons.map(({ label }) => label)).not.toContain("Skip");
    await here.pass(3.1 * HOUR);
    expect(sent()).toHaveLength(2);
    await here.pass(3.1 * HOUR);
    expect(sent()).toHaveLength(3);
    await press("Done");
    await here.pass(2 * DAY);
    expect(sent()).toHaveLength(3);
    expect(await say("/plan list")).not.toContain("off since");
    expect(await say("/readings")).toContain("skimmer on");
  });

  it("that was only planned is made with both halves, and counts from when it really went off", async () => {
    await say("/plan off device:return pump for:20 min because:feeding when:tomorrow 18:00");
    await here.pass(DAY + 12 * HOUR);
    expect(sent()[0]?.text).toContain("return pump off");
    expect(sent()[0]?.text).toContain("keep air running");
    expect(await say("/plan list")).toContain("not confirmed");
  });
});

describe("direct messages that are closed", () => {
  it("are replaced by the channel where it was planned", async () => {
    here.platform.user("ines").refusesDms = true;
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    await here.pass(2 * DAY);
    const inChannel = [...here.platform.channel.messages.values()].filter(
      ({ text }) => text.includes("clean the glass") && text.includes("Due"),
    );
    expect(inChannel).toHaveLength(1);
    expect(inChannel[0]?.pings).toEqual({ everyone: false, users: [], roles: [] });
  });

  it("and nowhere else to go: it is told once they open again, and stands in the list till then", async () => {
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    await say("/plan remind where:direct message only");
    here.platform.user("ines").refusesDms = true;
    await here.pass(2 * DAY);
    expect(await say("/plan due")).toContain("clean the glass");
    here.platform.user("ines").refusesDms = false;
    await here.pass(6 * HOUR + 60_000);
    expect(sent()).toHaveLength(1);
    expect(sent()[0]?.text).toMatch(/late/);
  });
});

describe("the platform at its worst", () => {
  it.each([
    { kind: "429", retryAfterS: 0.05 } as const,
    { kind: "5xx" } as const,
    { kind: "reset-after" } as const,
    { kind: "reset-before" } as const,
    { kind: "close-after" } as const,
  ])("$kind: one reminder, once", async (fault) => {
    await say("/plan add task:clean the glass when:tomorrow 12:00");
    here.platform.faults.add({ ...fault, route: /^\/channels\/\d+\/messages$/, method: "POST" });
    await here.pass(2 * DAY);
    await here.pass(HOUR);
    await here.pass(HOUR);
    expect(sent()).toHaveLength(1);
  });
});
