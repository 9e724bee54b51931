import type { Day } from "../calendar.ts";
import type { Batch } from "./state.ts";

/** The batch as it would stand with these deaths noted today; for weighing them before they are written. */
export function withDeaths(batch: Batch, today: Day, number: number): Batch {
  return { ...batch, rows: [...batch.rows, [today, number, 0, 0, 0]] };
}
