/** The loopback platform against the real client library: what it promises must be what a bot meets.
 *  Codes, limits and lifecycles: Discord's documentation, as of July–August 2026. */

import {
  ActionRowBuilder,
  ApplicationCommandOptionType,
  ButtonBuilder,
  ButtonStyle,
  type ChatInputCommandInteraction,
  Client,
  DiscordAPIError,
  GatewayIntentBits,
  type Interaction,
  MessageFlags,
  ModalBuilder,
  REST,
  Routes,
  TextInputBuilder,
  TextInputStyle,
} from "discord.js";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import {
  channelType,
  measureBot,
  NotOffered,
  type Platform,
  permission,
  runLoad,
  startPlatform,
  typescriptEntry,
} from "../../support/loopback/index.ts";
import { spreadOf } from "../../support/loopback/load.ts";

const COMMANDS = [
  {
    name: "mix",
    description: "Mixes salt water",
    options: [
      {
        name: "litres",
        description: "How much",
        type: ApplicationCommandOptionType.Number,
        required: true,
        min_value: 1,
      },
      {
        name: "tank",
        description: "Which tank",
        type: ApplicationCommandOptionType.String,
        autocomplete: true,
      },
      { name: "log", description: "A table of readings", type: ApplicationCommandOptionType.Attachment },
    ],
    integration_types: [0, 1],
    contexts: [0, 1, 2],
  },
  {
    name: "tank",
    description: "Your tanks",
    options: [
      {
        name: "add",
        description: "Adds one",
        type: ApplicationCommandOptionType.Subcommand,
        options: [
          {
            name: "name",
            description: "Its name",
            type: ApplicationCommandOptionType.String,
            required: true,
          },
        ],
      },
    ],
  },
  { name: "Explain this", type: 3 },
];

let platform: Platform;
const clients: Client[] = [];

beforeEach(async () => {
  platform = await startPlatform();
});

afterEach(async () => {
  for (const client of clients.splice(0)) await client.destroy();
  await platform.close();
});

/** Logs a real client in, registers the commands, and hands every interaction to `answer`. */
async function startBot(
  answer: (interaction: Interaction) => Promise<unknown>,
): Promise<{ client: Client; failures: unknown[] }> {
  const failures: unknown[] = [];
  const client = new Client({
    intents: [GatewayIntentBits.Guilds],
    rest: { api: platform.apiUrl },
    // The library waits five seconds between two identifies; nothing here depends on that pause.
    ws: { buildIdentifyThrottler: async () => ({ waitForIdentify: async () => {} }) },
  });
  clients.push(client);
  client.on("error", (error) => failures.push(error));
  client.on("interactionCreate", (interaction) => {
    answer(interaction).catch((error: unknown) => failures.push(error));
  });
  const ready = new Promise((resolve) => client.once("clientReady", resolve));
  await client.login(platform.token);
  await ready;
  await client.rest.put(Routes.applicationCommands(platform.applicationId), { body: COMMANDS });
  return { client, failures };
}

function slashOnly(answer: (interaction: ChatInputCommandInteraction) => Promise<unknown>) {
  return async (interaction: Interaction) => {
    if (interaction.isChatInputCommand()) await answer(interaction);
  };
}

const callMix = { user: "Marlow", command: "mix", options: { litres: 40 } };
const codeOf = (error: unknown) => (error instanceof DiscordAPIError ? error.code : error);

