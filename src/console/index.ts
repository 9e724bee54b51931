import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { createInterface } from "node:readline";
import { createInterface as createAsker } from "node:readline/promises";
import type { App } from "../app.ts";
import type { DrawChart } from "../kit/chart.ts";
import type { Reply, ReplyFile } from "../kit/reply.ts";
import { complete } from "./complete.ts";
import { Conversation, type Said } from "./conversation.ts";
import { COLOURED, PLAIN, renderOutcome, renderWorking, type Style, safe } from "./render.ts";

export interface ConsoleParts {
  readonly app: App;
  /** Left out, charts are told in words alone. */
  readonly draw?: DrawChart;
  readonly input: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly output: NodeJS.WritableStream & { readonly isTTY?: boolean };
  /** Who is typing. */
  readonly name: string;
  /** What is said when the chat opens: whatever is due. */
  readonly greeting?: readonly string[];
  /** One command to answer and be done, if any. */
  readonly once?: string;
  readonly asJson: boolean;
  /** Where charts and files are written. */
  readonly filesFolder: string;
  readonly historyFile: string;
}

const HISTORY_LINES = 1_000;

/** Holds the conversation; the exit code is 0 when all was answered. */
export async function runConsole(parts: ConsoleParts): Promise<number> {
  const talk = new Conversation(parts.app, parts.name);
  if (parts.once !== undefined) return (await say(parts, talk, parts.once)) ? 0 : 1;
  return parts.input.isTTY === true && parts.output.isTTY === true
    ? interactive(parts, talk)
    : script(parts, talk);
}

/** Answers one line; false when it was refused, not understood, or left a question open. */
async function say(parts: ConsoleParts, talk: Conversation, line: string): Promise<boolean> {
  const said = await talk.take(line);
  await write(parts, said);
  if (said.kind === "outcome") return said.outcome.kind === "reply" && said.outcome.ok;
  return said.kind === "remark" ? said.ok : true;
}

async function script(parts: ConsoleParts, talk: Conversation): Promise<number> {
  let isFine = true;
  let hasQuestion = false;
  const lines = createAsker({ input: parts.input, crlfDelay: Number.POSITIVE_INFINITY, terminal: false });
  for await (const line of lines) {
    if (line.trim() === "" || line.trimStart().startsWith("#")) continue;
    if (!parts.asJson) parts.output.write(`${talk.name}> ${line}\n`);
    const said = await talk.take(line);
    await write(parts, said);
    if (said.kind === "end") break;
    // A question is fine as long as the script goes on to answer it.
    if (hasQuestion && line.trimStart().startsWith("/")) isFine = false;
    hasQuestion = talk.openQuestion !== undefined;
    if (said.kind === "remark" && !said.ok) isFine = false;
    if (said.kind === "outcome" && said.outcome.kind === "reply" && !said.outcome.ok) isFine = false;
  }
  return isFine && !hasQuestion ? 0 : 1;
}

