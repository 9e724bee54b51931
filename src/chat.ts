import { dirname, join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { assemble, loadConfig, ROOT } from "./assemble.ts";
import { consoleMember } from "./console/conversation.ts";
import { runConsole } from "./console/index.ts";
import { sayAndFail } from "./failure.ts";

const USAGE = `Standpipe in the terminal.

  npm start                               open the chat
  npm start -- "/salt mix volume:110 L salinity:35 ppt"
                                          answer one command and end
  npm start -- --as bruno                 be another member
  npm start -- --json "/help"             print the reply as data
  npm start -- --due                      print what is due, for a timetable; nothing when nothing is
  npm start < script.txt                  answer a script, line by line; the exit code is 1
                                          when a line was refused or a question left open
`;

/** The exit code of a program whose pipe was closed: 128 and the signal's number, 13. */
const READER_GONE = 141;

/** Opens the terminal chat; resolves to the exit code. */
export async function chat(argv: readonly string[]): Promise<number> {
  let parsed: ReturnType<typeof readArguments>;
  try {
    parsed = readArguments(argv);
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
    return 2;
  }
  const { values, positionals } = parsed;
  if (values.help) {
    process.stdout.write(USAGE);
    return 0;
  }
  // Whoever read the answers has gone (“… | head”): nobody is left to tell.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit(READER_GONE);
  });
  try {
    const { databaseFile } = loadConfig();
    const { app, draw, clockwork, due, close } = assemble(databaseFile);
    const plans = clockwork();
    // A database that is busy at this moment is looked at again a little later.
    await plans.tick().catch(() => undefined);
    const dueNow = due(consoleMember(values.as));
    if (values.due) {
      process.stdout.write(dueNow.map((line) => `${line}\n`).join(""));
      await close();
      return 0;
    }
    plans.start();
    // Files and earlier lines lie beside the database they belong to.
    const home = dirname(resolve(ROOT, databaseFile === ":memory:" ? "data/local/none" : databaseFile));
    const once = positionals.join(" ").trim();
    const code = await runConsole({
      app,
      draw,
      input: process.stdin,
      output: process.stdout,
      name: values.as,
      greeting: dueNow,
      ...(once === "" ? {} : { once }),
      asJson: values.json,
      filesFolder: join(home, "files"),
      historyFile: join(home, "history"),
    });
    await plans.stop();
    await close();
    return code;
  } catch (error) {
    return sayAndFail(error);
  }
}

function readArguments(argv: readonly string[]) {
  return parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      as: { type: "string", default: "keeper" },
      json: { type: "boolean", default: false },
      due: { type: "boolean", default: false },
      help: { type: "boolean", default: false },
    },
  });
}

if (import.meta.filename === process.argv[1]) process.exitCode = await chat(process.argv.slice(2));
