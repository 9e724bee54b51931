/** What a button does; its id carries the exchange it belongs to, so that it works after a restart. */
export type ButtonDeed = "working" | "post" | "show" | "choose" | "menu" | "fill" | "form";

const DEEDS: readonly ButtonDeed[] = ["working", "post", "show", "choose", "menu", "fill", "form"];

export function buttonId(deed: ButtonDeed, exchangeId: string, index?: number): string {
  return [deed, exchangeId, ...(index === undefined ? [] : [index])].join(":");
}

/** Undefined for an id this version never made. */
export function readButtonId(
  customId: string,
): { readonly deed: ButtonDeed; readonly exchangeId: string; readonly index: number } | undefined {
  const [name, exchangeId = "", index = "0"] = customId.split(":");
  const deed = DEEDS.find((candidate) => candidate === name);
  return deed === undefined || exchangeId === "" ? undefined : { deed, exchangeId, index: Number(index) };
}

/** What the buttons of a reminder do: the commands of the same names do the work. */
export type DutyDeed = "done" | "later" | "skip" | "due";

const DUTY_DEEDS: readonly DutyDeed[] = ["done", "later", "skip", "due"];

/** The key names the letter: a letter that was posted is known again by it. */
export function dutyButtonId(deed: DutyDeed, dutyId: number, key: string): string {
  return [deed, dutyId, key].join(":");
}

export function readDutyButtonId(
  customId: string,
): { readonly deed: DutyDeed; readonly dutyId: string } | undefined {
  const [name, dutyId = ""] = customId.split(":");
  const deed = DUTY_DEEDS.find((candidate) => candidate === name);
  return deed === undefined || !/^\d+$/.test(dutyId) ? undefined : { deed, dutyId };
}