function interactive(parts: ConsoleParts, talk: Conversation): Promise<number> {
  const { input, output, app, historyFile } = parts;
  const reader = createInterface({
    input,
    output,
    terminal: true,
    history: readHistory(historyFile),
    historySize: HISTORY_LINES,
    removeHistoryDuplicates: true,
    completer: (line: string) => complete(line, app, talk.member),
  });
  // Node keeps the history there, newest first, without saying so in its types.
  const history = (reader as unknown as { history: string[] }).history;
  let isOpen = true;
  const prompt = (): void => {
    if (!isOpen) return;
    reader.setPrompt(`${talk.name}${talk.openQuestion === undefined ? "" : " ?"}> `);
    reader.prompt();
  };
  output.write("Standpipe: sums and tank records for the club. /help lists the commands, quit ends.\n");
  const due = parts.greeting ?? [];
  if (due.length > 0) output.write(`Due now:\n${due.map((line) => `  ${safe(line)}\n`).join("")}`);
  prompt();
  return new Promise((resolve, reject) => {
    // Lines are answered one after the other, whatever the speed of typing or pasting.
    let queue = Promise.resolve();
    let isEnded = false;
    reader.on("line", (line) => {
      queue = queue.then(async () => {
        if (isEnded) return;
        if (line.trim() !== "") {
          remember(historyFile, line);
          const said = await talk.take(line);
          await write(parts, said);
          if (said.kind === "end") {
            isEnded = true;
            return reader.close();
          }
          if (
            said.kind === "outcome" &&
            said.outcome.kind === "reply" &&
            said.outcome.leavesNoTrace === true
          ) {
            forgetHistory(historyFile);
            history.length = 0;
          }
        }
        prompt();
      });
    });
    reader.on("SIGINT", () => {
      if (reader.line === "") {
        output.write("\n");
        return reader.close();
      }
      // What stood on the line is kept in the history: the arrow key brings it back.
      remember(historyFile, reader.line);
      history.unshift(reader.line);
      output.write("^C\n");
      reader.write(null, { ctrl: true, name: "u" });
      prompt();
    });
    reader.on("close", () => {
      isOpen = false;
      // What was typed before the end is still answered.
      queue.then(() => resolve(0), reject);
    });
  });
}

async function write(parts: ConsoleParts, said: Said): Promise<void> {
  const { output, asJson } = parts;
  if (said.kind === "end") return;
  if (asJson) {
    output.write(`${JSON.stringify(said)}\n`);
    return;
  }
  const style: Style = output.isTTY === true ? COLOURED : PLAIN;
  output.write(`${written(said, style)}\n`);
  if (said.kind !== "outcome" || said.outcome.kind !== "reply") return;
  for (const file of [...(said.outcome.files ?? []), ...(await pictures(said.outcome, parts.draw))])
    output.write(`  Written: ${writeOut(parts.filesFolder, file)}\n`);
}

/** The reply's chart, drawn, as it is shown and as it can be enlarged. */
async function pictures(
  { title, chart: ofTime, picture: drawing }: Reply,
  draw: DrawChart | undefined,
): Promise<readonly ReplyFile[]> {
  const chart = ofTime ?? drawing;
  const picture = chart === undefined ? undefined : await draw?.(chart);
  if (chart === undefined || picture === undefined) return [];
  const name =
    title
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "") || "chart";
  const { altText } = chart;
  return [
    {
      name: `${name}.png`,
      mediaType: "image/png",
      content: Buffer.from(picture.png).toString("base64"),
      encoding: "base64",
      altText,
    },
    { name: `${name}.svg`, mediaType: "image/svg+xml", content: picture.svg, encoding: "utf8", altText },
  ];
}

function written(said: Exclude<Said, { kind: "end" }>, style: Style): string {
  if (said.kind === "remark") return said.text;
  if (said.kind === "outcome") return renderOutcome(said.outcome, style);
  return said.reply.working === undefined ? "" : renderWorking(said.reply.title, said.reply.working, style);
}

function writeOut(folder: string, file: ReplyFile): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, file.name.replace(/[^\w.-]/g, "-"));
  writeFileSync(path, file.content, file.encoding);
  return path;
}

function readHistory(file: string): string[] {
  try {
    return readFileSync(file, "utf8").split("\n").filter(Boolean).reverse().slice(0, HISTORY_LINES);
  } catch {
    return [];
  }
}

/** Earlier lines are a convenience: where they cannot be kept, the talk goes on without. */
function remember(file: string, line: string): void {
  try {
    mkdirSync(dirname(file), { recursive: true });
    appendFileSync(file, `${line.replace(/\n/g, " ")}\n`, { mode: 0o600 });
  } catch {
    // A folder that may not be written to.
  }
}

/** Whoever erases their record does not leave it in the history either. */
function forgetHistory(file: string): void {
  try {
    writeFileSync(file, "");
  } catch {
    // There is none.
  }
}
