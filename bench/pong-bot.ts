/** The least a bot on this library can do: it answers every command with "pong". The yardstick of the benchmark. */

import { fileURLToPath } from "node:url";
import { Client, GatewayIntentBits } from "discord.js";

/** Logs in at the given API host and answers until the client is destroyed. */
export async function startPongBot(apiUrl: string, token: string): Promise<Client> {
  const client = new Client({ intents: [GatewayIntentBits.Guilds], rest: { api: apiUrl } });
  client.on("interactionCreate", (interaction) => {
    if (interaction.isRepliable()) interaction.reply("pong").catch(console.error);
  });
  const ready = new Promise((resolve) => client.once("clientReady", resolve));
  await client.login(token);
  await ready;
  return client;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { PONG_API_URL, PONG_TOKEN } = process.env;
  if (PONG_API_URL === undefined || PONG_TOKEN === undefined) {
    console.error("Set PONG_API_URL and PONG_TOKEN.");
    process.exit(1);
  }
  const client = await startPongBot(PONG_API_URL, PONG_TOKEN);
  process.once("SIGTERM", () => void client.destroy());
}
