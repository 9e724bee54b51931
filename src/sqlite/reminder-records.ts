import type { Database } from "better-sqlite3";
import { z } from "zod";
import type { MemberId } from "../records/ids.ts";
import type {
  Duty,
  Letter,
  LetterItem,
  PlanStep,
  ReminderRecords,
  ReminderWishes,
  RunningPlan,
} from "../records/plan.ts";
import { insertDuties, readWishes } from "./plan-records.ts";
import { dutyOf, dutyRow, planOf, planRow, regimenOf, regimenRow } from "./plan-rows.ts";

/** No letter that is tried again waits longer than this, by a clock that runs true. */
const LONGEST_WAIT_MS = 20 * 60_000;

const letterRow = z.object({
  id: z.number(),
  member_id: z.string(),
  key: z.string(),
  items: z.string(),
  wishes: z.string().nullable(),
  attempts: z.number(),
  first_tried_at: z.string().nullable(),
  created_at: z.string(),
});
const idRow = z.object({ member_id: z.string() });

export class SqliteReminderRecords implements ReminderRecords {
  readonly #db: Database;

  constructor(db: Database) {
    this.#db = db;
  }

  toLookAt(now: string, most: number): readonly RunningPlan[] {
    const rows = this.#db
      .prepare(
        `SELECT plan.*, member.zone FROM plan JOIN member ON member.id = plan.member_id
         WHERE plan.id IN (
           SELECT id FROM plan WHERE look = 1
           UNION SELECT id FROM (SELECT id FROM plan WHERE state = 'running' AND next_at IS NOT NULL AND next_at <= ? ORDER BY next_at LIMIT ?)
         ) LIMIT ?`,
      )
      .all(now, most, most);
    return z
      .array(planRow.extend({ zone: z.string() }))
      .parse(rows)
      .map((row) => {
        const regimen =
          row.regimen_id === null
            ? undefined
            : this.#db.prepare("SELECT * FROM regimen WHERE id = ?").get(row.regimen_id);
        return {
          ...planOf(row),
          zone: row.zone,
          ...(regimen === undefined ? {} : { regimen: regimenOf(regimenRow.parse(regimen)) }),
        };
      });
  }

  putStep(plan: RunningPlan, step: PlanStep, now: string): boolean {
    return this.#db
      .transaction(() => {
        const { changes } = this.#db
          .prepare(
            `UPDATE plan SET state = ?, why = ?, next_at = ?, last_day = ?, look = 0
             WHERE id = ? AND state = ? AND next_at IS ? AND last_day IS ? AND not_before = ?`,
          )
          .run(
            step.state,
            step.why ?? null,
            step.nextAt ?? null,
            step.lastDay ?? null,
            plan.id,
            plan.state,
            plan.nextAt ?? null,
            plan.lastDay ?? null,
            plan.notBefore,
          );
        if (changes === 0) return false;
        insertDuties(this.#db, plan, step.duties);
        if (step.regimen !== undefined && plan.regimen !== undefined) {
          const { state, why } = step.regimen;
          this.#db
            .prepare("UPDATE regimen SET state = ?, why = ? WHERE id = ?")
            .run(state, why ?? null, plan.regimen.id);
          if (state === "over")
            this.#db
              .prepare(
                "UPDATE plan SET state = 'over', why = ?, next_at = NULL, look = 0 WHERE regimen_id = ? AND state <> 'over'",
              )
              .run(why ?? null, plan.regimen.id);
        }
        // Told and left: the newest due time of a plan takes the place of those before it.
        if (step.duties.some(({ half }) => half === "whole"))
          this.#db
            .prepare(
              `UPDATE duty SET state = 'missed', settled_at = ?, tell_at = NULL WHERE plan_id = ? AND half = 'whole'
                 AND state = 'open' AND tell_at IS NULL AND due_at < ?`,
            )
            .run(now, plan.id, step.duties.at(-1)?.plannedAt ?? now);
        return true;
      })
      .immediate();
  }

  writeLetters(parts: Parameters<ReminderRecords["writeLetters"]>[0]): number {
    const { now, prefix, most } = parts;
    return this.#db
      .transaction(() => {
        const members = z.array(idRow).parse(
          this.#db
            .prepare(
              `SELECT DISTINCT member_id FROM duty WHERE tell_at IS NOT NULL AND tell_at <= ?
                   AND substr(member_id, 1, ?) = ? LIMIT ?`,
            )
            .all(now, prefix.length, prefix, most),
        );
        for (const { member_id } of members) this.#writeLetter(member_id as MemberId, parts);
        return members.length;
      })
      .immediate();
  }

  #writeLetter(owner: MemberId, parts: Parameters<ReminderRecords["writeLetters"]>[0]): void {
    const { now } = parts;
    const { wishes, zone } = this.#wishesOf(owner);
    const waiting = z
      .array(dutyRow)
      .parse(
        this.#db
          .prepare(
            "SELECT * FROM duty WHERE member_id = ? AND tell_at IS NOT NULL AND tell_at <= ? ORDER BY due_at, id",
          )
          .all(owner, now),
      )
      .map(dutyOf);
    const holdUntil = parts.holdUntil(wishes, zone);
    const setTellAt = this.#db.prepare("UPDATE duty SET tell_at = ? WHERE id = ?");
    const told: Duty[] = [];
    for (const duty of waiting) {
      if (holdUntil !== undefined && !parts.isUrgent(duty)) setTellAt.run(holdUntil, duty.id);
      else told.push(duty);
    }
    if (told.length === 0) return;
    const settle = this.#db.prepare("UPDATE duty SET state = ?, tell_at = NULL, settled_at = ? WHERE id = ?");
    const newest = told.filter(
      (duty) =>
        duty.half !== "whole" ||
        told.findLast(({ planId, half }) => planId === duty.planId && half === "whole") === duty,
    );
    const items = newest.map((duty): LetterItem => {
      const { id, half, dueAt, words } = duty;
      const missed = told.filter(
        (other) =>
          half === "whole" && other.half === "whole" && other.planId === duty.planId && other.id !== id,
      );
      for (const other of missed) settle.run("missed", now, other.id);
      if (half === "notice") settle.run("done", now, id);
      else setTellAt.run(parts.tellAgainAt(duty) ?? null, id);
      return {
        duty: { id, half, dueAt, words },
        tank: this.#tankName(duty.tankId),
        missed: missed.map((other) => other.dueAt),
      };
    });
    this.#db
      .prepare(
        "INSERT INTO letter (member_id, key, items, wishes, state, try_at, created_at) VALUES (?, ?, ?, ?, 'waiting', ?, ?)",
      )
      .run(owner, parts.newKey(), JSON.stringify(items), JSON.stringify(wishes), now, now);
  }

