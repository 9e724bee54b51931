/** Measures a bot as a process: the platform and the load in one child, the bot in another. */

import { type ChildProcess, fork, spawn } from "node:child_process";
import { once } from "node:events";
import { readFile } from "node:fs/promises";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import type { JsonObject } from "./json.ts";
import type { LoadPlan, LoadResult } from "./load.ts";
import type { HostOrder, HostReport } from "./load-host.ts";

export interface BotProcess {
  /** Program and arguments, as in ["node", "dist/src/main.js"]. */
  readonly command: readonly [string, ...string[]];
  /** How this bot is told where the platform is. */
  readonly environment: (apiUrl: string, token: string) => Readonly<Record<string, string>>;
  /** Run to its end before the bot starts, in the same environment: registration, as a rule. */
  readonly setUp?: readonly [string, ...string[]];
}

export interface Measurement {
  /** From starting the process until it was connected and had been given its guilds. */
  readonly startMs: number;
  /** Resident memory of the bot's process; undefined where the system does not tell. */
  readonly rssMb: {
    readonly idle: number | undefined;
    readonly after: number | undefined;
    readonly peak: number | undefined;
  };
  /** Processor time of the bot's process while each plan ran, in milliseconds. */
  readonly runs: readonly (LoadResult & { readonly cpuMs: number | undefined })[];
}

const HOST = fileURLToPath(new URL("./load-host.ts", import.meta.url));

/** Starts platform and bot, runs the plans one after another, and ends both.
 *  `commands` are registered by the platform itself, for a bot without a registration of its own. */
export async function measureBot(
  bot: BotProcess,
  plans: readonly LoadPlan[],
  commands?: readonly JsonObject[],
): Promise<Measurement> {
  const host = fork(HOST, { execArgv: ["--import", "tsx"] });
  let child: ChildProcess | undefined;
  try {
    const opened = await reportOf(host);
    if (opened.kind !== "listening") throw new Error("The platform did not start");
    const env = { ...process.env, ...bot.environment(opened.apiUrl, opened.token) };
    if (commands !== undefined) await tell(host, { kind: "register", commands: [...commands] });
    if (bot.setUp !== undefined) await runToEnd(bot.setUp, env);

    const startedAt = performance.now();
    const [program, ...args] = bot.command;
    child = spawn(program, args, { env, stdio: ["ignore", "ignore", "inherit"] });
    await tell(host, { kind: "await-bot", timeoutMs: 20_000 });
    const startMs = performance.now() - startedAt;

    const idle = (await memoryOf(child)).now;
    const runs: (LoadResult & { cpuMs: number | undefined })[] = [];
    for (const plan of plans) {
      const before = await cpuMsOf(child);
      const outcome = await tell(host, { kind: "run", plan });
      const after = await cpuMsOf(child);
      if (outcome.kind !== "result") throw new Error("The load run gave no result");
      runs.push({
        ...outcome.result,
        cpuMs: before === undefined || after === undefined ? undefined : after - before,
      });
    }
    const { now, peak } = await memoryOf(child);
    return { startMs, rssMb: { idle, after: now, peak }, runs };
  } finally {
    await end(child);
    if (host.connected) await tell(host, { kind: "close" }).catch(() => undefined);
    await end(host);
  }
}

/** A TypeScript entry, run without a build. Compare like with like: the loader weighs on memory and on the start. */
export function typescriptEntry(path: string): readonly [string, ...string[]] {
  return [process.execPath, "--import", "tsx", path];
}

async function reportOf(host: ChildProcess): Promise<HostReport> {
  return new Promise((resolve, reject) => {
    const onExit = () => reject(new Error("The platform's process ended early"));
    host.once("exit", onExit);
    host.once("message", (report: HostReport) => {
      host.off("exit", onExit);
      if (report.kind === "failed") reject(new Error(report.reason));
      else resolve(report);
    });
  });
}

async function tell(host: ChildProcess, order: HostOrder): Promise<HostReport> {
  const answer = reportOf(host);
  host.send(order);
  return answer;
}

async function runToEnd(
  [program, ...args]: readonly [string, ...string[]],
  env: NodeJS.ProcessEnv,
): Promise<void> {
  const child = spawn(program, args, { env, stdio: ["ignore", "ignore", "inherit"] });
  const [code] = await once(child, "exit");
  if (code !== 0) throw new Error(`${program} ${args.join(" ")} ended with ${String(code)}`);
}

async function end(child: ChildProcess | undefined): Promise<void> {
  if (child === undefined || child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, "exit");
  child.kill("SIGTERM");
  const impatience = setTimeout(() => child.kill("SIGKILL"), 5000);
  await ended;
  clearTimeout(impatience);
}

/** From the kernel's process files, which only Linux has. */
async function memoryOf(child: ChildProcess): Promise<{ now: number | undefined; peak: number | undefined }> {
  const status = await readFile(`/proc/${child.pid}/status`, "utf8").catch(() => "");
  const megabytes = (key: string) => {
    const kilobytes = new RegExp(`^${key}:\\s+(\\d+) kB`, "m").exec(status)?.[1];
    return kilobytes === undefined ? undefined : Number(kilobytes) / 1024;
  };
  return { now: megabytes("VmRSS"), peak: megabytes("VmHWM") };
}

/** User and system time; the kernel counts in hundredths of a second. */
async function cpuMsOf(child: ChildProcess): Promise<number | undefined> {
  const stat = await readFile(`/proc/${child.pid}/stat`, "utf8").catch(() => undefined);
  // The program's name stands in brackets and may hold spaces; the fields after it do not.
  const fields = stat?.slice(stat.lastIndexOf(")") + 2).split(" ");
  if (fields === undefined) return undefined;
  return (Number(fields[11]) + Number(fields[12])) * 10;
}
