import { existsSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../assemble.ts";
import { chat } from "../chat.ts";
import { buildDemo } from "./build.ts";

const FILE = join(ROOT, "data/local/demo.sqlite");

/** `npm run demo`: the chat on the invented club's file; `--fresh` writes its year anew, up to now. */
const args = process.argv.slice(2);
if (!existsSync(FILE) || args.includes("--fresh")) {
  process.stderr.write("Writing the demo club's year …\n");
  await buildDemo(FILE, Date.now());
}
process.env["DATABASE_FILE"] = FILE;
const rest = args.filter((arg) => arg !== "--fresh");
process.exitCode = await chat(rest.includes("--as") ? rest : ["--as", "ines", ...rest]);