describe("the ordinary course", () => {
  it("logs in, learns the guild, registers, and answers a slash command with typed options", async () => {
    const { client } = await startBot(
      slashOnly(async (interaction) => {
        await interaction.reply(
          `${interaction.options.getNumber("litres", true) / 2} g for ${interaction.user.username}`,
        );
      }),
    );
    expect(client.guilds.cache.get(platform.guild.id)?.name).toBe(platform.guild.name);
    expect(platform.commands.list().map((command) => command["name"])).toEqual([
      "mix",
      "tank",
      "Explain this",
    ]);

    const exchange = await platform.slash(callMix);
    expect(exchange.response).toMatchObject({ type: 4, isEphemeral: false, isDeferred: false });
    expect(exchange.message.content).toBe("20 g for Marlow");
    expect(exchange.ackMs).toBeGreaterThan(0);
    expect(exchange.ackMs).toBeLessThan(3000);
  });

  it("shows a deferral first and its edit later, follow-ups after it, and keeps it ephemeral", async () => {
    const { failures } = await startBot(
      slashOnly(async (interaction) => {
        await interaction.deferReply({ flags: MessageFlags.Ephemeral });
        await interaction.editReply({
          embeds: [{ title: "Mixed", fields: [{ name: "Salt", value: "1.4 kg" }] }],
        });
        await interaction.followUp("And stir.");
      }),
    );
    const exchange = await platform.slash({ ...callMix, user: "Ines", locale: "de" });
    expect(exchange.response).toMatchObject({ type: 5, isDeferred: true, isEphemeral: true });
    const message = await exchange.final();
    expect(message.text).toBe("Mixed\nSalt\n1.4 kg");
    expect(message.isEphemeral).toBe(true);
    await exchange.until(({ messages }) => messages.length === 2);
    expect(exchange.messages[1]).toMatchObject({ content: "And stir.", isEphemeral: false });
    expect(failures).toEqual([]);
  });

  it("nests subcommands, and offers only what is registered", async () => {
    await startBot(
      slashOnly(async (interaction) => {
        await interaction.reply(
          `${interaction.options.getSubcommand()} ${interaction.options.getString("name", true)}`,
        );
      }),
    );
    const exchange = await platform.slash({
      user: "Marlow",
      command: "tank",
      subcommand: "add",
      options: { name: "Cube" },
    });
    expect(exchange.message.content).toBe("add Cube");
    await expect(platform.slash({ user: "Marlow", command: "tank" })).rejects.toThrow(NotOffered);
    await expect(platform.slash({ ...callMix, options: {} })).rejects.toThrow(/"litres" is required/);
    await expect(platform.slash({ ...callMix, options: { litres: 0.5 } })).rejects.toThrow(/between 1 and/);
    await expect(
      platform.slash({ user: "Marlow", guild: null, userInstall: true, command: "tank", subcommand: "add" }),
    ).rejects.toThrow(/not offered to this install/);
  });

  it("tells the three contexts apart, and who installed the app", async () => {
    await startBot(
      slashOnly(async (interaction) => {
        const { guildId, userId } = interaction.authorizingIntegrationOwners;
        await interaction.reply(JSON.stringify([interaction.context, guildId, userId]));
      }),
    );
    const user = platform.user("Ines");
    const seenIn = async (place: object) =>
      JSON.parse((await platform.slash({ ...callMix, user, ...place })).message.content);
    expect(await seenIn({})).toEqual([0, platform.guild.id, null]);
    expect(await seenIn({ guild: null })).toEqual([1, "0", null]);
    expect(await seenIn({ context: 2, userInstall: true })).toEqual([2, null, user.id]);
  });

  it("completes an option with what was typed so far", async () => {
    await startBot(async (interaction) => {
      if (!interaction.isAutocomplete()) return;
      const typed = interaction.options.getFocused();
      await interaction.respond(
        ["Cube", "Canyon"].filter((n) => n.startsWith(typed)).map((n) => ({ name: n, value: n })),
      );
    });
    const exchange = await platform.autocomplete({ ...callMix, focused: "tank", options: { tank: "Cu" } });
    expect(exchange.choices).toEqual([{ name: "Cube", value: "Cube" }]);
  });

  it("presses a button, and the message changes", async () => {
    await startBot(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        const again = new ButtonBuilder()
          .setCustomId("again")
          .setLabel("Again")
          .setStyle(ButtonStyle.Primary);
        const row = new ActionRowBuilder<ButtonBuilder>().addComponents(again);
        await interaction.reply({ content: "first", components: [row] });
      }
      if (interaction.isButton()) await interaction.update({ content: "second", components: [] });
    });
    const first = await platform.slash(callMix);
    expect(first.message.buttons).toMatchObject([{ label: "Again", customId: "again", isDisabled: false }]);
    const second = await platform.press({ user: "Ines", message: first.message, customId: "again" });
    expect(second.response.type).toBe(7);
    expect(first.message.content).toBe("second");
    await expect(platform.press({ user: "Ines", message: first.message, customId: "again" })).rejects.toThrow(
      NotOffered,
    );
  });

  it("opens a modal and submits it", async () => {
    await startBot(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        const input = new TextInputBuilder()
          .setCustomId("note")
          .setLabel("Note")
          .setStyle(TextInputStyle.Short);
        await interaction.showModal(
          new ModalBuilder()
            .setCustomId("notes")
            .setTitle("A note")
            .addComponents(new ActionRowBuilder<TextInputBuilder>().addComponents(input)),
        );
      }
      if (interaction.isModalSubmit()) await interaction.reply(interaction.fields.getTextInputValue("note"));
    });
    const opened = await platform.slash(callMix);
    expect(opened.modal["title"]).toBe("A note");
    await expect(platform.submitModal({ opened })).rejects.toThrow(/"note" is required/);
    const submitted = await platform.submitModal({ opened, fields: { note: "kept warm" } });
    expect(submitted.message.content).toBe("kept warm");
  });

  it("takes files in as options and as uploads, byte for byte", async () => {
    await startBot(
      slashOnly(async (interaction) => {
        const log = interaction.options.getAttachment("log", true);
        const bytes = Buffer.from(await (await fetch(log.url)).arrayBuffer());
        await interaction.reply({ files: [{ attachment: bytes, name: "copy.csv", description: "A copy" }] });
      }),
    );
    const log = { name: "log.csv", data: "day,nitrate\n1,5\n", contentType: "text/csv" };
    const exchange = await platform.slash({ ...callMix, options: { litres: 1, log } });
    const [file] = exchange.message.attachments;
    expect(file).toMatchObject({ filename: "copy.csv", description: "A copy" });
    expect(Buffer.from(file?.bytes ?? []).toString()).toBe("day,nitrate\n1,5\n");
  });

  it("runs a message command on a member's message", async () => {
    await startBot(async (interaction) => {
      if (interaction.isMessageContextMenuCommand())
        await interaction.reply(`On: ${interaction.targetMessage.content}`);
    });
    const target = platform.say({ user: "Ines", content: "my snails float" });
    const exchange = await platform.contextMenu({ user: "Marlow", command: "Explain this", target });
    expect(exchange.message.content).toBe("On: my snails float");
  });
});

