/** What the buttons and forms of a help case do; the id carries the case, so that they outlive a restart. */
export type CaseDeed = "add" | "correct" | "did" | "working" | "show";

const DEEDS: readonly CaseDeed[] = ["add", "correct", "did", "working", "show"];

export interface CaseId {
  readonly deed: CaseDeed;
  readonly caseNumber: string;
  /** In a form: the field its answer goes into. */
  readonly field: string;
}

export function caseButtonId(deed: CaseDeed, caseNumber: number): string {
  return ["case", deed, caseNumber].join(":");
}

export function caseFormId(deed: CaseDeed, caseNumber: string, field: string): string {
  return ["case", deed, caseNumber, field].join(":");
}

/** Undefined for an id of something else. */
export function readCaseId(customId: string): CaseId | undefined {
  const [head, name, caseNumber = "", field = ""] = customId.split(":");
  const deed = DEEDS.find((candidate) => candidate === name);
  return head !== "case" || deed === undefined || !/^\d{1,9}$/.test(caseNumber)
    ? undefined
    : { deed, caseNumber, field };
}

/** The form that opens a case; it carries the message it was opened from, if there is one. */
export function openFormId(starter: string | undefined): string {
  return `case-open:${starter ?? ""}`;
}

export function readOpenFormId(customId: string): { readonly starter: string | undefined } | undefined {
  const match = /^case-open:(\d{0,20})$/.exec(customId);
  if (match === null) return undefined;
  return { starter: match[1] === "" ? undefined : match[1] };
}
