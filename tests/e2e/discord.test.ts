import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { commands } from "../../commands/index.ts";
import { registerCommands, startDiscord, TokenRefused } from "../../src/discord/index.ts";
import { registrationOf } from "../../src/discord/registration.ts";
import { buttonOf, type DiscordClub, openDiscordClub, saidIn, slashCall } from "../support/discord-club.ts";
import { startPlatform } from "../support/loopback/index.ts";

let here: DiscordClub;
beforeEach(async () => {
  here = await openDiscordClub();
});
afterEach(async () => {
  await here.close();
  expect(here.club.defects).toEqual([]);
});

const MIX = "/salt mix volume:100 L salinity:35 ppt temperature:25 °C";

describe("an answer", () => {
  it("comes at once, for the asker alone, with its number first, and pings nobody", async () => {
    const exchange = await here.platform.slash(slashCall(MIX, "ines"));
    expect(exchange.response.type).toBe(4);
    expect(exchange.response.isEphemeral).toBe(true);
    // 4.0 kg: 3598.6 g of anhydrous salt (gsw 3.6.16 and mass balance) over a yield of 0.90.
    expect(exchange.message.text).toMatch(/# 4\.00 kg/);
    expect(exchange.message.pings).toEqual({ everyone: false, users: [], roles: [] });
  });

  it("is for all to see when asked so", async () => {
    const exchange = await here.platform.slash(slashCall(`${MIX} show:everyone here`, "ines"));
    expect(exchange.response.isEphemeral).toBe(false);
  });

  it("shows its working, with each constant and its source, to the asker", async () => {
    const { message } = await here.platform.slash(slashCall(MIX, "ines"));
    const working = await here.platform.press({
      user: "ines",
      message,
      customId: buttonOf(message, "Show the working"),
    });
    expect(working.response.isEphemeral).toBe(true);
    expect(working.message.text).toContain("Millero & Poisson");
    expect(working.message.text).toContain("volume: 100 L → 100 L");
  });

  it("can be posted to the channel, where others may open its working", async () => {
    const { message } = await here.platform.slash(slashCall(MIX, "ines"));
    const posted = await here.platform.press({ user: "ines", message, customId: buttonOf(message, "Post") });
    expect(posted.response.isEphemeral).toBe(false);
    expect(posted.message.text).toContain("4.00 kg");
    const opened = await here.platform.press({
      user: "bruno",
      message: posted.message,
      customId: buttonOf(posted.message, "Show the working"),
    });
    expect(opened.message.text).toContain("Millero & Poisson");
  });
});

describe("a question", () => {
  it("is answered by a button, and the answer is remembered", async () => {
    const asked = await here.platform.slash(slashCall("/salt mix volume:30 gal salinity:35 ppt", "ines"));
    expect(asked.message.buttons.map(({ label }) => label)).toHaveLength(3);
    const answered = await here.platform.press({
      user: "ines",
      message: asked.message,
      customId: buttonOf(asked.message, "30 US gal"),
    });
    expect(answered.message.text).toContain("114 L");
    const again = await here.platform.slash(slashCall("/salt mix volume:30 gal salinity:35 ppt", "ines"));
    expect(again.message.text).toContain("114 L");
  });

  it("is answered in words through a form", async () => {
    const asked = await here.platform.slash(slashCall("/salt mix volume:100 L", "ines"));
    expect(asked.message.text).toContain("To which salinity?");
    const opened = await here.platform.press({
      user: "ines",
      message: asked.message,
      customId: buttonOf(asked.message, "Type it"),
    });
    const answered = await here.platform.submitModal({ opened, fields: { text: "35 ppt" } });
    expect(answered.message.text).toContain("kg");
  });

  it("with many choices becomes a menu", async () => {
    const asked = await here.platform.slash(
      slashCall(
        "/stocking load livestock:1 grouper 60 cm volume:2000 L salinity:34 ppt temperature:26 °C",
        "ines",
      ),
    );
    const customId = JSON.stringify(asked.message.components).match(/"custom_id":"(menu:[^"]+)"/)?.[1] ?? "";
    const picked = await here.platform.select({
      user: "ines",
      message: asked.message,
      customId,
      values: ["1"],
    });
    expect(picked.message.text).toContain("nitrogen");
  });

  it("outlives a restart, as do the buttons of an answer", async () => {
    const asked = await here.platform.slash(slashCall("/salt mix volume:30 gal salinity:35 ppt", "ines"));
    const { message } = await here.platform.slash(slashCall(MIX, "ines"));
    await here.restart();
    const answered = await here.platform.press({
      user: "ines",
      message: asked.message,
      customId: buttonOf(asked.message, "30 US gal"),
    });
    expect(answered.message.text).toContain("114 L");
    const working = await here.platform.press({
      user: "ines",
      message,
      customId: buttonOf(message, "Show the working"),
    });
    expect(working.message.text).toContain("Millero & Poisson");
  });

  it("that has been cleared away says so kindly", async () => {
    const { message } = await here.platform.slash(slashCall(MIX, "ines"));
    here.club.store.clearBefore("9999-01-01T00:00:00.000Z");
    const working = await here.platform.press({
      user: "ines",
      message,
      customId: buttonOf(message, "Show the working"),
    });
    expect(working.message.text).toContain("too old");
    expect(working.response.isEphemeral).toBe(true);
  });

  it("cannot be answered by somebody else", async () => {
    const asked = await here.platform.slash(
      slashCall("/salt mix volume:30 gal salinity:35 ppt show:everyone here", "ines"),
    );
    const { id } = asked.message;
    expect(id).not.toBe("");
    const { member, index } = { member: "discord:1", index: 0 };
    const told = await here.club.app.choose("id0", member as never, index);
    expect(told.outcome.title).toBe("That question has gone");
  });
});