describe("the less ordinary course", () => {
  const raw = (interaction: Interaction, type: number, data: object) =>
    interaction.client.rest.post(Routes.interactionCallback(interaction.id, interaction.token), {
      body: { type, data },
      auth: false,
    });
  const select = (type: number, more: object) => ({ type, custom_id: `s${type}`, ...more });

  it("chooses in selects: listed texts, and people with what is known of them", async () => {
    const options = ["reef", "fresh"].map((value) => ({ label: value, value }));
    await startBot(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        const rows = [select(3, { options, min_values: 1, max_values: 2 }), select(5, {})];
        await raw(interaction, 4, {
          content: "?",
          components: rows.map((inner) => ({ type: 1, components: [inner] })),
        });
      }
      if (interaction.isStringSelectMenu()) await interaction.reply(interaction.values.join(" and "));
      if (interaction.isUserSelectMenu()) await interaction.reply(`${interaction.users.first()?.username}`);
    });
    const { message } = await platform.slash(callMix);
    const chosen = await platform.select({
      user: "Ines",
      message,
      customId: "s3",
      values: ["reef", "fresh"],
    });
    expect(chosen.message.content).toBe("reef and fresh");
    const ines = platform.user("Ines");
    expect(
      (await platform.select({ user: "Ines", message, customId: "s5", values: [ines] })).message.content,
    ).toBe("Ines");
    const brackish = { user: "Ines", message, customId: "s3", values: ["brackish"] };
    await expect(platform.select(brackish)).rejects.toThrow(/no option/);
    await expect(platform.press({ user: "Ines", message, customId: "s3" })).rejects.toThrow(/no button/);
  });

  it("submits labelled modal inputs: texts, lists and files", async () => {
    await startBot(async (interaction) => {
      if (interaction.isChatInputCommand()) {
        const label = (component: object) => ({ type: 18, label: "Label", component });
        await raw(interaction, 9, {
          custom_id: "m",
          title: "Readings",
          components: [
            { type: 10, content: "Tell us." },
            label({ type: 4, custom_id: "note", style: 2, max_length: 10 }),
            label(select(3, { options: [{ label: "reef", value: "reef" }] })),
            label({ type: 19, custom_id: "file", min_values: 0, required: false }),
          ],
        });
      }
      if (interaction.isModalSubmit()) {
        const { fields } = interaction;
        const files = fields.getUploadedFiles("file");
        const parts = [
          fields.getTextInputValue("note"),
          fields.getStringSelectValues("s3").join(),
          files?.first()?.name,
        ];
        await interaction.reply(parts.join(" "));
      }
    });
    const opened = await platform.slash(callMix);
    const file = [{ name: "log.csv", data: "x" }];
    const submitted = await platform.submitModal({ opened, fields: { note: "hello", s3: ["reef"], file } });
    expect(submitted.message.content).toBe("hello reef log.csv");
    const tooLong = { note: "x".repeat(11), s3: ["reef"] };
    await expect(platform.submitModal({ opened, fields: tooLong })).rejects.toThrow(/between 0 and 10/);
  });

  it("sets components v2 by the edit of a deferral, and keeps them", async () => {
    const { failures } = await startBot(
      slashOnly(async (interaction) => {
        await interaction.deferReply();
        await interaction.editReply({
          flags: MessageFlags.IsComponentsV2,
          components: [{ type: 10, content: "one" }],
        });
        await interaction.editReply({ content: "plain again" });
      }),
    );
    const exchange = await platform.slash(callMix);
    await platform.until(() => failures.length > 0);
    expect(exchange.message.text).toBe("one");
    expect(failures.map(codeOf)).toEqual([50035]);
  });

  it("refuses a deferral with more than the ephemeral flag, and a modal after a deferral", async () => {
    const { failures } = await startBot(
      slashOnly(async (interaction) => {
        await raw(interaction, 5, { flags: MessageFlags.IsComponentsV2 }).catch((error: unknown) =>
          failures.push(error),
        );
        await interaction.deferReply();
        await raw(interaction, 9, {});
      }),
    );
    await platform.slash(callMix);
    await platform.until(() => failures.length === 2);
    expect(failures.map(codeOf)).toEqual([50035, 40060]);
  });

  it("drops the files an edit leaves out, and keeps them where the edit is silent", async () => {
    await startBot(
      slashOnly(async (interaction) => {
        await interaction.reply({ content: "0", files: [{ attachment: Buffer.from("x"), name: "a.csv" }] });
        await interaction.editReply({ content: "1" });
        await interaction.editReply({ content: "2", attachments: [] });
      }),
    );
    const exchange = await platform.slash(callMix);
    const { message } = exchange;
    const until = (content: string) => exchange.until(() => message.content === content);
    expect(message.attachments).toHaveLength(1);
    await until("1");
    expect(message.attachments).toHaveLength(1);
    await until("2");
    expect(message.attachments).toHaveLength(0);
  });

  it("lets a user install send five follow-ups, and nothing into the channel", async () => {
    const stranger = platform.world.addGuild("Westmoor Aquarium Society", false);
    platform.world.addChannel(stranger, "lobby");
    const { client, failures } = await startBot(
      slashOnly(async (interaction) => {
        await interaction.reply("0");
        for (let n = 1; n <= 6; n += 1) await interaction.followUp(`${n}`);
      }),
    );
    const exchange = await platform.slash({ ...callMix, guild: stranger, userInstall: true });
    await platform.until(() => failures.length > 0);
    expect(failures.map(codeOf)).toEqual([40094]);
    expect(exchange.messages).toHaveLength(6);
    expect(client.guilds.cache.has(stranger.id)).toBe(false);
    const post = client.rest.post(Routes.channelMessages(exchange.message.channel.id), {
      body: { content: "x" },
    });
    await expect(post).rejects.toMatchObject({ code: 50001 });
    await expect(platform.slash({ ...callMix, guild: stranger })).rejects.toThrow(/no member of this guild/);
  });

  it("makes a user install's answers ephemeral where external apps are not allowed", async () => {
    await startBot(slashOnly(async (interaction) => interaction.reply("shown to one")));
    const member = platform.world.member(platform.guild, platform.user("Ines"));
    member.permissions &= ~permission.useExternalApps;
    const exchange = await platform.slash({ ...callMix, user: "Ines", userInstall: true });
    expect(exchange.response.isEphemeral).toBe(true);
  });

  it("shows an ephemeral message to its reader alone, and never to the channel's endpoints", async () => {
    const { client } = await startBot(async (interaction) => {
      if (interaction.isButton()) await interaction.deferUpdate();
      if (!interaction.isChatInputCommand()) return;
      const button = { type: 2, style: 1, label: "ok", custom_id: "ok" };
      await raw(interaction, 4, {
        content: "psst",
        flags: 64,
        components: [{ type: 1, components: [button] }],
      });
    });
    const { message } = await platform.slash(callMix);
    expect((await platform.press({ user: "Marlow", message, customId: "ok" })).response.type).toBe(6);
    await expect(platform.press({ user: "Ines", message, customId: "ok" })).rejects.toThrow(
      /Only its reader/,
    );
    const fetched = client.rest.get(Routes.channelMessage(message.channel.id, message.id));
    await expect(fetched).rejects.toMatchObject({ code: 10008 });
  });

  it("hides a command from those without its permissions", async () => {
    platform.commands.put({ name: "purge", description: "d", default_member_permissions: "0" });
    const call = { user: "Ines", command: "purge" };
    await expect(platform.slash(call)).rejects.toThrow(/hidden/);
    platform.interactionWindowMs = 10;
    platform.world.member(platform.guild, platform.user("Ines")).permissions |= permission.administrator;
    expect((await platform.slash(call)).isAnswered).toBe(false);
  });
});

