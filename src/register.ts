import { REST, Routes } from "discord.js";
import { assemble, loadConfig } from "./assemble.ts";
import { registerCommands } from "./discord/index.ts";

/** Publishes the slash commands without going online: for a server's first set-up, or after an update. */
const config = loadConfig();
if (config.token === undefined) {
  process.stderr.write("Put the bot's token into DISCORD_TOKEN first (see .env.example).\n");
  process.exitCode = 78;
} else {
  const { app, close } = assemble(":memory:");
  const rest = new REST({ api: config.apiUrl, version: "10" }).setToken(config.token);
  const { id } = (await rest.get(Routes.currentApplication())) as { id: string };
  await registerCommands({ app, token: config.token, apiUrl: config.apiUrl, guildId: config.guildId }, id);
  process.stdout.write(
    `${app.commands.length} commands registered ${config.guildId === undefined ? "for all servers" : `for server ${config.guildId}`}.\n`,
  );
  await close();
}
