import { BadConfig } from "./config.ts";
import { DatabaseProblem } from "./sqlite/open.ts";

/** Says in a sentence what stops the program from starting, and returns the exit code; rethrows defects. */
export function sayAndFail(error: unknown): number {
  if (error instanceof BadConfig) {
    process.stderr.write(`These settings cannot be used (see .env.example):\n${error.message}\n`);
    return 78;
  }
  if (error instanceof DatabaseProblem) {
    process.stderr.write(`${error.message}\n`);
    return 74;
  }
  throw error;
}