  claim(prefix: string, now: string, leaseMs: number, most: number): readonly Letter[] {
    const stale = new Date(Date.parse(now) - leaseMs).toISOString();
    // Nothing waits so long: the clock was set back, and the letter goes now.
    const ahead = new Date(Date.parse(now) + LONGEST_WAIT_MS).toISOString();
    // Before a letter leaves, the mark that it may have left is on the disk itself, and all before it too.
    this.#db.pragma("synchronous = FULL");
    try {
      return this.#db
        .transaction(() => {
          const rows = z.array(letterRow).parse(
            this.#db
              .prepare(
                `SELECT id, member_id, key, items, wishes, attempts, first_tried_at, created_at FROM letter
                   WHERE state IN ('waiting', 'trying')
                     AND (try_at <= CASE state WHEN 'waiting' THEN ? ELSE ? END OR try_at > ?)
                     AND substr(member_id, 1, ?) = ? ORDER BY try_at, id LIMIT ?`,
              )
              .all(now, stale, ahead, prefix.length, prefix, most),
          );
          const take = this.#db.prepare(
            `UPDATE letter SET state = 'trying', attempts = attempts + 1, try_at = ?,
               first_tried_at = coalesce(first_tried_at, ?) WHERE id = ?`,
          );
          return rows.map((row): Letter => {
            take.run(now, now, row.id);
            const owner = row.member_id as MemberId;
            return {
              id: row.id,
              owner,
              ...this.#wishesOf(owner),
              ...(row.wishes === null ? {} : { wishes: JSON.parse(row.wishes) as ReminderWishes }),
              key: row.key,
              items: JSON.parse(row.items) as LetterItem[],
              attempts: row.attempts,
              ...(row.first_tried_at === null ? {} : { firstTriedAt: row.first_tried_at }),
              createdAt: row.created_at,
            };
          });
        })
        .immediate();
    } finally {
      this.#db.pragma("synchronous = NORMAL");
    }
  }

  sent(letterId: number, place: string, messageId: string, now: string): void {
    this.#db
      .prepare("UPDATE letter SET state = 'sent', place = ?, message_id = ?, try_at = ? WHERE id = ?")
      .run(place, messageId, now, letterId);
  }

  refused(letterId: number, why: string, tellAgainAt: string): void {
    this.#db
      .transaction(() => {
        const items = this.#db.prepare("SELECT items FROM letter WHERE id = ?").pluck().get(letterId);
        this.#db
          .prepare("UPDATE letter SET state = 'refused', why = ? WHERE id = ? AND state = 'trying'")
          .run(why, letterId);
        if (typeof items !== "string") return;
        const again = this.#db.prepare(
          "UPDATE duty SET tell_at = ?, state = 'open', settled_at = NULL WHERE id = ? AND (state = 'open' OR half = 'notice') AND (tell_at IS NULL OR tell_at > ?)",
        );
        for (const { duty } of JSON.parse(items) as LetterItem[])
          again.run(tellAgainAt, duty.id, tellAgainAt);
      })
      .immediate();
  }

  uncertain(letterId: number, tryAt: string): void {
    this.#db
      .prepare("UPDATE letter SET state = 'waiting', try_at = ? WHERE id = ? AND state = 'trying'")
      .run(tryAt, letterId);
  }

  #wishesOf(owner: MemberId): { readonly wishes: ReminderWishes; readonly zone: string } {
    const zone = z
      .string()
      .parse(this.#db.prepare("SELECT zone FROM member WHERE id = ?").pluck().get(owner));
    const found = this.#db
      .prepare("SELECT place, fallback, quiet_from, quiet_until FROM reminder_wish WHERE member_id = ?")
      .get(owner);
    return { wishes: readWishes(found), zone };
  }

  #tankName(tankId: number): string {
    const name = this.#db
      .prepare("SELECT name FROM tank_name WHERE tank_id = ? AND is_alias = 0")
      .pluck()
      .get(tankId);
    return typeof name === "string" ? name : "";
  }
}
