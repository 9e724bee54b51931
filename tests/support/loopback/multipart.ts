/** A request's body: JSON, or multipart with `payload_json` and `files[n]`. */

import { type Json, parseJson } from "./json.ts";
import { refuse } from "./refusals.ts";

export interface UploadedFile {
  /** The n of `files[n]`, by which the body's `attachments` name it. */
  readonly index: string;
  readonly name: string;
  readonly contentType: string;
  readonly bytes: Uint8Array;
}

export interface RequestBody {
  readonly json: Json | undefined;
  readonly files: readonly UploadedFile[];
}

/** Throws: Refusal 400/50109 for a body that is neither. */
export async function readBody(bytes: Buffer, contentType: string): Promise<RequestBody> {
  if (bytes.length === 0) return { json: undefined, files: [] };
  if (contentType.startsWith("application/json")) return { json: parsed(bytes.toString("utf8")), files: [] };
  if (!contentType.startsWith("multipart/form-data")) throw refuse.badJson();

  const form = await new Response(new Uint8Array(bytes), {
    headers: { "content-type": contentType },
  }).formData();
  const payload = form.get("payload_json");
  const files: UploadedFile[] = [];
  for (const [key, value] of form.entries()) {
    const index = /^files\[(\d+)\]$/.exec(key)?.[1];
    if (index === undefined || typeof value === "string") continue;
    const content = new Uint8Array(await value.arrayBuffer());
    files.push({
      index,
      name: value.name,
      contentType: value.type || "application/octet-stream",
      bytes: content,
    });
  }
  return { json: typeof payload === "string" ? parsed(payload) : {}, files };
}

function parsed(text: string): Json {
  const json = parseJson(text);
  if (json === undefined) throw refuse.badJson();
  return json;
}
