import type { MemberId } from "./ids.ts";

/** A file a member handed over. */
export interface Upload {
  readonly id: string;
  readonly name: string;
  readonly content: string;
}

export interface UploadRecords {
  keep(owner: MemberId, upload: Upload, now: string): void;
  /** Only its owner finds it. */
  find(owner: MemberId, id: string): Upload | undefined;
  drop(owner: MemberId, id: string): void;
}
