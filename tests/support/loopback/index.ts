/** A chat platform on the loopback interface, for tests and the benchmark. */

export { NotOffered } from "./client-rules.ts";
export { Exchange } from "./exchange.ts";
export { runLoad } from "./load.ts";
export { measureBot, typescriptEntry } from "./measure-bot.ts";
export { Message } from "./message.ts";
export { Platform, startPlatform } from "./platform.ts";
export { channelType, permission } from "./world.ts";
