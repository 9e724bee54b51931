import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { commands } from "../../commands/index.ts";
import { Conversation } from "../../src/console/conversation.ts";
import { parseLine } from "../../src/console/parse-line.ts";
import { type Built, build } from "../support/built.ts";
import { allPaths, openClub } from "../support/club.ts";

/** Processes take their time where the machine is busy. */
const SLOW_MS = 90_000;
vi.setConfig({ testTimeout: SLOW_MS });

const README = readFileSync("README.md", "utf8");
const { scripts, engines } = JSON.parse(readFileSync("package.json", "utf8"));

/** The lines of all code blocks in one language. */
function block(language: string): readonly string[] {
  return [...README.matchAll(new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``, "g"))].flatMap(
    ([, text = ""]) => text.split("\n").filter((line) => line.trim() !== ""),
  );
}

/** Commands in the running text and the tables, between backticks. */
const INLINE = [...README.matchAll(/`(npm [^`]+|cp [^`]+)`/g)].map(([, text = ""]) => text);

let folder: string;
let built: Built;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
  built = build();
}, SLOW_MS);
afterAll(() => {
  built.remove();
  rmSync(folder, { recursive: true });
});

/** What `npm start -- …` runs, with the same words, from the sources as they stand. */
function start(shellWords: string, input = ""): { readonly code: number | null; readonly out: string } {
  const { status, stdout } = spawnSync("sh", ["-c", `"${process.execPath}" "${built.main}" ${shellWords}`], {
    encoding: "utf8",
    input,
    env: {
      PATH: process.env["PATH"] ?? "",
      HOME: folder,
      DISCORD_TOKEN: "",
      DATABASE_FILE: join(folder, "club.sqlite"),
    },
  });
  return { code: status, out: stdout };
}

describe("the lines to type", () => {
  it("are all answered, in order, on a fresh database", async () => {
    const club = openClub();
    const talk = new Conversation(club.app, "keeper");
    const lines = block("text");
    expect(lines.length).toBeGreaterThan(4);
    for (const line of lines) {
      const said = await talk.take(line);
      const ok =
        said.kind === "working" ||
        (said.kind === "outcome" && said.outcome.kind === "reply" && said.outcome.ok);
      expect(ok, `${line}: ${JSON.stringify(said).slice(0, 300)}`).toBe(true);
    }
    expect(club.defects).toEqual([]);
  });

  it("give the water and the salt they are there to show", async () => {
    const club = openClub();
    const [describeLagoon = "", ...others] = block("text").filter((line) => line.startsWith("/"));
    const tank = await club.ask(describeLagoon);
    // 240 × 100 × 62 cm = 1488 L, less 180 kg of rock at some 2.7 kg/L (aragonite: CRC Handbook, 2.93; rock has pores).
    const display = Number.parseFloat(tank.table?.rows[0]?.[2] ?? "");
    expect(display).toBeGreaterThan(1488 - 180 / 2.0);
    expect(display).toBeLessThan(1488 - 180 / 3.0);
    for (const line of others) await club.say(line);
  });
});

describe("the commands for a shell", () => {
  it("are npm's own words, or scripts of this project", () => {
    // `npm ci` and `npm cit` install and then build or test: run from inside a test they would replace the
    // folder the test runs in. The continuous integration runs both as they stand.
    const own = new Set(["ci", "cit", "start", "test"]);
    const verbs = [...block("sh"), ...INLINE].flatMap((line) =>
      [...line.matchAll(/npm (run )?([\w:-]+)/g)].map(([, run, verb = ""]) => ({
        isScript: run !== undefined,
        verb,
      })),
    );
    expect(verbs.length).toBeGreaterThan(3);
    for (const { isScript, verb } of verbs) {
      if (isScript || verb === "start" || verb === "test") expect(Object.keys(scripts)).toContain(verb);
      else expect(own).toContain(verb);
    }
    expect(scripts.prepare).toBe("npm run build");
    expect(scripts.start).toBe("node --optimize-for-size --max-semi-space-size=2 dist/bundle/main.js");
    for (const version of ["20", "22", "24", "26"]) expect(README).toContain(version);
    expect(engines.node).toBe(">=20.19");
  });

  it("name files that are there", () => {
    for (const [, from = ""] of INLINE.join("\n").matchAll(/cp (\S+)/g))
      expect(existsSync(from), from).toBe(true);
    for (const [, path = ""] of README.matchAll(/\]\((?!http)([^)#]+)\)/g))
      expect(existsSync(path), path).toBe(true);
  });

  it("answer as the table says", () => {
    const rows = INLINE.filter((line) => line.startsWith("npm start"));
    const script = join(folder, "script.txt");
    writeFileSync(
      script,
      "/dose pump daily:48 mL doses:24 flow:1.5 mL/min\n/dose pump daily:48 mL doses:0 flow:1.5 mL/min\n",
    );
    const tried = rows.flatMap((line) => {
      const words = line.replace(/^npm start( --)?/, "").replace("script.txt", script);
      return words.trim() === "" ? [] : [{ line, ...start(words, "/settings\n") }];
    });
    expect(tried.map(({ line }) => line)).toEqual([
      expect.stringContaining("/salt convert"),
      expect.stringContaining("--as bruno"),
      expect.stringContaining("< script.txt"),
      expect.stringContaining("--due"),
      expect.stringContaining("--json"),
    ]);
    const [once, as, scripted, due, json] = tried;
    expect(once?.code).toBe(0);
    // SG 1.026 at 25/25 is 34.51 (EOS-80).
    expect(once?.out).toContain("34.51 ppt");
    expect([as?.code, as?.out.split("\n")[0]]).toEqual([0, "bruno> /settings"]);
    // Its second line is refused.
    expect(scripted?.code).toBe(1);
    expect(scripted?.out).toContain("80 s per dose");
    // Nothing is planned, so nothing is printed.
    expect([due?.code, due?.out]).toEqual([0, ""]);
    expect(json?.code).toBe(0);
    expect(JSON.parse(json?.out ?? "").outcome.title).toBe("Sums and tank records for the club");
  });
});

describe("the table of commands", () => {
  it("names none that is not there", () => {
    const table = /<!-- commands -->([\s\S]*?)<!-- end -->/.exec(README)?.[1] ?? "";
    const named = [...table.matchAll(/`\/([^`]+)`/g)].map(([, path = ""]) => path);
    expect(named.length).toBeGreaterThan(30);
    const paths = allPaths.map(({ path }) => path);
    expect(named.filter((path) => !paths.includes(path))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  });

  it("and the text name commands the terminal knows", () => {
    const mentioned = [...README.matchAll(/`(\/[a-z][^`]*)`/g)].map(([, line = ""]) => line);
    for (const line of mentioned) {
      const { path } = parseLine(line, commands);
      expect(
        commands.some(({ name }) => name === path.split(" ")[0]),
        line,
      ).toBe(true);
    }
  });
});
