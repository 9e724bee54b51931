import { z } from "zod";
import type { Rule } from "../core/plans/recurrence.ts";
import { REGIMEN_IDS, type RegimenSettings } from "../core/plans/regimens.ts";
import type { Task } from "../core/plans/task.ts";
import type { Until } from "../core/plans/until.ts";
import type { MemberId } from "../records/ids.ts";
import type { Duty, DutyWords, Plan, Regimen } from "../records/plan.ts";

const state = z.enum(["running", "paused", "over"]);

export const planRow = z.object({
  id: z.number(),
  member_id: z.string(),
  tank_id: z.number(),
  regimen_id: z.number().nullable(),
  task: z.string(),
  rule: z.string(),
  until: z.string().nullable(),
  typed: z.string(),
  state,
  why: z.string().nullable(),
  next_at: z.string().nullable(),
  last_day: z.number().nullable(),
  not_before: z.string(),
  created_at: z.string(),
});

export const regimenRow = z.object({
  id: z.number(),
  member_id: z.string(),
  tank_id: z.number(),
  pattern: z.enum(REGIMEN_IDS),
  settings: z.string(),
  state,
  why: z.string().nullable(),
  started_at: z.string(),
  paused_at: z.string().nullable(),
});

export const dutyRow = z.object({
  id: z.number(),
  plan_id: z.number(),
  member_id: z.string(),
  tank_id: z.number(),
  half: z.enum(["whole", "off", "back", "notice"]),
  planned_at: z.string(),
  due_at: z.string(),
  words: z.string(),
  state: z.enum(["open", "done", "skipped", "missed"]),
  tell_at: z.string().nullable(),
  settled_at: z.string().nullable(),
  pair_of: z.number().nullable(),
});

/** Tasks, rules and words are written by this room alone, in the core's own shapes. */
export function planOf(row: z.infer<typeof planRow>): Plan {
  return {
    id: row.id,
    owner: row.member_id as MemberId,
    tankId: row.tank_id,
    ...(row.regimen_id === null ? {} : { regimenId: row.regimen_id }),
    task: JSON.parse(row.task) as Task,
    rule: JSON.parse(row.rule) as Rule,
    ...(row.until === null ? {} : { until: JSON.parse(row.until) as Until }),
    typed: row.typed,
    state: row.state,
    ...(row.why === null ? {} : { why: row.why }),
    ...(row.next_at === null ? {} : { nextAt: row.next_at }),
    ...(row.last_day === null ? {} : { lastDay: row.last_day }),
    notBefore: row.not_before,
    createdAt: row.created_at,
  };
}

export function regimenOf(row: z.infer<typeof regimenRow>): Regimen {
  return {
    id: row.id,
    owner: row.member_id as MemberId,
    tankId: row.tank_id,
    pattern: row.pattern,
    settings: JSON.parse(row.settings) as RegimenSettings,
    state: row.state,
    ...(row.why === null ? {} : { why: row.why }),
    startedAt: row.started_at,
    ...(row.paused_at === null ? {} : { pausedAt: row.paused_at }),
  };
}

export function dutyOf(row: z.infer<typeof dutyRow>): Duty {
  return {
    id: row.id,
    planId: row.plan_id,
    owner: row.member_id as MemberId,
    tankId: row.tank_id,
    half: row.half,
    plannedAt: row.planned_at,
    dueAt: row.due_at,
    words: JSON.parse(row.words) as DutyWords,
    state: row.state,
    ...(row.tell_at === null ? {} : { tellAt: row.tell_at }),
    ...(row.settled_at === null ? {} : { settledAt: row.settled_at }),
    ...(row.pair_of === null ? {} : { pairOf: row.pair_of }),
  };
}