describe("what is refused", () => {
  const rest = () => new REST({ api: platform.apiUrl, version: "10" }).setToken(platform.token);
  const channelMessages = () => Routes.channelMessages(platform.channel.id);
  const rawErrorOf = async (promise: Promise<unknown>): Promise<{ code: unknown; errors: unknown }> => {
    const error: unknown = await promise.then(
      () => undefined,
      (reason: unknown) => reason,
    );
    if (!(error instanceof DiscordAPIError)) throw new Error(`Not refused: ${String(error)}`);
    return { code: error.code, errors: "errors" in error.rawError ? error.rawError.errors : undefined };
  };

  it.each([
    ["content of 2001 characters", { content: "x".repeat(2001) }, { content: expect.anything() }],
    [
      "26 fields",
      { embeds: [{ fields: Array.from({ length: 26 }, () => ({ name: "a", value: "b" })) }] },
      { embeds: { "0": { fields: expect.anything() } } },
    ],
    [
      "an empty field value",
      { embeds: [{ fields: [{ name: "a", value: "" }] }] },
      { embeds: expect.anything() },
    ],
    [
      "embeds of 6001 characters together",
      { embeds: [{ description: "x".repeat(4000) }, { description: "x".repeat(2001) }] },
      { embeds: expect.anything() },
    ],
    [
      "the same custom id twice",
      {
        content: "x",
        components: [
          { type: 1, components: [1, 2].map(() => ({ type: 2, style: 1, label: "a", custom_id: "a" })) },
        ],
      },
      { components: expect.anything() },
    ],
    [
      "content beside components v2",
      { content: "x", flags: 32768, components: [{ type: 10, content: "y" }] },
      { content: expect.anything() },
    ],
    [
      "41 components",
      { flags: 32768, components: Array.from({ length: 41 }, () => ({ type: 14 })) },
      { components: expect.anything() },
    ],
    [
      "a text display without the flag",
      { components: [{ type: 10, content: "y" }] },
      { components: expect.anything() },
    ],
    ["an ephemeral channel message", { content: "x", flags: 64 }, { flags: expect.anything() }],
    [
      "a kind both parsed and listed",
      { content: "x", allowed_mentions: { parse: ["users"], users: ["175928847299117063"] } },
      { allowed_mentions: expect.anything() },
    ],
    [
      "a picture that was not sent along",
      { embeds: [{ image: { url: "attachment://chart.png" } }] },
      { embeds: { "0": { image: { url: expect.anything() } } } },
    ],
  ])("%s, by field", async (_what, body, fields) => {
    const refused = await rawErrorOf(rest().post(channelMessages(), { body }));
    expect(refused.code).toBe(50035);
    expect(refused.errors).toEqual(fields);
    expect(platform.channel.messages.size).toBe(0);
  });

  const option = (name: string, required: boolean) => ({ name, description: "d", type: 3, required });
  it.each([
    ["an upper-case name", { name: "Salt", description: "d" }],
    ["a name with a space", { name: "salt mix", description: "d" }],
    ["no description", { name: "salt" }],
    ["a description of 101 characters", { name: "salt", description: "x".repeat(101) }],
    [
      "an optional option before a required one",
      { name: "salt", description: "d", options: [option("a", false), option("b", true)] },
    ],
    [
      "subcommands among options",
      {
        name: "salt",
        description: "d",
        options: [option("a", false), { name: "b", description: "d", type: 1 }],
      },
    ],
    [
      "26 options",
      {
        name: "salt",
        description: "d",
        options: Array.from({ length: 26 }, (_, n) => option(`o${n}`, false)),
      },
    ],
    [
      "choices beside autocompletion",
      {
        name: "salt",
        description: "d",
        options: [{ ...option("a", false), autocomplete: true, choices: [{ name: "b", value: "b" }] }],
      },
    ],
    [
      "more than 8000 characters",
      {
        name: "salt",
        description: "d",
        options: Array.from({ length: 4 }, (_, n) => ({
          ...option(`o${n}`, false),
          choices: Array.from({ length: 25 }, (_, m) => ({
            name: `${m}${"x".repeat(50)}`,
            value: `${m}${"y".repeat(50)}`,
          })),
        })),
      },
    ],
  ])("a command with %s", async (_what, command) => {
    const route = Routes.applicationCommands(platform.applicationId);
    expect((await rawErrorOf(rest().put(route, { body: [command] }))).code).toBe(50035);
    expect(platform.commands.list()).toEqual([]);
  });

  it("an empty message, a closed conversation, a hidden channel, an unknown one", async () => {
    const user = platform.user("Ines");
    user.refusesDms = true;
    const dm = platform.world.dmWithBot(user);
    const hidden = platform.world.addChannel(platform.guild, "committee");
    hidden.botDenied = permission.viewChannel;
    const post = (id: string, content: string) =>
      rawErrorOf(rest().post(Routes.channelMessages(id), { body: { content } }));
    expect((await post(platform.channel.id, "")).code).toBe(50006);
    expect((await post(dm.id, "hello")).code).toBe(50007);
    expect((await post(hidden.id, "hello")).code).toBe(50001);
    expect((await post("100000000000000001", "hello")).code).toBe(10003);
  });

  it("a wrong token, on either side", async () => {
    await expect(rest().setToken("wrong").get("/users/@me")).rejects.toMatchObject({ status: 401 });
    const client = new Client({ intents: [], rest: { api: platform.apiUrl } });
    clients.push(client);
    await expect(client.login("wrong")).rejects.toThrow(/invalid token/i);
  });

  it("a privileged intent that is not switched on", async () => {
    const client = new Client({
      intents: [GatewayIntentBits.MessageContent],
      rest: { api: platform.apiUrl },
    });
    clients.push(client);
    const closed = new Promise((resolve) => client.once("shardDisconnect", ({ code }) => resolve(code)));
    client.on("error", () => {});
    client.login(platform.token).catch(() => {});
    expect(await closed).toBe(4014);
  });

  it("a second first response", async () => {
    const { failures } = await startBot(
      slashOnly(async (interaction) => {
        const callback = Routes.interactionCallback(interaction.id, interaction.token);
        for (const content of ["one", "two"]) {
          await interaction.client.rest.post(callback, { body: { type: 4, data: { content } }, auth: false });
        }
      }),
    );
    const exchange = await platform.slash(callMix);
    await platform.until(() => failures.length > 0);
    expect(failures.map(codeOf)).toEqual([40060]);
    expect(exchange.messages.map((message) => message.content)).toEqual(["one"]);
  });

  it("a response after the window, and a token after its fifteen minutes", async () => {
    let release = () => {};
    const gate = new Promise<void>((resolve) => {
      release = resolve;
    });
    const { failures } = await startBot(
      slashOnly(async (interaction) => {
        if (interaction.user.username === "Ines") await interaction.deferReply();
        await gate;
        if (interaction.deferred) await interaction.editReply("too late");
        else await interaction.reply("too late");
      }),
    );
    const deferred = await platform.slash({ ...callMix, user: "Ines" });
    const pending = platform.slash(callMix);
    await platform.until(() => platform.requests.length > 0);
    platform.advance(3001);
    const late = await pending;
    expect(late.isAnswered).toBe(false);
    expect(() => late.response).toThrow("did not respond");
    platform.advance(15 * 60_000);
    release();
    await platform.until(() => failures.length === 2);
    expect(failures.map(codeOf).toSorted()).toEqual([10062, 50027]);
    expect(deferred.message.isLoading).toBe(true);
  });
});

