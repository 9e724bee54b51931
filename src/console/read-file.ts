import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { LARGEST_FILE } from "../kit/file-option.ts";
import { quoted } from "../kit/text.ts";
import { UserError } from "../kit/user-error.ts";

/** What the system's words for a failed read mean. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is none of that name",
  EISDIR: "it is a folder",
  EACCES: "reading it is not allowed",
  EPERM: "reading it is not allowed",
};

/** A text file beside the terminal. Throws: UserError when it cannot be read or is too large. */
export function readFileFrom(path: string): { readonly name: string; readonly content: string } {
  let size: number;
  try {
    size = statSync(path).size;
    if (size <= LARGEST_FILE) return { name: basename(path), content: readFileSync(path, "utf8") };
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    throw new UserError(
      "not-found",
      `The file ${quoted(path, 80)} cannot be read: ${REASONS[code] ?? `the system says ${code}`}. Give its path, e.g. file:readings.csv`,
      {
        cause: error,
      },
    );
  }
  throw new UserError(
    "bad-input",
    `${quoted(path, 80)} has ${Math.ceil(size / 1024 / 1024)} MB; at most ${LARGEST_FILE / 1024 / 1024} MB fit. Split it in two.`,
  );
}
