/** A chat platform on the loopback interface, for tests and the benchmark. */

export { type FileInput, NotOffered } from "./client-rules.ts";
export { Exchange } from "./exchange.ts";
export type { Fault } from "./faults.ts";
export type { LoggedRequest } from "./http-side.ts";
export { type LoadPlan, type LoadResult, runLoad } from "./load.ts";
export { type BotProcess, type Measurement, measureBot, typescriptEntry } from "./measure-bot.ts";
export { Message } from "./message.ts";
export { Platform, type PlatformOptions, startPlatform } from "./platform.ts";
export { type Channel, channelType, type Guild, permission, type Role, type User } from "./world.ts";