describe("when things go wrong on the way", () => {
  it("waits a 429 out and repeats a 5xx and a reset connection", async () => {
    const { client, failures } = await startBot(slashOnly(async (interaction) => interaction.reply("done")));
    platform.faults.add({ route: /\/callback$/, kind: "429", retryAfterS: 0.15, scope: "shared" });
    expect((await platform.slash(callMix)).ackMs).toBeGreaterThanOrEqual(150);

    platform.faults.add({ route: /\/callback$/, kind: "5xx", status: 503, times: 2 });
    platform.faults.add({ route: /\/callback$/, kind: "reset-before" });
    const exchange = await platform.slash(callMix);
    expect(exchange.message.content).toBe("done");
    const statuses = platform.requestsTo(/\/callback$/).map((request) => request.status);
    expect(statuses).toEqual([429, 204, 503, 503, 0, 204]);
    expect(failures).toEqual([]);

    platform.faults.add({ route: /\/messages$/, method: "POST", kind: "refuse", status: 403, code: 50013 });
    const channel = await client.channels.fetch(platform.channel.id);
    if (!channel?.isSendable()) throw new Error("The channel should take messages");
    await expect(channel.send("x")).rejects.toMatchObject({ code: 50013 });
  });

  it("posts twice when the connection is reset after the work, unless a nonce is enforced", async () => {
    const { client } = await startBot(async () => {});
    const channel = await client.channels.fetch(platform.channel.id);
    if (!channel?.isSendable()) throw new Error("The channel should take messages");
    platform.faults.add({ route: /\/messages$/, kind: "reset-after" });
    await channel.send("plain");
    expect([...platform.channel.messages.values()].map((message) => message.content)).toEqual([
      "plain",
      "plain",
    ]);
    platform.faults.add({ route: /\/messages$/, kind: "reset-after" });
    await channel.send({ content: "once", nonce: "n-1", enforceNonce: true });
    expect(
      [...platform.channel.messages.values()].filter((message) => message.content === "once"),
    ).toHaveLength(1);
  });

  it("enforces a rate limit that was announced, and the client keeps to it", async () => {
    const { client } = await startBot(async () => {});
    platform.limit({ route: /^\/channels\/\d+\/messages$/, method: "POST", limit: 2, perMs: 300 });
    const channel = await client.channels.fetch(platform.channel.id);
    if (!channel?.isSendable()) throw new Error("The channel should take messages");
    for (let n = 0; n < 4; n += 1) await channel.send(`${n}`);
    const posts = platform.requestsTo(/\/messages$/, "POST");
    expect(posts.map((request) => request.status)).toEqual([200, 200, 200, 200]);
    expect((posts[2]?.at ?? 0) - (posts[0]?.at ?? 0)).toBeGreaterThanOrEqual(290);
  });

  it("replays what was missed while the line was down", async () => {
    await startBot(slashOnly(async (interaction) => interaction.reply("still here")));
    platform.dropGateway();
    const exchange = await platform.slash(callMix);
    expect(exchange.message.content).toBe("still here");
    expect(platform.gateway).toMatchObject({ identifies: 1, resumes: 1 });
  });

  it("resumes when told to reconnect, and identifies anew when the session is gone", async () => {
    await startBot(slashOnly(async (interaction) => interaction.reply("back")));
    platform.gateway.askToReconnect();
    await platform.until(() => platform.gateway.resumes === 1);
    platform.gateway.invalidateSessions();
    await platform.until(() => platform.gateway.identifies === 2);
    platform.dropGateway({ code: 4000, resumable: false });
    await platform.until(() => platform.gateway.identifies === 3);
    expect((await platform.slash(callMix)).message.content).toBe("back");
  });

  it("delivers twice on request, and holds events back", async () => {
    const ids: string[] = [];
    await startBot(
      slashOnly(async (interaction) => {
        ids.push(interaction.id);
        if (ids.indexOf(interaction.id) === ids.length - 1) await interaction.reply("once");
      }),
    );
    platform.deliverTwice = true;
    await platform.slash(callMix);
    await platform.until(() => ids.length === 2);
    expect(new Set(ids).size).toBe(1);

    platform.deliverTwice = false;
    platform.pauseGateway();
    const held = platform.sendSlash(callMix);
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(ids).toHaveLength(2);
    platform.resumeGateway();
    await held.until(({ isAnswered }) => isAnswered);
  });

  it("loses an event that arrives after its own window", async () => {
    const { failures } = await startBot(slashOnly(async (interaction) => interaction.reply("late")));
    platform.interactionWindowMs = 40;
    platform.eventDelayMs = 60;
    expect((await platform.slash(callMix)).isAnswered).toBe(false);
    await platform.until(() => failures.length === 1);
    expect(codeOf(failures[0])).toBe(10062);
  });
});

