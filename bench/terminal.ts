import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { atMost, given, percentile, type Row, timed } from "./report.ts";

const RUNS = 12;
/** As `npm start` has it. */
const START = ["--optimize-for-size", "--max-semi-space-size=2", "dist/bundle/main.js"] as const;

/** From starting the program until its first answer stands there, beside a program that does nothing. */
export function terminalRows(): readonly Row[] {
  const folder = mkdtempSync(join(tmpdir(), "standpipe-bench-"));
  const env = { ...process.env, DATABASE_FILE: join(folder, "bench.sqlite"), DISCORD_TOKEN: "" };
  const run = (...args: string[]) => {
    const { status } = spawnSync(process.execPath, args, { env });
    if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}`);
  };
  try {
    run(...START, "/help");
    const bare = timed(RUNS, () => run("-e", "0"));
    const ours = timed(RUNS, () => run(...START, "/salt mix volume:110 L salinity:35 ppt"));
    return [
      given("a program that does nothing, median", `${percentile(bare, 0.5).toFixed(0)} ms`),
      atMost("start to first answer in the terminal, median", percentile(ours, 0.5), 400, "ms"),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
