/** `npm run bench`: every figure with its goal, measured in one run on this machine; nothing here is a test. */

import { spawnSync } from "node:child_process";
import { breedingRows } from "./breeding.ts";
import { chatPlatformRows } from "./chat-platform.ts";
import { coreRows } from "./core.ts";
import { recordsRows } from "./records.ts";
import { reminderRows } from "./reminders.ts";
import { printTable, type Row } from "./report.ts";
import { terminalRows } from "./terminal.ts";
import { trendRows } from "./trends.ts";

const PARTS: readonly (readonly [
  name: string,
  title: string,
  rows: () => readonly Row[] | Promise<readonly Row[]>,
])[] = [
  ["chat", "Through the chat platform's client library", chatPlatformRows],
  ["terminal", "In the terminal", terminalRows],
  ["core", "Answers", coreRows],
  ["records", "Records", recordsRows],
  ["breeding", "Breeding groups", breedingRows],
  ["reminders", "Reminders", reminderRows],
  ["trends", "Trends", trendRows],
];

const wanted = process.argv.slice(2);
if (spawnSync("npm", ["run", "--silent", "build"], { stdio: "inherit" }).status !== 0) process.exit(1);
const all: Row[] = [];
for (const [name, title, measure] of PARTS) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const rows = await measure();
  printTable(title, rows);
  all.push(...rows);
}
const missed = all.filter((row) => !row.isMet);
console.log(
  `\n${all.filter((row) => row.goal !== "").length - missed.length} goals met, ${missed.length} missed`,
);
