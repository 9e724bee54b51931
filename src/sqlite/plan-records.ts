import type { Database } from "better-sqlite3";
import { z } from "zod";
import { backDueAt } from "../core/plans/pairs.ts";
import { UserError } from "../kit/user-error.ts";
import type { MemberId } from "../records/ids.ts";
import type {
  Duty,
  DutyEntry,
  NewDuty,
  NewPlan,
  Plan,
  PlanChange,
  PlanRecords,
  Regimen,
  ReminderWishes,
} from "../records/plan.ts";
import { SqliteLogRecords } from "./log-records.ts";
import { dutyOf, dutyRow, planOf, planRow, regimenOf, regimenRow } from "./plan-rows.ts";

/** More plans than this is a mistake or mischief. */
const MOST_PLANS = 200;
/** Quiet from ten in the evening till seven, until the member says otherwise. */
const USUAL_WISHES: ReminderWishes = { place: "dm", quietFrom: 22 * 60, quietUntil: 7 * 60 };

const wishRow = z.object({
  place: z.string(),
  fallback: z.string().nullable(),
  quiet_from: z.number(),
  quiet_until: z.number(),
});

export class SqlitePlanRecords implements PlanRecords {
  readonly #db: Database;
  readonly #log: SqliteLogRecords;

  constructor(db: Database) {
    this.#db = db;
    this.#log = new SqliteLogRecords(db);
  }

  add(owner: MemberId, plan: NewPlan, now: string): Plan {
    return this.#db.transaction(() => this.#insert(owner, plan, undefined, now)).immediate();
  }

  of(owner: MemberId): readonly Plan[] {
    return this.#plans("WHERE member_id = ? AND state <> 'over' ORDER BY id", owner);
  }

  find(owner: MemberId, planId: number): Plan | undefined {
    return this.#plans("WHERE id = ? AND member_id = ?", planId, owner)[0];
  }

  change(owner: MemberId, planId: number, change: PlanChange): void {
    const { changes } = this.#db
      .prepare(
        `UPDATE plan SET state = ?, why = ?, next_at = ?, last_day = coalesce(?, last_day),
           not_before = coalesce(?, not_before), rule = coalesce(?, rule)
         WHERE id = ? AND member_id = ?`,
      )
      .run(
        change.state,
        change.why ?? null,
        change.nextAt ?? null,
        change.lastDay ?? null,
        change.notBefore ?? null,
        change.rule === undefined ? null : JSON.stringify(change.rule),
        planId,
        owner,
      );
    if (changes === 0) throw new UserError("not-yours", "That plan is not one of yours.");
  }

  switchOff(
    owner: MemberId,
    plan: NewPlan,
    [off, back]: readonly [NewDuty, NewDuty],
    entry: DutyEntry,
    now: string,
  ): Duty {
    return this.#db
      .transaction(() => {
        const made = this.#insert(owner, plan, undefined, now);
        this.change(owner, made.id, { state: "over" });
        const [offId = 0, backId = 0] = insertDuties(this.#db, made, [off, back]);
        this.settle(owner, offId, "done", entry, off.dueAt, now, false);
        const duty = this.duty(owner, backId);
        if (duty === undefined) throw new Error("the way back was not put down");
        return duty;
      })
      .immediate();
  }

  startRegimen(
    owner: MemberId,
    regimen: Pick<Regimen, "tankId" | "pattern" | "settings" | "startedAt">,
    plans: readonly NewPlan[],
    now: string,
  ): Regimen {
    return this.#db
      .transaction(() => {
        const { lastInsertRowid } = this.#db
          .prepare(
            `INSERT INTO regimen (member_id, tank_id, pattern, settings, state, started_at)
             SELECT member_id, id, ?, ?, 'running', ? FROM tank WHERE id = ? AND member_id = ?`,
          )
          .run(
            regimen.pattern,
            JSON.stringify(regimen.settings),
            regimen.startedAt,
            ...[regimen.tankId, owner],
          );
        const id = Number(lastInsertRowid);
        for (const plan of plans) this.#insert(owner, plan, id, now);
        return this.#mustFind(owner, id);
      })
      .immediate();
  }

  regimens(owner: MemberId): readonly Regimen[] {
    return z
      .array(regimenRow)
      .parse(
        this.#db
          .prepare(
            "SELECT * FROM regimen WHERE member_id = ? ORDER BY state = 'over', CASE state WHEN 'over' THEN -id ELSE id END",
          )
          .all(owner),
      )
      .map(regimenOf);
  }

  regimen(owner: MemberId, regimenId: number): Regimen | undefined {
    const found = this.#db
      .prepare("SELECT * FROM regimen WHERE id = ? AND member_id = ?")
      .get(regimenId, owner);
    return found === undefined ? undefined : regimenOf(regimenRow.parse(found));
  }

  plansOf(owner: MemberId, regimenId: number): readonly Plan[] {
    return this.#plans("WHERE regimen_id = ? AND member_id = ? ORDER BY id", regimenId, owner);
  }

  changeRegimen(
    owner: MemberId,
    regimenId: number,
    change: Parameters<PlanRecords["changeRegimen"]>[2],
  ): void {
    this.#mustFind(owner, regimenId);
    this.#db
      .prepare(
        "UPDATE regimen SET state = ?, why = ?, started_at = ?, paused_at = ? WHERE id = ? AND member_id = ?",
      )
      .run(
        change.state,
        change.why ?? null,
        change.startedAt,
        change.pausedAt ?? null,
        ...[regimenId, owner],
      );
  }

  open(owner: MemberId): readonly Duty[] {
    return this.#duties(
      "WHERE member_id = ? AND state = 'open' AND half <> 'notice' ORDER BY due_at, id LIMIT 500",
      owner,
    );
  }