describe("under load", () => {
  it("times every answer, at a pace or so many at a time", async () => {
    await startBot(
      slashOnly(async (interaction) => {
        await interaction.deferReply();
        await interaction.editReply("done");
      }),
    );
    const { user: _user, ...call } = callMix;
    const paced = await runLoad(platform, { ratePerSecond: 100, seconds: 0.3, calls: [call] });
    expect(paced).toMatchObject({ answered: paced.sent, unanswered: 0 });
    expect(paced.sent).toBeGreaterThan(15);
    expect(paced.sent).toBeLessThanOrEqual(30);
    expect(paced.ackMs.p50).toBeLessThan(paced.filledMs.p50);
  });

  it("counts what was never answered", async () => {
    await startBot(async () => {});
    platform.interactionWindowMs = 50;
    const { user: _user, ...call } = callMix;
    const result = await runLoad(platform, { inFlight: 4, seconds: 0.1, calls: [call] });
    expect(result).toMatchObject({ sent: 4, answered: 0, unanswered: 4 });
  });

  // Source of the figures: the usual worked example of the nearest-rank method, from memory.
  it("ranks percentiles to the nearest value that occurred", () => {
    expect(spreadOf([50, 15, 40, 20, 35])).toEqual({ p50: 35, p90: 50, p99: 50, max: 50 });
  });

  it("measures a bot as a process of its own", async () => {
    const bot = {
      command: typescriptEntry("bench/pong-bot.ts"),
      environment: (apiUrl: string, token: string) => ({ PONG_API_URL: apiUrl, PONG_TOKEN: token }),
    };
    const commands = [{ name: "ping", description: "Are you there?" }];
    const plan = { inFlight: 4, seconds: 0.5, calls: [{ command: "ping" }] };
    const { startMs, rssMb, runs } = await measureBot(bot, [plan], commands);
    expect(startMs).toBeGreaterThan(100);
    expect(runs[0]?.answered).toBeGreaterThan(10);
    expect(runs[0]?.unanswered).toBe(0);
    if (process.platform === "linux") expect(rssMb.peak).toBeGreaterThan(30);
  });
});

