import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { calendarOf } from "../src/kit/calendar.ts";
import { newPlan } from "../src/kit/plan-change.ts";
import type { MemberId } from "../src/records/ids.ts";
import { openStore } from "../src/sqlite/index.ts";
import { type Platform, runLoad, startPlatform } from "../tests/support/loopback/index.ts";
import { atMost, given, type Row } from "./report.ts";

const MEMBERS = 1_000;
const PLANS_EACH = 20;
const LOAD = { ratePerSecond: 50, seconds: 60 };
const CALLS = [
  {
    command: "salt",
    subcommand: "mix",
    options: { volume: "110 L", salinity: "35 ppt", temperature: "25 °C" },
  },
  { command: "plan", subcommand: "list" },
];

/** 20,000 plans, 1,000 of them due in the same minute, while members go on asking. */
export async function reminderRows(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), "standpipe-bench-"));
  const file = join(folder, "bench.sqlite");
  const platform = await startPlatform();
  let bot: ChildProcess | undefined;
  try {
    keepPlans(file, platform);
    bot = spawn(process.execPath, ["dist/src/main.js"], {
      env: {
        ...process.env,
        DISCORD_API_URL: platform.apiUrl,
        DISCORD_TOKEN: platform.token,
        DATABASE_FILE: file,
      },
      stdio: ["ignore", "ignore", "inherit"],
    });
    await platform.connected(20_000);
    await platform.until(() => platform.requestsTo(/commands$/, "PUT").length > 0, 20_000);
    const start = performance.now();
    const told = until(platform, MEMBERS);
    const load = await runLoad(platform, { ...LOAD, calls: CALLS });
    const lastS = ((await told) - start) / 1000;
    const keys = reminders(platform);
    return [
      given(
        "plans in the file; due in the same minute",
        `${(MEMBERS * PLANS_EACH).toLocaleString("en")}; ${MEMBERS}`,
      ),
      atMost("until the last of 1,000 was told, each in a direct message to be opened first", lastS, 90, "s"),
      atMost(
        "told twice, or not at all",
        Math.abs(keys.length - MEMBERS) + keys.length - new Set(keys).size,
        0,
        "",
      ),
      atMost(
        "requests refused for their number",
        platform.requests.filter(({ status }) => status === 429).length,
        0,
        "",
      ),
      atMost(`first response at ${LOAD.ratePerSecond}/s meanwhile, p99`, load.ackMs.p99, 1000, "ms"),
      atMost("the slowest of them", load.ackMs.max, 1000, "ms"),
      atMost("unanswered", load.unanswered, 0, ""),
    ];
  } finally {
    if (bot !== undefined && bot.exitCode === null) {
      const ended = once(bot, "exit");
      bot.kill("SIGTERM");
      await ended;
    }
    await platform.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One plan of each member has just fallen due; the others wait for other days. */
function keepPlans(file: string, platform: Platform): void {
  const now = Date.now();
  const at = new Date(now).toISOString();
  const store = openStore(file, at);
  const { members, tanks, plans } = store.records;
  const calendar = calendarOf("UTC");
  const { day, minute } = calendar.local(now);
  for (let n = 0; n < MEMBERS; n++) {
    const owner = `discord:${platform.user(`keeper-${n}`).id}` as MemberId;
    members.member(owner, undefined);
    plans.setWishes(owner, { place: "dm", quietFrom: 0, quietUntil: 0 });
    const tank = tanks.create({
      owner,
      name: "Lagoon",
      kind: "marine",
      containers: [],
      containersTyped: "",
      now: at,
    });
    for (let k = 0; k < PLANS_EACH; k++)
      plans.add(
        owner,
        newPlan(
          {
            tankId: tank.id,
            task: {
              kind: "event",
              event: "water change",
              amount: { best: 0.3, unit: "fraction" },
              text: "",
              words: "water change 30 %",
            },
            rule: { kind: "every", days: 7, from: k === 0 ? day : day + 1 + (k % 6), minute },
            typed: "water change 30 %",
          },
          now,
          calendar,
        ),
        at,
      );
  }
  store.close();
}

function reminders(platform: Platform): readonly string[] {
  return [...platform.world.channels.values()]
    .flatMap((channel) => [...channel.messages.values()])
    .filter(({ author, origin }) => author === platform.world.bot && origin === undefined)
    .map((message) => message.buttons[0]?.customId?.split(":").slice(1).join(":") ?? "");
}

/** The moment at which so many have arrived, or two minutes on. */
async function until(platform: Platform, count: number): Promise<number> {
  const end = performance.now() + 120_000;
  while (reminders(platform).length < count && performance.now() < end)
    await new Promise((resolve) => setTimeout(resolve, 250));
  return performance.now();
}
