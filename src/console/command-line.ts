import { type CommandEntry, isFamily } from "../kit/command.ts";
import { nearest } from "../kit/nearest.ts";

/** Second words that go on with a sentence: "trend of my nitrate", "log that I fed them". */
const GOES_ON =
  /^(?:of|for|my|our|the|a|an|in|to|from|since|how|what|is|are|do|does|did|me|with|that|if|when|this|and|i|we|on)$/;

/** Whether a line without a slash is a command all the same: "salt mix volume:200 L", "log no3 20". */
export function isCommandLine(line: string, commands: readonly CommandEntry[]): boolean {
  const [first = "", second, ...rest] = line.toLowerCase().split(/\s+/);
  const entry = commands.find(({ name }) => name === first);
  if (entry === undefined) return false;
  if (second === undefined || /(?:^|\s)[a-z][a-z-]*:/i.test(line)) return true;
  if (!isFamily(entry)) return !GOES_ON.test(second);
  const names = entry.subcommands.map(({ name }) => name);
  return names.includes(second) || (rest.length === 0 && nearest(second, names) !== undefined);
}