describe("distance", () => {
  it("delays events and answers by what was asked for", async () => {
    await platform.close();
    platform = await startPlatform({ latencyMs: 40 });
    let roundTripMs = 0;
    await startBot(
      slashOnly(async (interaction) => {
        const start = performance.now();
        await interaction.reply("far away");
        roundTripMs = performance.now() - start;
      }),
    );
    const start = performance.now();
    await platform.slash(callMix);
    expect(performance.now() - start).toBeGreaterThanOrEqual(39);
    await platform.until(() => roundTripMs > 0);
    expect(roundTripMs).toBeGreaterThanOrEqual(39);
  });
});

describe("threads", () => {
  it("one per message under the message's id, archived ones reopened by writing unless locked", async () => {
    const rest = new REST({ api: platform.apiUrl, version: "10" }).setToken(platform.token);
    const target = platform.say({ user: "Ines", content: "look at this" });
    const route = Routes.threads(platform.channel.id, target.id);
    expect(await rest.post(route, { body: { name: "Snails" } })).toMatchObject({ id: target.id });
    await expect(rest.post(route, { body: { name: "Snails" } })).rejects.toMatchObject({ code: 160004 });
    await expect(
      rest.post(Routes.threads(platform.channel.id), { body: { name: "" } }),
    ).rejects.toMatchObject({ code: 50035 });

    const thread = platform.world.channels.get(target.id);
    await rest.patch(Routes.channel(target.id), { body: { archived: true } });
    await rest.post(Routes.channelMessages(target.id), { body: { content: "more" } });
    expect(thread?.thread?.archived).toBe(false);
    await rest.patch(Routes.channel(target.id), { body: { archived: true, locked: true } });
    await expect(
      rest.post(Routes.channelMessages(target.id), { body: { content: "more" } }),
    ).rejects.toMatchObject({
      code: 50083,
    });
  });

  it("forums take posts, not messages", async () => {
    const rest = new REST({ api: platform.apiUrl, version: "10" }).setToken(platform.token);
    const forum = platform.world.addChannel(platform.guild, "build-logs", channelType.forum);
    await expect(
      rest.post(Routes.channelMessages(forum.id), { body: { content: "x" } }),
    ).rejects.toMatchObject({
      code: 40058,
    });
    const post = { name: "A stand of oak", message: { content: "Day one" } };
    forum.requiresTag = true;
    await expect(rest.post(Routes.threads(forum.id), { body: post })).rejects.toMatchObject({ code: 40067 });
    forum.requiresTag = false;
    expect(await rest.post(Routes.threads(forum.id), { body: post })).toMatchObject({
      name: "A stand of oak",
      type: 11,
    });
  });
});

