import type { Calendar } from "../core/plans/calendar.ts";
import { dueUntil, nextDue, type Progress } from "../core/plans/recurrence.ts";
import { judgeRegimen, type TankLog, type Verdict } from "../core/plans/regimens.ts";
import { reachedBy, type Seen, sayUntil } from "../core/plans/until.ts";
import { type Settled, wayBackWords } from "../kit/duty-words.ts";
import type { DutyWords, NewDuty, PlanStep, RunningPlan } from "../records/plan.ts";

/** Due times of one plan put down at one look; after a long silence the rest follow at the next. */
const MOST_AT_ONCE = 60;
const HOUR_MS = 3_600_000;

/** What a look at one plan needs to know; nothing here reads a clock. */
export interface Look {
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly calendar: Calendar;
  /** What the log says since the plan was made. */
  readonly log: TankLog;
  /** When the events that the rule follows happened. */
  readonly followed: readonly number[];
  /** Readings since the plan was made that decide its end, newest first. */
  readonly seen: readonly Seen[];
  readonly settle: () => Settled;
}

/** What falls due of one plan, and how it goes on from there. Pure. */
export function dueReminders(plan: RunningPlan, look: Look): PlanStep {
  const { now } = look;
  const same: PlanStep = {
    duties: [],
    state: plan.state,
    ...(plan.why === undefined ? {} : { why: plan.why }),
    ...(plan.nextAt === undefined ? {} : { nextAt: plan.nextAt }),
    ...(plan.lastDay === undefined ? {} : { lastDay: plan.lastDay }),
  };
  if (plan.state !== "running") return same;
  const reached = plan.until === undefined ? undefined : reachedBy(plan.until, look.seen);
  if (plan.until !== undefined && reached !== undefined) {
    const why = `it ran ${sayUntil(plan.until)}, and that has come`;
    return over(plan, why, `${plan.typed}: done, for ${why}.`, now);
  }
  const verdict = verdictOf(plan, look);
  if (verdict.kind === "end" || verdict.kind === "stop") {
    const name = plan.regimen?.pattern ?? plan.typed;
    const step = over(
      plan,
      verdict.why,
      `${name} ${verdict.kind === "end" ? "has come to its end" : "stopped itself"}: ${verdict.why}.`,
      now,
    );
    return { ...step, regimen: { state: "over", why: verdict.why } };
  }
  return fallDue(plan, look, verdict);
}

function verdictOf({ regimen }: RunningPlan, { log, now }: Look): Verdict {
  if (regimen === undefined) return { kind: "go" };
  return judgeRegimen(regimen.pattern, regimen.settings, log, Date.parse(regimen.startedAt), now);
}

function fallDue(plan: RunningPlan, look: Look, verdict: Verdict): PlanStep {
  const { now, calendar, followed } = look;
  const progress: Progress = {
    notBefore: Date.parse(plan.notBefore),
    ...(plan.lastDay === undefined ? {} : { lastDay: plan.lastDay }),
  };
  const dues = dueUntil(plan.rule, progress, now, MOST_AT_ONCE, calendar, followed);
  const last = dues.at(-1);
  const next = nextDue(
    plan.rule,
    last === undefined ? progress : { ...progress, lastDay: last.day },
    calendar,
    followed,
  );
  const isOver = next === undefined && plan.rule.kind === "once";
  const lastDay = last?.day ?? plan.lastDay;
  const going = {
    state: isOver ? ("over" as const) : ("running" as const),
    ...(next === undefined ? {} : { nextAt: iso(next.at) }),
    ...(lastDay === undefined ? {} : { lastDay }),
  };
  if (last === undefined)
    return { duties: [], ...going, ...(plan.why === undefined ? {} : { why: plan.why }) };
  const settled: Settled =
    verdict.kind === "hold" && isDosing(plan) ? { kind: "hold", why: verdict.why } : look.settle();
  if (settled.kind === "hold") {
    const isNews = settled.why !== plan.why;
    return {
      duties: isNews
        ? [notice(`${plan.regimen?.pattern ?? plan.typed} holds: ${settled.why}.`, last.at)]
        : [],
      ...going,
      why: settled.why,
      ...(plan.regimen === undefined ? {} : { regimen: { state: "running", why: settled.why } }),
    };
  }
  const { words } = settled;
  const remark = verdict.kind === "go" ? verdict.why : undefined;
  const said = remark === undefined ? words : { ...words, lines: [...words.lines, `${sentence(remark)}`] };
  const duties =
    plan.task.kind === "switch off"
      ? [...dues.slice(0, -1).map(({ at }) => passed(said, at)), ...pair(said, last.at)]
      : dues.map(({ at }): NewDuty => duty(said, at));
  return {
    duties,
    ...going,
    // What held it no longer does.
    ...(plan.regimen === undefined || !isDosing(plan) ? {} : { regimen: { state: "running" } }),
  };
}

/** Tests go on while a regimen holds: they are what it waits for. */
function isDosing({ task }: RunningPlan): boolean {
  return task.kind === "ethanol step" || task.kind === "ammonium dose";
}

function duty(words: DutyWords, at: number): NewDuty {
  return { half: "whole", plannedAt: iso(at), dueAt: iso(at), tellAt: iso(at), words };
}

/** Both halves at once: the second is in the file before the first has been told. */
export function pair(words: DutyWords, at: number): readonly NewDuty[] {
  const backAt = iso(at + (words.hours ?? 0) * HOUR_MS);
  return [
    { half: "off", plannedAt: iso(at), dueAt: iso(at), tellAt: iso(at), words },
    { half: "back", plannedAt: backAt, dueAt: backAt, tellAt: backAt, words: wayBackWords(words) },
  ];
}

/** A window for which it is too late: nobody shall switch anything off for it now. */
function passed(words: DutyWords, at: number): NewDuty {
  return notice(
    `${words.title}: that window passed without a reminder. Nothing is to be done for it now.`,
    at,
  );
}

function notice(title: string, at: number): NewDuty {
  return {
    half: "notice",
    plannedAt: iso(at),
    dueAt: iso(at),
    tellAt: iso(at),
    words: { title: sentence(title), lines: [], cautions: [] },
  };
}

function over({ lastDay }: RunningPlan, why: string, told: string, now: number): PlanStep {
  return {
    duties: [notice(told, now)],
    state: "over",
    why,
    ...(lastDay === undefined ? {} : { lastDay }),
  };
}

function sentence(text: string): string {
  const whole = text.slice(0, 1).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}

function iso(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