describe("while typing", () => {
  it("units and the member's own tank names are offered", async () => {
    await here.platform.slash(
      slashCall("/tank add name:Lagoon kind:marine containers:box 200 L measured", "ines"),
    );
    const units = await here.platform.autocomplete({
      ...slashCall("/salt mix", "ines"),
      options: { volume: "75 g" },
      focused: "volume",
    });
    expect(units.choices.map(({ value }) => value)).toContain("75 US gal");
    const tanks = await here.platform.autocomplete({
      ...slashCall("/tank show", "ines"),
      options: { tank: "la" },
      focused: "tank",
    });
    expect(tanks.choices.map(({ value }) => value)).toEqual(["Lagoon"]);
    const others = await here.platform.autocomplete({
      ...slashCall("/tank show", "bruno"),
      options: { tank: "la" },
      focused: "tank",
    });
    expect(others.choices).toEqual([]);
  });
});

describe("the platform at its worst", () => {
  it("a late event is let go without harm", async () => {
    here.platform.interactionWindowMs = 40;
    here.platform.eventDelayMs = 80;
    const missed = await here.platform.slash(slashCall(MIX, "ines"));
    expect(missed.isAnswered).toBe(false);
    here.platform.interactionWindowMs = 3000;
    here.platform.eventDelayMs = 0;
    const next = await here.platform.slash(slashCall(MIX, "ines"));
    expect(next.message.text).toContain("4.00 kg");
    await here.platform.until(() => here.log.some((line) => line.startsWith("too late")));
  });

  it("a rate limit is waited out", async () => {
    here.platform.faults.add({ kind: "429", route: /interactions/, retryAfterS: 0.2 });
    const exchange = await here.platform.slash(slashCall(MIX, "ines"));
    expect(exchange.message.text).toContain("4.00 kg");
  });

  it("a server error is tried again", async () => {
    here.platform.faults.add({ kind: "5xx", route: /interactions/, times: 2 });
    const exchange = await here.platform.slash(slashCall(MIX, "ines"));
    expect(exchange.message.text).toContain("4.00 kg");
  });

  it("a reset after the work does not answer twice", async () => {
    here.platform.faults.add({ kind: "reset-after", route: /interactions/ });
    const exchange = await here.platform.slash(slashCall(MIX, "ines"));
    expect(exchange.messages).toHaveLength(1);
  });

  it("a dropped connection is resumed, and what came meanwhile is answered", async () => {
    here.platform.pauseGateway();
    here.platform.dropGateway({ resumable: true });
    const open = here.platform.sendSlash(slashCall(MIX, "ines"));
    here.platform.resumeGateway();
    await open.until((exchange) => exchange.isAnswered, 10_000);
    expect(open.message.text).toContain("4.00 kg");
  });

  it("an event delivered twice is carried out once", async () => {
    await here.platform.slash(
      slashCall("/tank add name:Lagoon kind:marine containers:box 200 L measured", "ines"),
    );
    here.platform.deliverTwice = true;
    await here.platform.slash(slashCall("/log no3 20", "ines"));
    here.platform.deliverTwice = false;
    const shown = await saidIn(await here.platform.slash(slashCall("/readings", "ines")));
    expect(shown.match(/nitrate 20/g)).toHaveLength(1);
  });

  it("a token that is dead at the start is refused in a sentence", async () => {
    const platform = await startPlatform();
    const start = startDiscord({
      app: here.club.app,
      token: "another-token-altogether",
      apiUrl: platform.apiUrl,
      guildId: undefined,
      isOwnHost: () => true,
      isNews: () => true,
      log: () => undefined,
    });
    await expect(start).rejects.toBeInstanceOf(TokenRefused);
    await platform.close();
  });
});