describe("whom a message would ping", () => {
  const ask = async (body: object) => {
    const rest = new REST({ api: platform.apiUrl, version: "10" }).setToken(platform.token);
    await rest.post(Routes.channelMessages(platform.channel.id), { body });
    return [...platform.channel.messages.values()].at(-1)?.pings;
  };

  it("everybody mentioned when nothing is said, nobody when nothing is parsed, the listed when listed", async () => {
    const user = platform.user("Ines");
    const role = platform.world.addRole(platform.guild, "stewards", true);
    const closed = platform.world.addRole(platform.guild, "committee", false);
    const content = `<@${user.id}> <@&${role.id}> <@&${closed.id}> @everyone`;
    expect(await ask({ content })).toEqual({ users: [user.id], roles: [role.id], everyone: false });
    expect(await ask({ content, allowed_mentions: { parse: [] } })).toEqual({
      users: [],
      roles: [],
      everyone: false,
    });
    expect(await ask({ content, allowed_mentions: { parse: [], users: [user.id] } })).toMatchObject({
      users: [user.id],
      roles: [],
    });
    expect(await ask({ embeds: [{ description: content }] })).toEqual({
      users: [],
      roles: [],
      everyone: false,
    });
    expect(await ask({ flags: 32768, components: [{ type: 10, content }] })).toMatchObject({
      users: [user.id],
    });
    platform.guild.botPermissions |= permission.mentionEveryone;
    expect(await ask({ content })).toEqual({ users: [user.id], roles: [role.id, closed.id], everyone: true });
  });

  it("users only in an interaction response, and the author replied to only while nothing is said", async () => {
    const role = platform.world.addRole(platform.guild, "stewards", true);
    await startBot(
      slashOnly(async (interaction) => interaction.reply(`<@${interaction.user.id}> <@&${role.id}>`)),
    );
    const exchange = await platform.slash(callMix);
    expect(exchange.message.pings).toEqual({
      users: [platform.user("Marlow").id],
      roles: [],
      everyone: false,
    });

    const target = platform.say({ user: "Ines", content: "well?" });
    const message_reference = { message_id: target.id };
    expect(await ask({ content: "yes", message_reference })).toMatchObject({ users: [target.author.id] });
    expect(await ask({ content: "yes", message_reference, allowed_mentions: { parse: [] } })).toMatchObject({
      users: [],
    });
  });
});
