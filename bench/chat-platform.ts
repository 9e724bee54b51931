import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { measureBot } from "../tests/support/loopback/index.ts";
import { atLeast, atMost, given, type Row } from "./report.ts";

const RATE = 500;
const SECONDS = 6;
/** As `npm start` has them: a bot that is small in memory. */
const START_FLAGS = ["--optimize-for-size", "--max-semi-space-size=2"];
const WARM_UP = { ratePerSecond: 100, seconds: 2 };

/** Our bot and a bare one that only says "pong", one after the other, at the same pace on the same machine. */
export async function chatPlatformRows(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), "standpipe-bench-"));
  const calls = [
    {
      command: "salt",
      subcommand: "mix",
      options: { volume: "110 L", salinity: "35 ppt", temperature: "25 °C" },
    },
    { command: "change", subcommand: "effect", options: { now: "80 mg/L", size: "30 %", volume: "2700 L" } },
    { command: "salt", subcommand: "convert", options: { salinity: "1.026 SG 25/25" } },
  ];
  try {
    const ours = await measureBot(
      {
        command: [process.execPath, ...START_FLAGS, "dist/bundle/main.js"],
        // The load begins when the bot is connected, which is before it has published its commands itself.
        setUp: [process.execPath, "dist/src/register.js"],
        environment: (apiUrl, token) => ({
          DISCORD_API_URL: apiUrl,
          DISCORD_TOKEN: token,
          DATABASE_FILE: join(folder, "bench.sqlite"),
        }),
      },
      [
        { ...WARM_UP, calls },
        { ratePerSecond: RATE, seconds: SECONDS, calls },
        { inFlight: 16, seconds: 4, calls },
      ],
    );
    const pong = await measureBot(
      {
        command: [process.execPath, "--import", "tsx", "bench/pong-bot.ts"],
        environment: (apiUrl, token) => ({ PONG_API_URL: apiUrl, PONG_TOKEN: token }),
      },
      [
        { ...WARM_UP, calls: [PING] },
        { ratePerSecond: RATE, seconds: SECONDS, calls: [PING] },
        { inFlight: 16, seconds: 4, calls: [PING] },
      ],
      [{ name: "ping", description: "Says pong", type: 1 }],
    );
    const [, paced, pushed] = ours.runs;
    const [, pongPaced, pongPushed] = pong.runs;
    if (paced === undefined || pushed === undefined || pongPaced === undefined || pongPushed === undefined)
      throw new Error("A load run gave no result");
    return [
      given(
        `bare bot: answers a second at ${RATE}/s; p99`,
        `${pongPaced.answersPerSecond.toFixed(0)}; ${pongPaced.ackMs.p99.toFixed(1)} ms`,
      ),
      atLeast(
        `answers at ${RATE}/s, against the bare bot's`,
        paced.answersPerSecond / pongPaced.answersPerSecond,
        0.8,
        "",
      ),
      atMost(`first response at ${RATE}/s, p99`, paced.ackMs.p99, 25, "ms"),
      atMost("unanswered", paced.unanswered, 0, ""),
      given(
        "16 in flight: ours; bare bot",
        `${pushed.answersPerSecond.toFixed(0)}; ${pongPushed.answersPerSecond.toFixed(0)} a second`,
      ),
      atMost("memory of the bot's process, peak", ours.rssMb.peak ?? Number.NaN, 150, "MB"),
      given(
        "start until connected: ours; bare bot",
        `${ours.startMs.toFixed(0)}; ${pong.startMs.toFixed(0)} ms`,
      ),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const PING = { command: "ping" };
