import type { Upload } from "../records/upload.ts";
import { type Option, reading } from "./option.ts";

/** The largest file taken, bytes. */
export const LARGEST_FILE = 10 * 1024 * 1024;

const PREFIX = "upload:";

/** How a file kept for an option stands in a request. */
export function uploadText(id: string): string {
  return `${PREFIX}${id}`;
}

/** A file: attached on a chat platform, named by its path in the terminal. */
export function fileOption(description: string): Option<Upload, true> {
  return {
    ...reading(description, "readings.csv", (text, { records, member }) => {
      const upload = text.startsWith(PREFIX)
        ? records.uploads.find(member.id, text.slice(PREFIX.length))
        : undefined;
      return upload === undefined
        ? { kind: "unreadable", message: "That file is no longer here. Please hand it over again." }
        : { kind: "read", value: upload, readAs: `${upload.name}, ${sizeText(upload.content)}` };
    }),
    kind: "file",
  };
}

function sizeText(content: string): string {
  return content.length < 2048 ? `${content.length} characters` : `${Math.round(content.length / 1024)} kB`;
}
