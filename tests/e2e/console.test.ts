import { spawn, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { type Built, build } from "../support/built.ts";

/** Processes take their time where the machine is busy. */
const SLOW_MS = 90_000;
vi.setConfig({ testTimeout: SLOW_MS });

let folder: string;
let file: string;
let built: Built;
beforeAll(() => {
  built = build();
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
  file = join(folder, "club.sqlite");
}, SLOW_MS);
afterAll(() => {
  built.remove();
  rmSync(folder, { recursive: true });
});

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface Start {
  readonly script?: string;
  readonly database?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Runs as somebody who owns nothing here, where the test itself may do anything. */
  readonly isNobody?: boolean;
}

/** As on a machine where nothing was set up; an empty token opens the terminal whatever .env says. */
function environment(settings: Readonly<Record<string, string>>): NodeJS.ProcessEnv {
  return { PATH: process.env["PATH"] ?? "", HOME: folder, DISCORD_TOKEN: "", ...settings };
}

/** The program as a process of its own, on a database of the test. */
function start(
  args: readonly string[],
  { script, database = file, env = {}, isNobody = false }: Start = {},
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [built.main, ...args], {
      env: environment({ DATABASE_FILE: database, ...env }),
      ...(isNobody ? { uid: 65534, gid: 65534 } : {}),
    });
    let out = "";
    let err = "";
    child.stdout.on("data", (piece: Buffer) => {
      out += piece.toString();
    });
    child.stderr.on("data", (piece: Buffer) => {
      err += piece.toString();
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
    child.stdin.end(script ?? "");
  });
}

describe("one command on the line", () => {
  it("is answered, refused, or left open, and the exit code says which", async () => {
    const [fine, refused, open, misspelt, help] = await Promise.all([
      start(["/dose pump daily:48 mL doses:24 flow:1.5 mL/min"]),
      start(["/dose together first:bleach second:vinegar"]),
      start(["/dose dilute target:1:5 volume:500 mL"]),
      start(["--wibble"]),
      start(["--help"]),
    ]);
    expect([fine.code, refused.code, open.code, misspelt.code, help.code]).toEqual([0, 1, 1, 2, 0]);
    // 48 mL / 24 doses / 1.5 mL/min = 80 s.
    expect(fine.out).toContain("80 s per dose");
    expect(fine.out).not.toContain("\u001b");
    expect(refused.out).toContain("Never let bleach and vinegar meet");
    expect(open.out).toContain("1) 1 in 5 (20 % of the whole)");
    expect(misspelt.err).toContain("npm start -- --as bruno");
    expect(help.out).toContain("npm start < script.txt");
  });
});

describe("a script", () => {
  it("is answered line by line, with its questions, and everything is there after a restart", async () => {
    const script = [
      "# a comment, and an empty line",
      "",
      "/tank add name:Lagoon kind:marine containers:drum 55 gal measured",
      "1",
      "/log no3 20, temp 25.5",
      "/dose pump daily:48 mL doses:24 flow:1.5 mL/min",
      "working",
      "quit",
      "/tank list",
    ].join("\n");
    const first = await start(["--as", "ines"], { script });
    expect(first.err).toBe("");
    expect(first.code).toBe(0);
    expect(first.out).toContain("ines> /log no3 20, temp 25.5");
    expect(first.out).toContain("1) 55 US gal = 208.2 L");
    expect(first.out).toContain("Working: ");
    expect(first.out).not.toContain("/tank list");
    const [again, stranger] = await Promise.all([
      start(["--as", "ines", "--json"], { script: "/readings\n/settings\n/tank show" }),
      start(["--as", "bruno"], { script: "/tank show tank:Lagoon\n" }),
    ]);
    expect(again.code).toBe(0);
    const said = again.out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(said.map(({ kind, outcome }) => [kind, outcome.kind, outcome.title])).toEqual([
      ["outcome", "reply", "Lagoon: record"],
      ["outcome", "reply", "Your settings"],
      ["outcome", "reply", "Lagoon"],
    ]);
    expect(said[0].outcome.table.rows).toHaveLength(2);
    expect(said[1].outcome.body[0]).toBe("“gal” means: US gallons.");
    // What was left open is a failure, and says no more of a private tank than of none.
    expect(stranger.code).toBe(1);
    expect(stranger.out).toContain("There is no tank “Lagoon” here, and you keep none yet");
  });

  it("ends with 1 when a line was refused, not understood, or a question passed over", async () => {
    const ends = await Promise.all(
      [
        "/dose together first:bleach second:vinegar\n/help",
        "wibble\n/help",
        "/dose dilute target:1:5 volume:500 mL\n/help",
        "/dose dilute target:1:5 volume:500 mL",
      ].map((script) => start([], { script })),
    );
    expect(ends.map(({ code }) => code)).toEqual([1, 1, 1, 1]);
    for (const { out } of ends.slice(0, 3)) expect(out).toContain("/help");
  });
});