  duty(owner: MemberId, dutyId: number): Duty | undefined {
    return this.#duties("WHERE id = ? AND member_id = ?", dutyId, owner)[0];
  }

  settled(owner: MemberId, planIds: readonly number[], since: string): readonly Duty[] {
    return this.#duties(
      `WHERE member_id = ? AND plan_id IN (SELECT value FROM json_each(?)) AND due_at >= ?
         AND state <> 'open' AND half <> 'notice' ORDER BY due_at, id LIMIT 500`,
      owner,
      JSON.stringify(planIds),
      since,
    );
  }

  settle(
    owner: MemberId,
    dutyId: number,
    as: "done" | "skipped",
    entry: DutyEntry | undefined,
    at: string,
    now: string,
    replaces: boolean,
  ): boolean {
    return this.#db
      .transaction(() => {
        const duty = this.duty(owner, dutyId);
        if (duty === undefined)
          throw new UserError("not-found", `There is no task ${dutyId} of yours. /plan due lists them.`);
        const isAnew = duty.state === "done" || duty.state === "skipped";
        if (isAnew && !replaces) return false;
        if (isAnew) this.#takeBack(dutyId, now);
        const batch =
          entry === undefined ? null : this.#log.add({ owner, tankId: duty.tankId, ...entry, now });
        this.#db
          .prepare(
            "UPDATE duty SET state = ?, tell_at = NULL, settled_at = ?, batch_id = ? WHERE id = ? AND member_id = ?",
          )
          .run(as, at, batch, dutyId, owner);
        if (duty.half === "off") this.#settleWayBack(duty, as, at, now);
        if (duty.half === "back")
          this.#db
            .prepare(
              `UPDATE duty SET state = 'missed', tell_at = NULL, settled_at = ?
               WHERE plan_id = ? AND half IN ('off', 'back') AND state = 'open' AND planned_at < ?`,
            )
            .run(now, duty.planId, duty.plannedAt);
        if (duty.half === "whole")
          this.#db
            .prepare(
              `UPDATE duty SET state = 'missed', tell_at = NULL, settled_at = ?
               WHERE plan_id = ? AND half = 'whole' AND state = 'open' AND due_at < ?`,
            )
            .run(now, duty.planId, duty.dueAt);
        return true;
      })
      .immediate();
  }

  postpone(owner: MemberId, dutyId: number, tellAt: string): boolean {
    return (
      this.#db
        .prepare("UPDATE duty SET tell_at = ? WHERE id = ? AND member_id = ? AND state = 'open'")
        .run(tellAt, dutyId, owner).changes === 1
    );
  }

  switchedOff(tankId: number): readonly { readonly off: Duty; readonly back: Duty }[] {
    return this.#duties(
      "WHERE tank_id = ? AND half = 'back' AND state = 'open' ORDER BY due_at",
      tankId,
    ).flatMap((back) => {
      const [off] = back.pairOf === undefined ? [] : this.#duties("WHERE id = ?", back.pairOf);
      return off === undefined ? [] : [{ off, back }];
    });
  }

  wishes(owner: MemberId): ReminderWishes {
    return readWishes(
      this.#db
        .prepare("SELECT place, fallback, quiet_from, quiet_until FROM reminder_wish WHERE member_id = ?")
        .get(owner),
    );
  }

  setWishes(owner: MemberId, { place, fallback, quietFrom, quietUntil }: ReminderWishes): void {
    this.#db
      .prepare(
        `INSERT INTO reminder_wish (member_id, place, fallback, quiet_from, quiet_until) VALUES (?, ?, ?, ?, ?)
         ON CONFLICT (member_id) DO UPDATE SET place = excluded.place, fallback = excluded.fallback,
           quiet_from = excluded.quiet_from, quiet_until = excluded.quiet_until`,
      )
      .run(owner, place, fallback ?? null, quietFrom, quietUntil);
  }

  /** Done later than planned, the way back moves along; skipped, there is nothing to bring back. */
  #settleWayBack(off: Duty, as: "done" | "skipped", at: string, now: string): void {
    if (as === "skipped") {
      this.#db
        .prepare(
          "UPDATE duty SET state = 'skipped', tell_at = NULL, settled_at = ? WHERE pair_of = ? AND state = 'open'",
        )
        .run(now, off.id);
      return;
    }
    const backAt = new Date(backDueAt(Date.parse(at), off.words.hours ?? 0)).toISOString();
    this.#db
      .prepare("UPDATE duty SET due_at = ?, tell_at = ? WHERE pair_of = ? AND state = 'open'")
      .run(backAt, backAt, off.id);
  }

  /** What was logged when it was settled the first time goes, as by /undo. */
  #takeBack(dutyId: number, now: string): void {
    const batch = this.#db.prepare("SELECT batch_id FROM duty WHERE id = ?").pluck().get(dutyId);
    if (batch === null) return;
    for (const sql of [
      "UPDATE batch SET undone_at = ? WHERE id = ? AND undone_at IS NULL",
      "UPDATE reading SET gone_at = ? WHERE batch_id = ? AND gone_at IS NULL",
      "UPDATE event SET gone_at = ? WHERE batch_id = ? AND gone_at IS NULL",
    ])
      this.#db.prepare(sql).run(now, batch);
  }

  #insert(owner: MemberId, plan: NewPlan, regimenId: number | undefined, now: string): Plan {
    const count = z
      .number()
      .parse(
        this.#db
          .prepare("SELECT count(*) FROM plan WHERE member_id = ? AND state <> 'over'")
          .pluck()
          .get(owner),
      );
    if (count >= MOST_PLANS)
      throw new UserError(
        "not-now",
        `You have ${count} plans, the most one member may have. Stop one first.`,
      );
    const { lastInsertRowid, changes } = this.#db
      .prepare(
        `INSERT INTO plan (member_id, tank_id, regimen_id, task, rule, until, typed, state, next_at, not_before, created_at)
         SELECT member_id, id, ?, ?, ?, ?, ?, 'running', ?, ?, ? FROM tank WHERE id = ? AND member_id = ?`,
      )
      .run(
        regimenId ?? null,
        JSON.stringify(plan.task),
        JSON.stringify(plan.rule),
        plan.until === undefined ? null : JSON.stringify(plan.until),
        plan.typed,
        plan.nextAt ?? null,
        plan.notBefore,
        now,
        ...[plan.tankId, owner],
      );
    const made = changes === 0 ? undefined : this.find(owner, Number(lastInsertRowid));
    if (made === undefined) throw new UserError("not-yours", "That tank is not one of yours.");
    return made;
  }

  #mustFind(owner: MemberId, regimenId: number): Regimen {
    const found = this.regimen(owner, regimenId);
    if (found === undefined) throw new UserError("not-yours", "That regimen is not one of yours.");
    return found;
  }

  #plans(where: string, ...values: (string | number)[]): readonly Plan[] {
    return z
      .array(planRow)
      .parse(this.#db.prepare(`SELECT * FROM plan ${where}`).all(...values))
      .map(planOf);
  }

  #duties(where: string, ...values: (string | number)[]): readonly Duty[] {
    return z
      .array(dutyRow)
      .parse(this.#db.prepare(`SELECT * FROM duty ${where}`).all(...values))
      .map(dutyOf);
  }
}

