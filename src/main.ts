import { loadConfig } from "./assemble.ts";
import { chat } from "./chat.ts";
import { sayAndFail } from "./failure.ts";

/** With a token the bot goes online; without one, or with something to answer, the terminal chat opens. */
async function main(argv: readonly string[]): Promise<number> {
  try {
    const config = loadConfig();
    if (config.token === undefined || argv.length > 0) return await chat(argv);
    const { runBot } = await import("./bot.ts");
    return await runBot(config, config.token);
  } catch (error) {
    return sayAndFail(error);
  }
}

process.exitCode = await main(process.argv.slice(2));
