import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { runConsole } from "../../../src/console/index.ts";
import { type Club, openClub } from "../../support/club.ts";

const UP = "\u001b[A";
const CTRL_C = "\u0003";
const CTRL_D = "\u0004";
const TAB = "\t";

let folder: string;
let club: Club;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "standpipe-"));
  club = openClub();
});
afterEach(() => rmSync(folder, { recursive: true }));

/** A terminal of two streams: what is typed, and all that was shown. */
function open(isTTY = true) {
  const input = Object.assign(new PassThrough(), { isTTY, setRawMode: () => undefined });
  const output = Object.assign(new PassThrough(), { isTTY, columns: 200 });
  let shown = "";
  output.on("data", (piece: Buffer) => {
    shown += piece.toString();
  });
  const done = runConsole({
    app: club.app,
    input,
    output,
    name: "keeper",
    asJson: false,
    filesFolder: join(folder, "files"),
    historyFile: join(folder, "deep", "history"),
  });
  return {
    done,
    async type(text: string): Promise<string> {
      const from = shown.length;
      // Tab completes only what is typed key by key; in a pasted text it is a blank like another.
      for (const piece of text.split(/(\t)/)) input.write(piece);
      // Waits until nothing more is shown.
      for (let before = -1; before !== shown.length; ) {
        before = shown.length;
        await wait(25);
      }
      return shown.slice(from).replace(/\u001b\[[0-9;?]*[A-Za-z]/g, "");
    },
    raw: () => shown,
    end: () => input.end(),
  };
}

describe("the terminal chat", () => {
  it("greets, answers, and ends with quit", async () => {
    const terminal = open();
    expect(await terminal.type("/dose pump daily:48 mL doses:24 flow:1.5 mL/min\r")).toContain(
      "80 s per dose",
    );
    expect(terminal.raw()).toContain("/help lists the commands, quit ends.");
    await terminal.type("quit\r");
    expect(await terminal.done).toBe(0);
  });

  it("marks an open question in the prompt, and takes a number, the words or a new command", async () => {
    const terminal = open();
    expect(await terminal.type("/dose dilute target:1:5 volume:500 mL\r")).toContain("keeper ?> ");
    expect(await terminal.type("1\r")).toContain("100 mL of stock");
    await terminal.type("/dose dilute target:1:5 volume:500 mL\r");
    expect(await terminal.type("1 to 5 (16.7 % of the whole)\r")).toContain("83.3 mL of stock");
    await terminal.type("/dose dilute target:1:5 volume:500 mL\r");
    expect(await terminal.type("1 part in 4\r")).toContain("125 mL of stock");
    await terminal.type("/dose dilute target:1:5 volume:500 mL\r");
    expect(await terminal.type("/help command:undo\r")).toContain("keeper> ");
    await terminal.type("quit\r");
    await terminal.done;
  });

  it("shows the working of the last answer, and says when there is none", async () => {
    const terminal = open();
    expect(await terminal.type("working\r")).toContain("no computed answer yet");
    await terminal.type("/dose pump daily:48 mL doses:24 flow:1.5 mL/min\r");
    expect(await terminal.type("working\r")).toMatch(/Working: [\s\S]*As read[\s\S]*daily: 48 mL/);
    await terminal.type("quit\r");
    await terminal.done;
  });

  it("becomes another member, who sees nothing of the first", async () => {
    const terminal = open();
    await terminal.type("/tank add name:Lagoon kind:marine containers:box 200 L measured\r");
    expect(await terminal.type("as bruno\r")).toContain("bruno> ");
    expect(await terminal.type("/tank list\r")).toContain("No tanks yet");
    await terminal.type("quit\r");
    await terminal.done;
  });

  it("completes commands, options, units and tank names", async () => {
    const terminal = open();
    await terminal.type("/tank add name:Lagoon kind:marine containers:box 200 L measured\r");
    expect(await terminal.type(`/tan${TAB}`)).toContain("/tank ");
    expect(await terminal.type(`sh${TAB}${TAB}`)).toMatch(/show[\s\S]*share|share[\s\S]*show/);
    await terminal.type(`o${TAB}tan${TAB}`);
    expect(await terminal.type(`La${TAB}\r`)).toContain("200 L (196–204) of water, net");
    expect(await terminal.type(`/salt mix volume:75 g${TAB}${TAB}`)).toContain("75 US gal");
    await terminal.type(`${CTRL_C}quit\r`);
    await terminal.done;
  });

  it("brings earlier lines back with the arrow key, over a restart too", async () => {
    const first = open();
    await first.type("/dose pump daily:48 mL doses:24 flow:1.5 mL/min\r");
    expect(await first.type(`${UP}\r`)).toContain("80 s per dose");
    await first.type(CTRL_D);
    await first.done;
    const second = open();
    expect(await second.type(`${UP}\r`)).toContain("80 s per dose");
    await second.type(CTRL_D);
    await second.done;
  });

  it("clears the line at Ctrl-C but keeps it for the arrow key; on an empty line it ends", async () => {
    const terminal = open();
    const half = "/dose pump daily:48 mL doses:24 flow:1.5 mL/min";
    await terminal.type(half);
    expect(await terminal.type(CTRL_C)).toContain("^C");
    expect(await terminal.type(`${UP}\r`)).toContain("80 s per dose");
    await terminal.type(CTRL_C);
    expect(await terminal.done).toBe(0);
    expect(readFileSync(join(folder, "deep", "history"), "utf8")).toContain(half);
  });

  it("answers pasted lines in order, and what was typed before the end", async () => {
    const terminal = open();
    const shown = await terminal.type(
      "/tank add name:Lagoon kind:marine containers:box 200 L measured\r/log no3 20\r/readings\r",
    );
    expect(shown.indexOf("of water, net")).toBeLessThan(shown.indexOf("Lagoon: logged"));
    expect(shown.indexOf("Lagoon: logged")).toBeLessThan(shown.indexOf("Lagoon: record"));
    const last = await terminal.type(`/tank list\r${CTRL_D}`);
    expect(last).toContain("1 tank");
    expect(await terminal.done).toBe(0);
  });

  it("takes nothing after quit", async () => {
    const terminal = open();
    const shown = await terminal.type(
      "quit\r/tank add name:Lagoon kind:marine containers:box 200 L measured\r",
    );
    expect(shown).not.toContain("of water, net");
    expect(await terminal.done).toBe(0);
  });

  it("forgets its earlier lines when the record is erased", async () => {
    const terminal = open();
    await terminal.type("/tank add name:Lagoon kind:marine containers:box 200 L measured\r");
    await terminal.type("/erase\r1\r");
    expect(readFileSync(join(folder, "deep", "history"), "utf8")).toBe("");
    expect(await terminal.type(UP)).not.toContain("Lagoon");
    await terminal.type(CTRL_D);
    await terminal.done;
  });

  it("goes on when earlier lines cannot be kept", async () => {
    writeFileSync(join(folder, "deep"), "a file where a folder should be");
    const terminal = open();
    expect(await terminal.type("/tank list\r")).toContain("No tanks yet");
    await terminal.type("quit\r");
    expect(await terminal.done).toBe(0);
  });

  it("is coloured on a terminal, and plain elsewhere", async () => {
    const terminal = open();
    await terminal.type("/tank list\rquit\r");
    await terminal.done;
    expect(terminal.raw()).toContain("\u001b[1mNo tanks yet");
    const pipe = open(false);
    await pipe.type("/tank list\n");
    pipe.end();
    expect(await pipe.done).toBe(0);
    expect(pipe.raw()).not.toContain("\u001b");
    expect(existsSync(join(folder, "files"))).toBe(false);
  });
});
