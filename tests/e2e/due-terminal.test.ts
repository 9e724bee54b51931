import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { afterEach, beforeEach, expect, it } from "vitest";
import { runConsole } from "../../src/console/index.ts";
import { openClub } from "../support/club.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** The program as a process; an empty token opens the terminal whatever .env says. */
function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ["--import", "tsx", "src/main.ts", ...args],
    {
      encoding: "utf8",
      env: { ...process.env, DISCORD_TOKEN: "", DATABASE_FILE: join(folder, "club.sqlite") },
    },
  );
  return { status, stdout, stderr };
}

it("--due prints what is due or off for a timetable, and nothing when nothing is", {
  timeout: 60_000,
}, () => {
  expect(run("--due", "--as", "ines")).toEqual({ status: 0, stdout: "", stderr: "" });
  run("--as", "ines", "/tank add name:Lagoon kind:fresh containers:box 100 L measured");
  run("--as", "ines", "/plan off device:skimmer for:48 h because:bacteria added");
  const due = run("--due", "--as", "ines");
  expect(due.status).toBe(0);
  expect(due.stdout).toMatch(/^Skimmer off since \w{3} \d\d:\d\d \(bacteria added\), due on .*\.\n$/);
  expect(run("--due", "--as", "bruno").stdout).toBe("");
});

it("the chat says when it opens what is due, without letting a name steer the terminal", async () => {
  const input = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => undefined });
  const output = Object.assign(new PassThrough(), { isTTY: true, columns: 120 });
  let shown = "";
  output.on("data", (piece: Buffer) => {
    shown += piece.toString();
  });
  const done = runConsole({
    app: openClub().app,
    input,
    output,
    name: "keeper",
    greeting: ["12: feeding (due Tue 20:00).", "\u001b[2J13: x"],
    asJson: false,
    filesFolder: join(folder, "files"),
    historyFile: join(folder, "history"),
  });
  input.write("quit\r");
  expect(await done).toBe(0);
  expect(shown).toContain("Due now:\n  12: feeding (due Tue 20:00).\n");
  expect(shown).not.toContain("\u001b[2J");
});