describe("settings and files that cannot be used", () => {
  const cases = () => {
    const shopping = join(folder, "shopping.txt");
    writeFileSync(shopping, "milk, bread\n".repeat(500));
    const newer = join(folder, "newer.sqlite");
    const foreign = join(folder, "foreign.sqlite");
    for (const [path, sql] of [
      [
        newer,
        "CREATE TABLE migration (name TEXT, at TEXT); INSERT INTO migration VALUES ('9999-future', 'then')",
      ],
      [foreign, "CREATE TABLE shop (item TEXT)"],
    ] as const) {
      const db = new SqliteDatabase(path);
      db.exec(sql);
      db.close();
    }
    return { shopping, newer, foreign };
  };

  it("are named in a sentence, end the program, and stay as they were", async () => {
    const { shopping, newer, foreign } = cases();
    const locked = join(folder, "locked.sqlite");
    const other = new SqliteDatabase(locked);
    other.exec("CREATE TABLE migration (name TEXT, at TEXT)");
    other.exec("BEGIN EXCLUSIVE");
    const secret = join(folder, "secret.sqlite");
    cpSync(foreign, secret);
    chmodSync(secret, 0o000);
    chmodSync(folder, 0o755);
    const files = [shopping, newer, foreign, secret];
    const before = files.map((path) => (path === secret ? "" : readFileSync(path, "base64")));
    const isRoot = process.getuid?.() === 0;
    const ends = await Promise.all([
      start(["/help"], { database: shopping }),
      start(["/help"], { database: newer }),
      start(["/help"], { database: foreign }),
      start(["/help"], { database: locked }),
      start(["/help"], { database: secret, isNobody: isRoot }),
      start(["/help"], { env: { DISCORD_API_URL: "not an address", DISCORD_GUILD_ID: "x" } }),
    ]);
    other.exec("ROLLBACK");
    other.close();
    expect(ends.map(({ code }) => code)).toEqual([74, 74, 74, 74, 74, 78]);
    const told = ends.map(({ err }) => err);
    expect(told[0]).toContain("is not a database this program can read. It was left as it is.");
    expect(told[1]).toContain("was written by a newer version (it has “9999-future”)");
    expect(told[2]).toContain("is the database of another program. It was left as it is");
    expect(told[3]).toContain("is locked by another program. Close that one");
    expect(told[4]).toMatch(/cannot be opened|may not be written/);
    expect(told[5]).toMatch(/DISCORD_API_URL is not an address[\s\S]*DISCORD_GUILD_ID is not a server's id/);
    for (const text of told) expect(text).not.toMatch(/\n {4}at /);
    expect(files.map((path) => (path === secret ? "" : readFileSync(path, "base64")))).toEqual(before);
    for (const path of files) expect(existsSync(`${path}-wal`)).toBe(false);
  });
});

describe("a reader that goes away", () => {
  it("ends the program without a complaint", () => {
    // More than any pipe holds, so that the program is still writing when its reader has gone.
    const script = join(folder, "long.txt");
    writeFileSync(script, "/help\n".repeat(60));
    const { stdout, stderr } = spawnSync(
      "sh",
      ["-c", `"${process.execPath}" ${built.main} < ${script} | head -1`],
      {
        encoding: "utf8",
        env: environment({ DATABASE_FILE: join(folder, "gone.sqlite") }),
      },
    );
    expect(stdout.trim()).toBe("keeper> /help");
    expect(stderr).toBe("");
  });
});

/** Types into a real terminal, piece by piece, and prints all it showed and how the program ended. */
const TYPIST = `
import json, os, pty, select, sys, time
pieces, argv = json.loads(sys.argv[1]), sys.argv[2:]
pid, terminal = pty.fork()
if pid == 0:
    os.execvp(argv[0], argv)
shown, at = b"", 0
def more():
    global shown
    ready, _, _ = select.select([terminal], [], [], 0.1)
    if ready:
        try:
            piece = os.read(terminal, 65536)
        except OSError:
            return False
        shown += piece
        return piece != b""
    return True
for wait_for, keys in pieces:
    end = time.time() + 15
    while wait_for.encode() not in shown[at:] and time.time() < end and more():
        pass
    found = shown.find(wait_for.encode(), at)
    at = len(shown) if found < 0 else found + len(wait_for.encode())
    for key in keys:
        os.write(terminal, key.encode())
        time.sleep(0.005)
end = time.time() + 15
while time.time() < end and more():
    pass
_, status = os.waitpid(pid, 0)
print(json.dumps({"shown": shown.decode("utf8", "replace"), "code": os.waitstatus_to_exitcode(status)}))
`;

describe("a real terminal", () => {
  it("completes at Tab, brings lines back at the arrow key, clears at Ctrl-C and ends at Ctrl-C", () => {
    const keys: readonly (readonly [string, readonly string[]])[] = [
      // A key pressed before the last one was shown counts as pasted text, and Tab then is only a character.
      ["keeper> ", [..."/dose pu"]],
      ["/dose pu", ["\t"]],
      ["mp ", [..."daily:48 mL doses:24 flow:1.5 mL/min", "\r"]],
      ["80 s per dose", []],
      ["keeper> ", ["\u001b[A", "\u0003"]],
      ["^C", []],
      ["keeper> ", [..."/tank li"]],
      ["/tank li", ["\t"]],
      ["st ", ["\r"]],
      ["No tanks yet", []],
      ["keeper> ", ["\u0003"]],
    ];
    const { stdout, stderr } = spawnSync(
      "python3",
      ["-c", TYPIST, JSON.stringify(keys), process.execPath, built.main],
      {
        encoding: "utf8",
        env: environment({ TERM: "xterm", DATABASE_FILE: join(folder, "typed.sqlite") }),
      },
    );
    expect(stderr).toBe("");
    const { shown, code } = JSON.parse(stdout);
    expect(code).toBe(0);
    expect(shown).toContain("/help lists the commands, quit ends.");
    // Bold on a terminal.
    expect(shown).toContain("\u001b[1m80 s per dose");
    expect(shown).toContain("^C");
    expect(shown).toContain("\u001b[1mNo tanks yet");
    expect(shown.match(/\u001b\[1m80 s per dose/g)).toHaveLength(1);
    const history = readFileSync(join(folder, "history"), "utf8").trim().split("\n");
    expect(history.at(-1)?.trim()).toBe("/tank list");
    expect(history[0]).toBe("/dose pump daily:48 mL doses:24 flow:1.5 mL/min");
  });
});