describe("everywhere", () => {
  it("works in a direct message and as a user install where the bot is no member", async () => {
    const direct = await here.platform.slash(slashCall(MIX, "ines", { guild: null, context: 1 }));
    expect(direct.message.text).toContain("4.00 kg");
    const elsewhere = await here.platform.slash(
      slashCall(MIX, "ines", { guild: null, context: 2, userInstall: true }),
    );
    expect(elsewhere.message.text).toContain("4.00 kg");
  });

  it("asks for no privileged intent and registers what the platform accepts", () => {
    // The loopback checks names, lengths, counts and the 8,000 characters of each command on registration.
    expect(here.platform.requestsTo(/commands$/, "PUT").map(({ status }) => status)).toEqual([200]);
    expect(registrationOf(commands)).toHaveLength(commands.length);
  });
});

describe("hostile text", () => {
  const hostile = [
    "@everyone",
    "<@123456789012345678> <@&123456789012345678> <#1>",
    "```js\nprocess.exit()\n```",
    "[click](https://example.org) **bold** # big",
    "‮reversed‬ ​",
    "'; DROP TABLE tank; --",
    "$" + "{process.env.DISCORD_TOKEN}",
    "x".repeat(2000),
    "1e309 L",
    "NaN",
    "-5 L",
    "５０ Ｌ",
  ];
  it.each(hostile)("%s", async (text) => {
    for (const line of [
      { command: "salt", subcommand: "mix", options: { volume: text, salinity: text } },
      { command: "tank", subcommand: "add", options: { name: text, kind: "marine", containers: text } },
      { command: "tank", subcommand: "show", options: { tank: text } },
      { command: "log", options: { line: text, when: text } },
      {
        command: "dose",
        subcommand: "together",
        options: { first: text, second: "vinegar", show: "everyone here" },
      },
    ]) {
      const exchange = await here.platform.slash({ user: "mallory", ...line });
      const message = await exchange.final();
      expect(message.pings).toEqual({ everyone: false, users: [], roles: [] });
      expect(message.text).not.toContain("fault of the bot");
    }
  });
});

it("one server gets the commands without the places that only commands for all may name", async () => {
  const { platform, club } = here;
  const parts = { app: club.app, token: platform.token, apiUrl: platform.apiUrl, guildId: platform.guild.id };
  await registerCommands(parts, platform.applicationId);
  const sent = JSON.stringify(platform.requestsTo(/guilds\/.*\/commands$/, "PUT").at(-1)?.body);
  expect(sent).toContain('"name":"salt"');
  expect(sent).not.toContain("integration_types");
});