/** The member's wishes, or what is usual. */
export function readWishes(found: unknown): ReminderWishes {
  if (found === undefined) return USUAL_WISHES;
  const { place, fallback, quiet_from, quiet_until } = wishRow.parse(found);
  return {
    place,
    ...(fallback === null ? {} : { fallback }),
    quietFrom: quiet_from,
    quietUntil: quiet_until,
  };
}

/**
 * Puts duties down, in order; a way back belongs to the going-off before it. A due time made before is not
 * made again: its place in the result is undefined.
 */
export function insertDuties(
  db: Database,
  plan: Plan,
  duties: readonly NewDuty[],
): readonly (number | undefined)[] {
  const insert = db.prepare(
    `INSERT INTO duty (plan_id, member_id, tank_id, half, planned_at, due_at, words, state, tell_at, pair_of)
     VALUES (?, ?, ?, ?, ?, ?, ?, 'open', ?, ?) ON CONFLICT DO NOTHING`,
  );
  let off: number | undefined;
  return duties.map(({ half, plannedAt, dueAt, tellAt, words }) => {
    const { changes, lastInsertRowid } = insert.run(
      plan.id,
      plan.owner,
      plan.tankId,
      half,
      plannedAt,
      dueAt,
      JSON.stringify(words),
      tellAt ?? null,
      half === "back" ? (off ?? null) : null,
    );
    const id = changes === 0 ? undefined : Number(lastInsertRowid);
    if (half === "off") off = id;
    return id;
  });
}
