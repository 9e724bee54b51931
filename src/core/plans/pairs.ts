/** Hours after which a device that is still off is asked about again. */
const LONGEST_ASK_GAP_H = 3;
const SHORTEST_ASK_GAP_H = 0.25;
/** A window as short as this is asked about at night too: animals wait for their pump. Source: assumption. */
const URGENT_WINDOW_H = 6;

/** How long to wait before asking again whether something is back on. Source: assumption. */
export function askAgainHours(windowHours: number): number {
  return Math.min(LONGEST_ASK_GAP_H, Math.max(SHORTEST_ASK_GAP_H, windowHours / 4));
}

/** Whether the question may come in the quiet hours. Source: assumption. */
export function isUrgent(windowHours: number): boolean {
  return windowHours <= URGENT_WINDOW_H;
}

/** When it is due back, once it is known when it really went off. */
export function backDueAt(offAt: number, windowHours: number): number {
  return offAt + windowHours * 3_600_000;
}
